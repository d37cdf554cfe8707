import type { ChainProblem } from "./chain-problem.js";
import type { WeightRange } from "./corner-weights.js";
import type { Measures } from "./corners.js";

/** The grain of a problem's figures. */
export interface ProblemScale {
  /** Every sum is a whole multiple of these. */
  readonly step: Measures;
  /** Every solution costs less. */
  readonly mostCost: number;
  /** A cost worth a look: where a search begins to widen its gap. */
  readonly grain: number;
  readonly range: WeightRange;
  /** The same where cost weighs nothing and value 1. */
  readonly rangeOfValue: WeightRange;
}

const LEANING = 1e-3;

const divisor = (a: number, b: number): number => (b === 0 ? Math.abs(a) : divisor(b, a % b));

/** In which steps do cost and value run, and how far? */
export function scaleOf(problem: ChainProblem): ProblemScale {
  let costStep = problem.places.reduce(divisor, 0);
  for (const { price } of problem.parts) if (Number.isFinite(price)) costStep = divisor(costStep, price);
  let valueStep = 0;
  let mostCost = problem.places.reduce((sum, cost) => sum + cost, 0);
  for (const { patterns } of problem.modules) {
    let dearest = 0;
    for (const pattern of patterns) {
      const price = problem.parts[pattern.fits ?? -1]?.price ?? 0;
      costStep = divisor(costStep, pattern.cost);
      valueStep = divisor(valueStep, pattern.value);
      let cost = pattern.cost + (Number.isFinite(price) ? price : 0);
      for (const option of pattern.options) {
        costStep = divisor(costStep, option.cost);
        valueStep = divisor(valueStep, option.value);
        cost += Math.max(0, option.cost);
      }
      dearest = Math.max(dearest, cost);
    }
    mostCost += dearest;
  }
  const step = { cost: costStep === 0 ? 1 : costStep, value: valueStep === 0 ? 1 : valueStep, wires: 1 };
  mostCost += step.cost;
  const lean = { leanPerValue: LEANING * step.value, leanPerWire: LEANING };
  return {
    step,
    mostCost,
    grain: Math.max(step.cost, mostCost / (200 * Math.max(1, problem.modules.length))),
    range: { mostPerValue: mostCost / step.value, mostPerWire: mostCost, ...lean },
    rangeOfValue: { mostPerValue: 1, mostPerWire: 4 * step.value, ...lean },
  };
}
