import { demandOf, type Milp, milpOf, movesProblemOf, type Objective, violationsOf } from "@fusebook/core/plan";
import { indexRecord, policyOf } from "@fusebook/core/record";
import { highsSolver } from "@fusebook/solver";
import { describe, expect, it } from "vitest";
import { INSTANCE_JOB, recordOfInstance } from "./plan-instance.js";
import { seededAssignment, seededKnapsack } from "./plan-solver-models.js";
import { retrofitModel, seededRetrofit } from "./plan-solver-retrofit.js";
import { secondOpinion } from "./plan-solver-second.js";

const solver = highsSolver();
const seeds = (from: number, count: number) => Array.from({ length: count }, (_, at) => from + at);

/** The planner's own model of a seeded retrofit, read from a record. */
function plannersModel(seed: number, objective: (allValue: number) => Objective): Milp {
  const instance = seededRetrofit(seed);
  const index = indexRecord(recordOfInstance(instance, "neighbour"));
  const problem = movesProblemOf(index, policyOf(index.record), demandOf(index, INSTANCE_JOB));
  const allValue = instance.loads.reduce((sum, load) => sum + load.value, 0);
  return { ...milpOf(problem, objective(1000 * allValue)).milp, name: `planner-${seed}` };
}

const FAMILIES: readonly (readonly [name: string, models: readonly Milp[], leastInfeasible: number])[] = [
  ["assignments", seeds(1, 25).map(seededAssignment), 1],
  ["knapsacks", seeds(1, 25).map((seed) => seededKnapsack(seed)), 0],
  [
    "retrofits, least of cost less value",
    seeds(1, 12).map((seed) => retrofitModel(seededRetrofit(seed), "neighbour", "weighted")),
    0,
  ],
  [
    "retrofits, cheapest with a wanted value",
    seeds(13, 12).map((seed) => {
      const instance = seededRetrofit(seed);
      // Some ask for all of the value, and more than can be had.
      const all = instance.loads.reduce((sum, load) => sum + load.value, 0);
      return retrofitModel(instance, "neighbour", seed % 4 === 0 ? all + 1 : Math.round(0.8 * all));
    }),
    2,
  ],
  [
    "the planner's model, cheapest with most of the value",
    seeds(31, 12).map((seed) =>
      plannersModel(seed, (all) => ({ best: "least-cost", leastValue: Math.round(0.8 * all) })),
    ),
    0,
  ],
  [
    "the planner's model, most value with few wires moved",
    seeds(43, 12).map((seed) => plannersModel(seed, () => ({ best: "most-value", mostWires: seed % 4 }))),
    0,
  ],
];

describe("a second solver, of other people's making, proves the same optimum", () => {
  it.each(FAMILIES)("%s", async (_, models, leastInfeasible) => {
    const second = await secondOpinion();
    let infeasible = 0;
    for (const milp of models) {
      const session = await solver.open(milp);
      const answer = await session.solve();
      session.close();
      const other = second(milp, 60);
      if (answer.status === "infeasible") infeasible += 1;
      else expect(violationsOf(milp, answer.values ?? []), milp.name).toEqual([]);
      expect(answer.status === "optimal" ? answer.objective : answer.status, milp.name).toBe(other);
    }
    expect(infeasible).toBeGreaterThanOrEqual(leastInfeasible);
    expect(infeasible).toBeLessThan(models.length / 2);
  });
});
