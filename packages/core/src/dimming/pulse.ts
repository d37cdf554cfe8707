import { known, type Outcome, refused } from "../quantity/index.js";

/** A current that is on for `dutyRatio` of the time. */
export interface PulseCurrents {
  /** In the pulse: sets the drop in the wire, and dimming does not lower it. */
  readonly onA: number;
  /** What the battery pays. */
  readonly meanA: number;
  /** What heats the wire. */
  readonly rmsA: number;
}

/** Which three currents does a dimmed wire carry? `onA` is the current in the pulse. Refused: `duty-out-of-range`. */
export function pulseCurrents(onA: number, dutyRatio: number): Outcome<PulseCurrents> {
  if (!(dutyRatio >= 0 && dutyRatio <= 1))
    return refused("duty-out-of-range", `duty lies between 0 and 1, got ${dutyRatio}`);
  return known({ onA, meanA: dutyRatio * onA, rmsA: Math.sqrt(dutyRatio) * onA });
}
