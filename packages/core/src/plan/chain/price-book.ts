import type { ChainProblem, Weights } from "./chain-problem.js";
import type { Priced } from "./prices.js";
import type { ProblemScale } from "./problem-scale.js";

/** Prices found so far, so that those of the nearest weights can be begun from. */
export interface PriceBook {
  add(priced: Priced): void;
  nearest(weights: Weights): Float64Array;
}

const apart = (a: number, b: number, floor: number): number => Math.abs(Math.log((a + floor) / (b + floor)));

export function priceBookOf(problem: ChainProblem, scale: ProblemScale): PriceBook {
  const known: Priced[] = [];
  // Where cost weighs nothing, no circuit is worth more than its best value: with these prices the bound is the sum of those.
  const count = problem.homes.length + problem.parts.length;
  const worth = new Float64Array(count);
  // A part that can be bought counts at first what it costs.
  const start = new Float64Array(count);
  problem.parts.forEach(({ price }, k) => {
    start[problem.homes.length + k] = Number.isFinite(price) ? price : 0;
  });
  for (const { patterns } of problem.modules)
    for (const { options } of patterns)
      for (const { circuit, value } of options) worth[circuit] = Math.min(worth[circuit] as number, -value);
  return {
    add: (priced) => void known.push(priced),
    nearest(weights) {
      const alike = known.filter((each) => each.weights.perCost === weights.perCost);
      if (alike.length === 0) return weights.perCost === 0 ? worth : start;
      const floor = (0.01 * scale.step.cost) / scale.step.value;
      const distance = (each: Priced): number =>
        apart(each.weights.perValue, weights.perValue, floor) +
        0.3 * apart(each.weights.perWire, weights.perWire, scale.step.cost / 2);
      let best = alike[0] as Priced;
      for (const each of alike) if (distance(each) < distance(best)) best = each;
      return best.prices;
    },
  };
}
