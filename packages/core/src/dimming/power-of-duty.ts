import { FILAMENT_CURRENT_EXPONENT } from "../network/index.js";
import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { LoadClass } from "../record/index.js";

/**
 * What share of its full power does a load of this class take at this duty, on stiff volts? LEDs on a resistor or a linear regulator: the duty. Filaments:
 * duty^0.775, more than the duty, because a cooler filament takes more in its pulse (from the published current exponent 0.55; the published power
 * exponent 1.6 would say 0.8). Drivers: missing, they take full power as long as they run. Refused: `no-light`, `duty-out-of-range`.
 */
export function powerOfDuty(loadClass: LoadClass | undefined, dutyRatio: number): Outcome<number> {
  if (!(dutyRatio >= 0 && dutyRatio <= 1))
    return refused("duty-out-of-range", `duty lies between 0 and 1, got ${dutyRatio}`);
  switch (loadClass) {
    case "led-resistor":
    case "led-linear":
      return known(dutyRatio);
    case "filament":
      return known(dutyRatio ** ((1 + FILAMENT_CURRENT_EXPONENT) / 2));
    case "led-driver":
      return missing("inputCapacitanceF");
    case undefined:
      return missing("class");
    default:
      return refused("no-light", `a load of class ${loadClass} gives no light to dim`);
  }
}
