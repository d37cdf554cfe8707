import { known, missing, type Outcome, refused, type Source } from "../quantity/index.js";
import type { LoadClass } from "../record/index.js";
import { sourceOf } from "../tables/index.js";

/** Luminous intensity goes as the 3.4th to 3.5th power of the voltage; the lower figure is used. */
const FILAMENT_LIGHT_EXPONENT = 3.4;

export const FILAMENT_LIGHT_SOURCE: Source = sourceOf("lamp-exponents");

/** Share of full light at a duty, and the power of the duty it goes with. */
export interface LightOfDuty {
  readonly luminanceRatio: number;
  /** Light goes as duty to this power: 1 for LEDs on resistors or linear regulators, 1.7 for filaments. */
  readonly exponent: number;
}

/**
 * Light goes as duty to which power? LEDs on a resistor or a linear regulator: 1 (lit only in the pulse, at full current). Filaments: the
 * heating voltage is the root of the duty, and light goes as voltage^3.4, so 1.7; the exponent is published near the rated voltage, so deep dimming
 * is darker than this says. Drivers: missing, the maker decides. Other classes: refused, `no-light`.
 */
export function lightExponentOf(loadClass: LoadClass | undefined): Outcome<number> {
  switch (loadClass) {
    case "led-resistor":
    case "led-linear":
      return known(1);
    case "filament":
      return known(FILAMENT_LIGHT_EXPONENT / 2);
    case "led-driver":
      return missing("light against duty, from the driver's sheet or by eye");
    case undefined:
      return missing("class");
    default:
      return refused("no-light", `a load of class ${loadClass} gives no light to dim`);
  }
}

/** What share of its full light does a load of this class give at this duty (0..1)? See `lightExponentOf`. Refused: `duty-out-of-range`. */
export function lightOfDuty(loadClass: LoadClass | undefined, dutyRatio: number): Outcome<LightOfDuty> {
  if (!(dutyRatio >= 0 && dutyRatio <= 1))
    return refused("duty-out-of-range", `duty lies between 0 and 1, got ${dutyRatio}`);
  const exponent = lightExponentOf(loadClass);
  if (exponent.kind !== "known") return exponent;
  return known({ luminanceRatio: dutyRatio ** exponent.value, exponent: exponent.value });
}
