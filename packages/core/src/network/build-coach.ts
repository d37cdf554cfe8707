import { known, missing, type Outcome } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import type { CoachNetwork } from "./coach-network.js";
import { Draft } from "./draft.js";
import { layCables } from "./lay-cables.js";
import { layCircuits } from "./lay-circuits.js";
import { layModules } from "./lay-modules.js";
import { laySupplies } from "./lay-supplies.js";
import type { CoachState } from "./state.js";

/** The volts the coach is meant to run on: as recorded, 12 where it is not. */
export const nominalVOf = (index: CoachIndex): number => index.record.coach.nominalV ?? 12;

/**
 * The coach in one state as a network. Batteries are always in; chargers and the alternator as the state says; solar is left out, since the sun
 * cannot be counted on. Missing where no supply can feed anything.
 */
export function buildCoach(index: CoachIndex, state: CoachState): Outcome<CoachNetwork> {
  const draft = new Draft(index, state, nominalVOf(index));
  const cables = layCables(draft);
  const { supplies, needs } = laySupplies(draft);
  const first = supplies[0];
  if (first === undefined) return missing(...(needs.length > 0 ? needs : ["supplies"]));
  const circuits = layCircuits(draft, supplies, first);
  const modules = layModules(draft, first);
  const { policy, nominalV, nodeCount, branches, loads, ohmSpan, emfSpan, loadBounds, nodeOf, edges } = draft;
  return known({
    index,
    policy,
    state,
    nominalV,
    network: { nodeCount, reference: first.negative, branches, loads },
    ohmSpan,
    emfSpan,
    loadBounds,
    nodeOf,
    supplies,
    cables,
    edges,
    cableOfEdge: cables.filter((one) => one.edge >= 0),
    circuits,
    modules,
    leftOut: [...draft.leftOut].sort(),
    assumed: draft.finder.assumed,
  });
}
