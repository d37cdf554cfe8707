import { allOnState, buildCoach, type CoachNetwork, onlyState } from "../network/index.js";
import type { Outcome } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";

interface Built {
  readonly first: string;
  readonly only: Outcome<CoachNetwork>;
  all?: Outcome<CoachNetwork>;
}

const BUILT = new WeakMap<CoachIndex, Built>();

/**
 * The coach on battery alone with this circuit laid out, so that it can be asked for its fault. The first circuit asked for is laid alone; with the second
 * come all of them, once for each index.
 */
export function faultCoachOf(index: CoachIndex, circuitId: string): Outcome<CoachNetwork> {
  let built = BUILT.get(index);
  if (built === undefined) {
    built = { first: circuitId, only: buildCoach(index, onlyState(index, [circuitId], "one circuit")) };
    BUILT.set(index, built);
  }
  if (built.first === circuitId) return built.only;
  built.all ??= buildCoach(index, allOnState(index));
  return built.all;
}
