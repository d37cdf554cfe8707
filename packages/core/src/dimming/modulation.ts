import { known, missing, type Outcome, refused, type Span } from "../quantity/index.js";
import type { LoadClass } from "../record/index.js";

/**
 * How far does the light of a load of this class swing while PWM dims it, as (max - min) / (max + min)? LEDs on a resistor or a linear regulator go
 * out between pulses: exactly 1. Filaments and drivers filter, how much is not known here: anywhere from 0 to 1 (so a flicker verdict stays
 * `open` unless it holds for 1). At duty 0 or 1 nothing swings: 0. Missing: `class`. Refused: `no-light`, `duty-out-of-range`.
 */
export function modulationOf(loadClass: LoadClass | undefined, dutyRatio: number): Outcome<Span> {
  if (!(dutyRatio >= 0 && dutyRatio <= 1))
    return refused("duty-out-of-range", `duty lies between 0 and 1, got ${dutyRatio}`);
  switch (loadClass) {
    case "led-resistor":
    case "led-linear":
      return known(dutyRatio > 0 && dutyRatio < 1 ? { lo: 1, hi: 1 } : { lo: 0, hi: 0 });
    case "filament":
    case "led-driver":
      return known(dutyRatio > 0 && dutyRatio < 1 ? { lo: 0, hi: 1 } : { lo: 0, hi: 0 });
    case undefined:
      return missing("class");
    default:
      return refused("no-light", `a load of class ${loadClass} gives no light to dim`);
  }
}
