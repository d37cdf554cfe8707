import { applyPlan, type Plan } from "@fusebook/core/plan";
import { type CoachRecord, type Job, policyOf } from "@fusebook/core/record";

/** The record with the plan written into the job; with `isAfter` changed as the work will change it. */
export function recordWith(record: CoachRecord, job: Job | undefined, chosen: Plan, isAfter: boolean): CoachRecord {
  const base = job ?? ({ id: "job-1", title: "Plan" } as Job);
  const { currency } = policyOf(record);
  const done: Job = {
    ...base,
    chosen: {
      modules: chosen.modules
        .filter((each) => each.isTouched)
        .map((each) => ({
          module: each.module,
          kind: each.to,
          enables: [...each.enables],
          ...(each.positions === undefined ? {} : { positions: each.positions }),
        })),
      fuses: chosen.fuses.map((change) => ({ circuit: change.circuit, ratedA: change.toA })),
      ...(chosen.moves.length === 0
        ? {}
        : { moves: chosen.moves.map(({ circuit, from, to }) => ({ circuit, from: { ...from }, to: { ...to } })) }),
      ...(chosen.steadyFeeds.length === 0
        ? {}
        : {
            steadyFeeds: chosen.steadyFeeds.map(({ load, circuit, node, fuseA }) => ({
              load,
              circuit,
              node,
              ratedA: fuseA,
            })),
          }),
      ...(chosen.rewires.length === 0
        ? {}
        : {
            rewires: chosen.rewires.map(({ circuit, toGauge, toAreaMm2 }) => ({
              circuit,
              gauge: toGauge,
              sectionMm2: toAreaMm2,
            })),
          }),
      cost: chosen.costCents / 100,
      currency,
      minutes: chosen.minutes,
    },
  };
  const jobs = record.jobs ?? [];
  const withJob = {
    ...record,
    jobs: jobs.some((each) => each.id === done.id)
      ? jobs.map((each) => (each.id === done.id ? done : each))
      : [...jobs, done],
  };
  return isAfter ? applyPlan(withJob, chosen) : withJob;
}
