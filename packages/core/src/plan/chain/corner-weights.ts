import { type Weights, weigh } from "./chain-problem.js";
import type { Measures } from "./corners.js";

const TURNS = 40;

/** The place of the highest value of a concave function on [0, most], by thirds. */
function highest(most: number, of: (at: number) => number): { readonly at: number; readonly value: number } {
  let low = 0;
  let high = most;
  for (let turn = 0; turn < TURNS && high - low > 1e-6 * Math.max(1, most); turn++) {
    const third = (high - low) / 3;
    if (of(low + third) < of(high - third)) low += third;
    else high -= third;
  }
  const at = (low + high) / 2;
  return { at, value: of(at) };
}

/** How far weights may go, and how much less than a least step of value and wires keeps them low where many do as well. */
export interface WeightRange {
  readonly mostPerValue: number;
  readonly mostPerWire: number;
  readonly leanPerValue: number;
  readonly leanPerWire: number;
}

/** By how much the best point known outweighs the aim, under weights. */
const leadOf = (aim: Measures, points: readonly Measures[], weights: Weights, range: WeightRange): number => {
  let best = Number.POSITIVE_INFINITY;
  for (const point of points) best = Math.min(best, weigh(point, weights));
  return best - weigh(aim, weights) - range.leanPerValue * weights.perValue - range.leanPerWire * weights.perWire;
};

/** The weight of a wire under which the aim lies least far above the best of the points known, those of cost and value given. */
export function wireWeightFor(
  aim: Measures,
  points: readonly Measures[],
  perCost: number,
  perValue: number,
  range: WeightRange,
): { readonly at: number; readonly value: number } {
  const lead = (perWire: number) => leadOf(aim, points, { perCost, perValue, perWire }, range);
  return Number.isFinite(aim.wires) ? highest(range.mostPerWire, lead) : { at: 0, value: lead(0) };
}

/**
 * The weights under which a point aimed at lies least far above the best of the points known: there the bound has the least to make up. With the hull of
 * the points known these are the weights of the face below it. What the aim does not bound weighs nothing.
 */
export function weightsFor(aim: Measures, points: readonly Measures[], range: WeightRange): Weights {
  const perCost = Number.isFinite(aim.cost) ? 1 : 0;
  const wireAt = (perValue: number) => wireWeightFor(aim, points, perCost, perValue, range);
  const perValue = !Number.isFinite(aim.value)
    ? 0
    : perCost === 0
      ? 1
      : highest(range.mostPerValue, (at) => wireAt(at).value).at;
  return { perCost, perValue, perWire: wireAt(perValue).at };
}
