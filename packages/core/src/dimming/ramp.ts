import { type Figure, figureValue, known, missing, type Outcome, refused } from "../quantity/index.js";
import { lightnessOf, luminanceRatioOf } from "./lightness.js";

export interface RampStep {
  /** 1 is the lowest step. */
  readonly step: number;
  readonly dutyRatio: number;
  /** CIE L*, 0 to 100. */
  readonly lightness: number;
  /** Length of one pulse; absent where the PWM frequency is not known. */
  readonly onTimeS?: number;
}

export interface Ramp {
  readonly steps: readonly RampStep[];
  /** How far apart two steps look, in L*. */
  readonly stepLightness: number;
}

/** What a ramp is made for. A module kind can be given as it is; eight steps where not said, light in proportion to duty (`lightExponent` 1). */
export interface RampWish {
  readonly pwmHz?: Figure | undefined;
  readonly minDutyRatio?: Figure | undefined;
  readonly steps?: number | undefined;
  /** Light goes as duty to this power; see `lightExponentOf`. */
  readonly lightExponent?: number | undefined;
}

const MAX_STEPS = 1024;

/**
 * Which duties look evenly spaced from the lowest the module can give to full? Equal steps of CIE L*.
 * Missing: `minDutyRatio`. Refused: `steps-out-of-range` (2 to 1024), `duty-out-of-range`, `frequency-out-of-range`.
 */
export function rampOf(wish: RampWish): Outcome<Ramp> {
  const count = wish.steps ?? 8;
  const exponent = wish.lightExponent ?? 1;
  if (!Number.isInteger(count) || count < 2 || count > MAX_STEPS)
    return refused("steps-out-of-range", `a ramp has 2 to ${MAX_STEPS} steps, got ${count}`);
  if (!(exponent > 0)) return refused("exponent-out-of-range", `the light exponent is above 0, got ${exponent}`);
  if (wish.minDutyRatio === undefined) return missing("minDutyRatio");
  const minDuty = figureValue(wish.minDutyRatio);
  if (!(minDuty >= 0 && minDuty < 1))
    return refused("duty-out-of-range", `the lowest duty lies from 0 to below 1, got ${minDuty}`);
  const pwmHz = wish.pwmHz === undefined ? undefined : figureValue(wish.pwmHz);
  if (pwmHz !== undefined && !(pwmHz > 0 && Number.isFinite(pwmHz)))
    return refused("frequency-out-of-range", `the PWM frequency is above 0 Hz, got ${pwmHz}`);
  const lowest = lightnessOf(minDuty ** exponent);
  if (lowest.kind !== "known") return lowest;
  const stepLightness = (100 - lowest.value) / (count - 1);
  const steps: RampStep[] = [];
  for (let i = 0; i < count; i++) {
    const lightness = i === count - 1 ? 100 : lowest.value + i * stepLightness;
    const light = luminanceRatioOf(lightness);
    if (light.kind !== "known") return light;
    const dutyRatio = i === 0 ? minDuty : i === count - 1 ? 1 : light.value ** (1 / exponent);
    steps.push({ step: i + 1, dutyRatio, lightness, ...(pwmHz !== undefined && { onTimeS: dutyRatio / pwmHz }) });
  }
  return known({ steps, stepLightness });
}
