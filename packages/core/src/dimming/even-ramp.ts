import { type Figure, figureValue, known, missing, type Outcome, refused } from "../quantity/index.js";
import { lightnessOf, luminanceRatioOf } from "./lightness.js";
import { type Ramp, type RampStep, rampOf } from "./ramp.js";

/** What a ramp asks of a module kind; a kind can be given as it is. */
export interface RampKind {
  readonly pwmHz?: Figure | undefined;
  readonly minDutyRatio?: Figure | undefined;
  /** Equal steps of duty that it can give; without it duties are not rounded, and the ramp says so. */
  readonly dutySteps?: number | undefined;
}

export interface EvenRampWish {
  /** Presses from lowest to full; eight where not said. */
  readonly steps?: number | undefined;
  /** Light goes as duty to this power; see `lightExponentOf`. */
  readonly lightExponent?: number | undefined;
  /** Start no lower than this: the lowest duty useful for the lamps in question. */
  readonly fromDutyRatio?: number | undefined;
}

export interface EvenRampStep extends RampStep {
  /** What equal steps of L* ask for, before the module's own steps. */
  readonly wantedDutyRatio: number;
  /** The number to set, of `dutySteps`. */
  readonly level?: number;
  /** How much brighter or darker than wanted it looks, L*. */
  readonly errorLightness: number;
}

export interface EvenRamp extends Omit<Ramp, "steps"> {
  readonly steps: readonly EvenRampStep[];
  /** Greatest and least difference from one step to the next, L*. Alike: looks even. */
  readonly greatestStepLightness: number;
  readonly leastStepLightness: number;
  readonly isRounded: boolean;
  /** Steps left out, because the module's own steps are too coarse to tell them apart. */
  readonly mergedSteps: number;
}

/**
 * Which duties of this module kind look evenly spaced from its lowest (or `fromDutyRatio`) to full? Equal steps of CIE L*, each taken to the nearest
 * duty that the module can give and never below its lowest; steps that fall together are one.
 * Missing: `minDutyRatio`. Refused as `rampOf`; `duty-steps-out-of-range`.
 */
export function evenRamp(kind: RampKind, wish: EvenRampWish = {}): Outcome<EvenRamp> {
  if (kind.minDutyRatio === undefined) return missing("minDutyRatio");
  const exponent = wish.lightExponent ?? 1;
  const leastDuty = figureValue(kind.minDutyRatio);
  const from = Math.max(leastDuty, wish.fromDutyRatio ?? 0);
  const ramp = rampOf({
    pwmHz: kind.pwmHz,
    minDutyRatio: from,
    steps: wish.steps,
    lightExponent: exponent,
  });
  if (ramp.kind !== "known") return ramp;
  const { dutySteps } = kind;
  if (dutySteps !== undefined && !(Number.isInteger(dutySteps) && dutySteps >= 1))
    return refused("duty-steps-out-of-range", `a module gives 1 step of duty or more, got ${dutySteps}`);
  const lowestLevel = dutySteps === undefined ? 0 : Math.ceil(from * dutySteps - 1e-9);
  const pwmHz = kind.pwmHz === undefined ? undefined : figureValue(kind.pwmHz);
  const steps: EvenRampStep[] = [];
  for (const { dutyRatio: wanted, lightness } of ramp.value.steps) {
    const level =
      dutySteps === undefined ? undefined : nearestLevel(lightness, dutySteps, Math.max(1, lowestLevel), exponent);
    const dutyRatio = level === undefined || dutySteps === undefined ? wanted : level / dutySteps;
    if (steps.at(-1)?.dutyRatio === dutyRatio) continue;
    const looks = lightnessOf(Math.min(1, dutyRatio ** exponent));
    if (looks.kind !== "known") return looks;
    steps.push({
      step: steps.length + 1,
      wantedDutyRatio: wanted,
      dutyRatio,
      lightness: looks.value,
      errorLightness: looks.value - lightness,
      ...(level !== undefined && { level }),
      ...(pwmHz !== undefined && { onTimeS: dutyRatio / pwmHz }),
    });
  }
  const apart = steps.slice(1).map((step, i) => step.lightness - steps[i]!.lightness);
  return known({
    steps,
    stepLightness: ramp.value.stepLightness,
    greatestStepLightness: Math.max(...apart, 0),
    leastStepLightness: apart.length === 0 ? 0 : Math.min(...apart),
    isRounded: dutySteps !== undefined,
    mergedSteps: ramp.value.steps.length - steps.length,
  });
}

/** Of the two levels beside the wanted duty, the one that looks nearer: the eye judges L*, not duty. */
function nearestLevel(lightness: number, dutySteps: number, lowest: number, exponent: number): number {
  const light = luminanceRatioOf(lightness);
  const wanted = (light.kind === "known" ? light.value : 1) ** (1 / exponent) * dutySteps;
  const looks = (level: number): number => {
    const seen = lightnessOf(Math.min(1, Math.max(0, level / dutySteps) ** exponent));
    return seen.kind === "known" ? seen.value : 0;
  };
  const below = Math.floor(wanted + 1e-9);
  const nearest = lightness - looks(below) <= looks(below + 1) - lightness ? below : below + 1;
  return Math.min(dutySteps, Math.max(lowest, nearest));
}
