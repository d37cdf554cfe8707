import { allOnState, buildCoach, type CoachNetwork } from "../network/index.js";
import type { Outcome } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";

const BUILT = new WeakMap<CoachIndex, Outcome<CoachNetwork>>();

/** The coach on battery alone with every circuit laid out, so that each can be asked for its fault. Built once for each index. */
export function faultCoachOf(index: CoachIndex): Outcome<CoachNetwork> {
  const found = BUILT.get(index) ?? buildCoach(index, allOnState(index));
  BUILT.set(index, found);
  return found;
}
