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
import type { Load } from "../record/index.js";
import { lightExponentOf, lightOfDuty } from "./light-of-duty.js";
import { lightnessOf, luminanceRatioOf } from "./lightness.js";

/** One unit of L* is about the least difference an eye sees: below it a lamp counts as dark. Common practice, no source. */
export const DARK_LIGHTNESS = 1;
export const DARK_SOURCE: Source = COMMON_PRACTICE;

export interface LowestDuty {
  readonly dutyRatio: number;
  /** How bright the lamp looks there, CIE L* of its own full light. */
  readonly lightness: number;
  /** `module`: the kind goes no lower; `eye`: lower is as good as dark. */
  readonly setBy: "module" | "eye";
}

/**
 * What is the lowest duty worth using for this load on a module of this kind? The higher of what the module can give and what the eye still sees.
 * Missing: the kind's `minDutyRatio`, the load's `class`, or a driver's own law. Refused: `no-light`, `duty-out-of-range`.
 */
export function lowestUsefulDuty(
  kind: { readonly minDutyRatio?: Figure | undefined },
  load: Pick<Load, "class">,
): Outcome<LowestDuty> {
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
