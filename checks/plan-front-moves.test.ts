import { choiceFaults, demandOf, frontOfProblem, movesProblemOf, scoreOf } from "@fusebook/core/plan";
import { indexRecord, policyOf } from "@fusebook/core/record";
import { describe, expect, it } from "vitest";
import seedTwo from "./data/plan-4-seed-2.json" with { type: "json" };
import { INSTANCE_JOB, type PlanInstance, planInstance, recordOfInstance } from "./plan-instance.js";

/**
 * Source: synthetic retrofit instances of the project's reference cases, circuits free to go to the neighbouring module. The counts of points on cost and value and the
 * points of the smallest were found there by the ε-constraint method with a general solver; the optima proved by up to nine pairs of solver and formulation, none ours.
 */
const FRONT_OF_TWO = [
  [0, 0],
  [400, 180],
  [440, 360],
  [580, 540],
  [700, 660],
  [860, 720],
];
const MONEY = 6000;
const TIMEOUT_MS = 240_000;

const problemOf = (instance: PlanInstance) => {
  const index = indexRecord(recordOfInstance(instance, "neighbour"));
  return movesProblemOf(index, policyOf(index.record), demandOf(index, INSTANCE_JOB));
};

/** The problem in which wires moved are not counted, as in the reference. */
const withoutWires = (problem: ReturnType<typeof problemOf>) => ({
  ...problem,
  circuits: problem.circuits.map((circuit) => ({
    ...circuit,
    placings: circuit.placings.map((placing) => ({ ...placing, wiresMoved: 0 })),
  })),
});

const onCostAndValue = (points: readonly { cost: number; value: number }[]): number[][] => {
  const kept: number[][] = [];
  let best = Number.NEGATIVE_INFINITY;
  for (const { cost, value } of [...points].sort((a, b) => a.cost - b.cost || b.value - a.value))
    if (value > best) {
      kept.push([cost / MONEY, value / 1000]);
      best = value;
    }
  return kept;
};

describe("the front with moves against the reference", () => {
  it(
    "2 modules: exactly the reference's six points on cost and value, wires counted or not",
    async () => {
      const problem = problemOf(planInstance(2));
      const counted = await frontOfProblem(problem);
      expect(counted.isComplete).toBe(true);
      expect(counted.by).toBe("chain");
      expect(onCostAndValue(counted.points)).toEqual(FRONT_OF_TWO);
      const uncounted = await frontOfProblem(withoutWires(problem));
      expect(onCostAndValue(uncounted.points)).toEqual(FRONT_OF_TWO);
    },
    TIMEOUT_MS,
  );
  it(
    "4 modules, seed 2: twelve points on cost and value",
    async () => {
      const front = await frontOfProblem(withoutWires(problemOf(seedTwo as PlanInstance)));
      expect(front.isComplete).toBe(true);
      expect(front.points).toHaveLength(12);
    },
    TIMEOUT_MS,
  );
  it(
    "8 modules, seed 1: 58 points on cost and value, without a solver",
    async () => {
      const front = await frontOfProblem(withoutWires(problemOf(planInstance(8))));
      expect(front).toMatchObject({ isComplete: true, by: "chain", solves: 0 });
      expect(front.points).toHaveLength(58);
    },
    TIMEOUT_MS,
  );
  for (const { modules, weighted, cost } of [
    { modules: 4, weighted: -540, cost: 1340 },
    { modules: 16, weighted: -2860, cost: 3280 },
  ])
    it(
      `${modules} modules: it passes through the least of cost less value (${weighted}) and the cheapest with 80 % of the value (${cost})`,
      async () => {
        const instance = planInstance(modules);
        const front = await frontOfProblem(withoutWires(problemOf(instance)));
        expect(front.isComplete).toBe(true);
        const points = onCostAndValue(front.points) as [number, number][];
        expect(Math.min(...points.map(([money, value]) => money - value))).toBe(weighted);
        const need = Math.round(0.8 * instance.loads.reduce((sum, load) => sum + load.value, 0));
        expect(Math.min(...points.filter(([, value]) => value >= need).map(([money]) => money))).toBe(cost);
      },
      TIMEOUT_MS,
    );
  it(
    "4 modules, wires counted: every point can be done, scores what it says, and none is no worse than another; twice the same",
    async () => {
      const problem = problemOf(seedTwo as PlanInstance);
      const front = await frontOfProblem(problem);
      expect(front.isComplete).toBe(true);
      for (const point of front.points) {
        expect(choiceFaults(problem, point.choice)).toEqual([]);
        expect(scoreOf(problem, point.choice)).toEqual(point.score);
        const isBeaten = front.points.some(
          (other) =>
            other !== point && other.cost <= point.cost && other.value >= point.value && other.wires <= point.wires,
        );
        expect(isBeaten).toBe(false);
      }
      expect(await frontOfProblem(problem)).toEqual(front);
    },
    TIMEOUT_MS,
  );
});
