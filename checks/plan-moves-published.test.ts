import {
  choiceFaults,
  demandOf,
  type Milp,
  milpOf,
  movesProblemOf,
  type Objective,
  scoreOf,
} from "@fusebook/core/plan";
import { indexRecord, policyOf } from "@fusebook/core/record";
import { highsSolver } from "@fusebook/solver";
import { afterAll, describe, expect, it } from "vitest";
import { INSTANCE_JOB, type PlanVariant, planInstance, recordOfInstance } from "./plan-instance.js";

/**
 * Source: synthetic retrofit instances of the project's reference cases (seed 1). Each optimum was proved there by two to twelve pairs of a general solver and a
 * formulation, none of them ours. `cost`: the cheapest plan with 80 % of the wish value.
 */
const OPTIMA: readonly { modules: number; variant: PlanVariant; weighted: number; cost: number }[] = [
  { modules: 4, variant: "fixed", weighted: -400, cost: 1560 },
  { modules: 8, variant: "fixed", weighted: -1120, cost: 2600 },
  { modules: 16, variant: "fixed", weighted: -1180, cost: 5340 },
  { modules: 32, variant: "fixed", weighted: -2840, cost: 11060 },
  { modules: 4, variant: "within", weighted: -520, cost: 1340 },
  { modules: 16, variant: "within", weighted: -2480, cost: 3560 },
  { modules: 4, variant: "neighbour", weighted: -540, cost: 1340 },
  { modules: 16, variant: "neighbour", weighted: -2860, cost: 3280 },
];
/** Cost and value of every unbeaten plan of two modules, by ε-constraint with a lexicographic second solve, in the reference. */
const FRONT_OF_TWO = [
  [0, 0],
  [400, 180],
  [440, 360],
  [580, 540],
  [700, 660],
  [860, 720],
];

const solver = highsSolver();
afterAll(() => solver.close());

/** One of the currency is six thousand sixtieths of a cent. */
const MONEY = 6000;

function problemOf(modules: number, variant: PlanVariant) {
  const index = indexRecord(recordOfInstance(planInstance(modules), variant));
  return movesProblemOf(index, policyOf(index.record), demandOf(index, INSTANCE_JOB));
}

async function best(problem: ReturnType<typeof problemOf>, objective: Objective) {
  const form = milpOf(problem, objective);
  const session = await solver.open(form.milp as Milp);
  const answer = await session.solve();
  session.close();
  if (answer.values === undefined) return undefined;
  expect(answer.status).toBe("optimal");
  const choice = form.decode(answer.values);
  expect(choiceFaults(problem, choice)).toEqual([]);
  const score = scoreOf(problem, choice);
  return { cost: score.cost / MONEY, value: score.value / 1000 };
}

describe("the model with moves against proven optima", () => {
  for (const { modules, variant, weighted, cost } of OPTIMA) {
    it(`${modules} modules, ${variant}: the least of cost less value is ${weighted}`, async () => {
      const found = await best(problemOf(modules, variant), { best: "weighted" });
      expect((found?.cost ?? 0) - (found?.value ?? 0)).toBe(weighted);
    });
    it(`${modules} modules, ${variant}: the cheapest plan with 80 % of the wish value costs ${cost}`, async () => {
      const total = planInstance(modules).loads.reduce((sum, load) => sum + load.value, 0);
      const found = await best(problemOf(modules, variant), {
        best: "least-cost",
        leastValue: 1000 * Math.round(0.8 * total),
      });
      expect(found?.cost).toBe(cost);
    });
  }
  it("2 modules, neighbour: cost by cost, the front has exactly the reference's six points", async () => {
    const problem = problemOf(2, "neighbour");
    const points: number[][] = [];
    for (let need = 0; ; ) {
      const cheapest = await best(problem, { best: "least-cost", leastValue: 1000 * need });
      if (cheapest === undefined) break;
      const most = await best(problem, { best: "most-value", mostCost: MONEY * cheapest.cost });
      points.push([cheapest.cost, most?.value ?? -1]);
      need = (most?.value ?? 0) + 1;
    }
    expect(points).toEqual(FRONT_OF_TWO);
  });
});
