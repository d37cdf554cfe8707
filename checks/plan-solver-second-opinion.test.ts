import { type Milp, violationsOf } from "@fusebook/core/plan";
import { highsSolver } from "@fusebook/solver";
import { describe, expect, it } from "vitest";
import { seededAssignment, seededKnapsack } from "./plan-solver-models.js";
import { retrofitModel, seededRetrofit } from "./plan-solver-retrofit.js";
import { secondOpinion } from "./plan-solver-second.js";

const solver = highsSolver();
const seeds = (from: number, count: number) => Array.from({ length: count }, (_, at) => from + at);

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
