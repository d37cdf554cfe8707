import {
  COMMON_PRACTICE,
  type Figure,
  figureValue,
  known,
  missing,
  type Outcome,
  refused,
  type Source,
} from "../quantity/index.js";
import { capacitorInput } from "./capacitor-input.js";
import { lightExponentOf, lightOfDuty } from "./light-of-duty.js";
import { lightnessOf, luminanceRatioOf } from "./lightness.js";
import type { DriverFeed, LampFigures } from "./modulation-depth.js";

/** One unit of L* is about the least difference an eye sees: below it a lamp counts as dark. Common practice, no source. */
export const DARK_LIGHTNESS = 1;
export const DARK_SOURCE: Source = COMMON_PRACTICE;

export interface LowestDuty {
  readonly dutyRatio: number;
  /** How bright the lamp looks there, CIE L* of its own full light. */
  readonly lightness: number;
  /** `module`: the kind goes no lower; `eye`: lower is as good as dark; `driver`: lower and it stops between pulses, or does not start. */
  readonly setBy: "module" | "eye" | "driver";
}

/**
 * What is the lowest duty worth using for this load on a module of this kind? The higher of what the module can give and what the eye still sees; for
 * a driver whose input capacitor and feed are known, the least at which it runs through the pauses and starts from dead (it does not dim above that).
 * Missing: the kind's `minDutyRatio`, the load's `class`, or a driver's capacitor. Refused: `no-light`, `duty-out-of-range`, and for a driver as
 * `capacitorInput`, or `driver-never-runs`.
 */
export function lowestUsefulDuty(
  kind: { readonly minDutyRatio?: Figure | undefined; readonly pwmHz?: Figure | undefined },
  load: LampFigures,
  feed: DriverFeed | undefined = undefined,
): Outcome<LowestDuty> {
  if (load.class === "led-driver") return lowestOfDriver(kind, load, feed);
  const exponent = lightExponentOf(load.class);
  if (exponent.kind !== "known") return exponent;
  if (kind.minDutyRatio === undefined) return missing("minDutyRatio");
  const moduleDuty = figureValue(kind.minDutyRatio);
  if (!(moduleDuty >= 0 && moduleDuty <= 1))
    return refused("duty-out-of-range", `the lowest duty lies between 0 and 1, got ${moduleDuty}`);
  const darkLight = luminanceRatioOf(DARK_LIGHTNESS);
  if (darkLight.kind !== "known") return darkLight;
  const eyeDuty = darkLight.value ** (1 / exponent.value);
  const dutyRatio = Math.max(moduleDuty, eyeDuty);
  const light = lightOfDuty(load.class, dutyRatio);
  if (light.kind !== "known") return light;
  const lightness = lightnessOf(light.value.luminanceRatio);
  if (lightness.kind !== "known") return lightness;
  return known({ dutyRatio, lightness: lightness.value, setBy: moduleDuty >= eyeDuty ? "module" : "eye" });
}

/** How finely the least duty of a driver is sought. */
const HALVINGS = 20;

function lowestOfDriver(
  kind: { readonly minDutyRatio?: Figure | undefined; readonly pwmHz?: Figure | undefined },
  load: LampFigures,
  feed: DriverFeed | undefined,
): Outcome<LowestDuty> {
  const needs: string[] = [];
  if (load.inputCapacitanceF === undefined) needs.push("inputCapacitanceF");
  if (kind.minDutyRatio === undefined) needs.push("minDutyRatio");
  if (kind.pwmHz === undefined) needs.push("pwmHz");
  if (load.inputCapacitanceF === undefined || kind.minDutyRatio === undefined || kind.pwmHz === undefined)
    return missing(...needs);
  if (feed === undefined) return missing("the way from the battery to the driver");
  const pwmHz = figureValue(kind.pwmHz);
  const capacitanceF = figureValue(load.inputCapacitanceF) * (load.quantity ?? 1);
  const runsAt = (dutyRatio: number): Outcome<boolean> => {
    const pulses = capacitorInput({ ...feed, capacitanceF, pwmHz, dutyRatio });
    if (pulses.kind !== "known") return pulses;
    return known(pulses.value.runsRatio >= 1 - 1e-9 && pulses.value.startsFromEmpty);
  };
  const moduleDuty = Math.max(figureValue(kind.minDutyRatio), 1e-4);
  const atLeast = runsAt(moduleDuty);
  if (atLeast.kind !== "known") return atLeast;
  if (atLeast.value) return known({ dutyRatio: moduleDuty, lightness: 100, setBy: "module" });
  let [lo, hi] = [moduleDuty, 1];
  const atFull = runsAt(1);
  if (atFull.kind === "known" && !atFull.value)
    return refused("driver-never-runs", "on this wire the driver does not run even at full duty");
  for (let i = 0; i < HALVINGS; i++) {
    const mid = (lo + hi) / 2;
    const runs = runsAt(mid);
    if (runs.kind === "known" && runs.value) hi = mid;
    else lo = mid;
  }
  return known({ dutyRatio: hi, lightness: 100, setBy: "driver" });
}
