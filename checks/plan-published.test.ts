import { frontOf } from "@fusebook/core/plan";
import { indexRecord } from "@fusebook/core/record";
import { describe, expect, it } from "vitest";
import { planInstance, recordOfInstance } from "./plan-instance.js";

/**
 * Source: synthetic retrofit instances of the project's reference cases (loads cannot move, seed 1). Each optimum was proved there by four or five pairs of a general
 * solver and a formulation, none of them ours; the front of the smallest by a program of its own, its weighted and 80 % points agreeing with the solvers.
 */
const OPTIMA = [
  { modules: 4, weighted: -400, cost: 1560 },
  { modules: 8, weighted: -1120, cost: 2600 },
  { modules: 16, weighted: -1180, cost: 5340 },
  { modules: 32, weighted: -2840, cost: 11060 },
];
const FRONT_OF_FOUR = [
  [0, 0],
  [360, 420],
  [520, 840],
  [880, 1260],
  [1040, 1440],
  [1240, 1620],
  [1400, 1800],
  [1560, 1860],
  [1760, 2040],
  [1920, 2220],
  [2080, 2280],
];

const frontPoints = (modules: number): { cost: number; value: number }[] =>
  frontOf(indexRecord(recordOfInstance(planInstance(modules))), undefined, { check: null }).plans.map((plan) => ({
    cost: plan.costCents / 100,
    value: plan.wishValue,
  }));

/** Points that no other beats on cost and value alone: modules touched do not count in the reference. */
function onCostAndValue(points: readonly { cost: number; value: number }[]): number[][] {
  const kept: number[][] = [];
  let best = Number.NEGATIVE_INFINITY;
  for (const { cost, value } of [...points].sort((a, b) => a.cost - b.cost || b.value - a.value))
    if (value > best) {
      kept.push([cost, value]);
      best = value;
    }
  return kept;
}

describe("the front of a fixed controller against proven optima", () => {
  for (const { modules, weighted, cost } of OPTIMA) {
    it(`${modules} modules: the least of cost less value is ${weighted}`, () => {
      expect(Math.min(...frontPoints(modules).map((point) => point.cost - point.value))).toBe(weighted);
    });
    it(`${modules} modules: the cheapest plan with 80 % of the wish value costs ${cost}`, () => {
      const need = Math.round(0.8 * planInstance(modules).loads.reduce((sum, load) => sum + load.value, 0));
      const enough = frontPoints(modules).filter((point) => point.value >= need);
      expect(Math.min(...enough.map((point) => point.cost))).toBe(cost);
    });
  }
  it("4 modules: the front on cost and value has exactly the reference's eleven points", () => {
    expect(onCostAndValue(frontPoints(4))).toEqual(FRONT_OF_FOUR);
  });
});
