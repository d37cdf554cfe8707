import { known, type Outcome } from "../quantity/index.js";
import type { LoadClass } from "../record/index.js";
import { lightOfDuty } from "./light-of-duty.js";
import { lightnessOf } from "./lightness.js";
import { powerOfDuty } from "./power-of-duty.js";

/** One row of what a lamp gives and takes at a duty, as shares of full, and how bright that looks, CIE L*. */
export interface LightAtDuty {
  readonly dutyRatio: number;
  readonly luminanceRatio: number;
  readonly lightness: number;
  readonly powerRatio: number;
}

/** The duties that a table shows where nothing else is asked. */
export const TABLE_DUTIES = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1] as const;

/** Power, light and how bright it looks, duty by duty. Missing and refused as `lightOfDuty` and `powerOfDuty`. */
export function lightTable(
  loadClass: LoadClass | undefined,
  duties: readonly number[] = TABLE_DUTIES,
): Outcome<readonly LightAtDuty[]> {
  const rows: LightAtDuty[] = [];
  for (const dutyRatio of duties) {
    const light = lightOfDuty(loadClass, dutyRatio);
    if (light.kind !== "known") return light;
    const power = powerOfDuty(loadClass, dutyRatio);
    if (power.kind !== "known") return power;
    const lightness = lightnessOf(light.value.luminanceRatio);
    if (lightness.kind !== "known") return lightness;
    rows.push({
      dutyRatio,
      luminanceRatio: light.value.luminanceRatio,
      lightness: lightness.value,
      powerRatio: power.value,
    });
  }
  return known(rows);
}
