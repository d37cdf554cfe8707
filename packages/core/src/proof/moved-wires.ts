import type { CircuitMove, Plan } from "../plan/index.js";
import type { CircuitId, CoachIndex, LoadId } from "../record/index.js";

/** Wires that a job has put elsewhere, as far as their proof needs it. */
export interface MovedWires {
  readonly moves: readonly CircuitMove[];
  readonly feeds: readonly { readonly load: LoadId; readonly circuit: CircuitId }[];
}

export const movedByPlan = (plan: Plan): MovedWires => ({ moves: plan.moves, feeds: plan.steadyFeeds });

/** What the plans chosen in jobs that are not signed have moved, where the record shows the coach as it is after them. */
export function movedOnRecord(index: CoachIndex): MovedWires {
  const chosen = (index.record.jobs ?? []).flatMap((job) =>
    job.signed === undefined && job.chosen !== undefined ? [job.chosen] : [],
  );
  return {
    moves: chosen
      .flatMap((plan) => plan.moves ?? [])
      .filter(({ circuit, to }) => {
        const now = index.circuits.get(circuit);
        return now?.module === to.module && now.channel === to.channel;
      }),
    feeds: chosen
      .flatMap((plan) => plan.steadyFeeds ?? [])
      .filter(({ load, circuit }) => {
        const now = index.circuitOfLoad.get(load);
        return now !== undefined && now.id !== circuit && now.module === undefined;
      }),
  };
}
