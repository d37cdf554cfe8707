import type { Weights } from "./chain-problem.js";
import { type LeastColumn, leastColumn } from "./column-search.js";
import type { Prepared } from "./prepared.js";

/** A bound: no solution weighs less than `bound`. `least[m]` is the least weighed column of module `m` under these prices. */
export interface Priced {
  readonly weights: Weights;
  readonly prices: Float64Array;
  readonly bound: number;
  readonly least: Float64Array;
}

export interface Ascent {
  /** Weighed best solution known: the bound cannot pass it. */
  readonly target: number;
  /** The bound need not rise above this. */
  readonly enough: number;
  readonly mostSteps: number;
  /** Least distance to the target to step by. */
  readonly least: number;
}

interface Step {
  readonly bound: number;
  readonly columns: readonly LeastColumn[];
}

const PATIENCE = 5;
/** How much of the last direction stays in the next: damps the zigzag of plain steps. */
const DEFLECTION = 0.6;

function priceOnce(prepared: Prepared, weights: Weights, prices: Float64Array): Step | undefined {
  const columns: LeastColumn[] = [];
  const { homes, parts } = prepared.problem;
  let bound = 0;
  for (let i = 0; i < homes.length; i++) bound += prices[i] as number;
  parts.forEach(({ inStock }, k) => {
    bound -= inStock * (prices[homes.length + k] as number);
  });
  for (const patterns of prepared.modules) {
    const column = leastColumn(patterns, weights, prices);
    if (column === undefined) return undefined;
    columns.push(column);
    bound += column.weighed;
  }
  return { bound, columns };
}

/** For each circuit: 1 less the number of modules that take it. For each part: how many are taken beyond stock and what is given back. */
function missingIn(prepared: Prepared, step: Step): Float64Array {
  const { homes, parts } = prepared.problem;
  const missing = new Float64Array(homes.length + parts.length).fill(1);
  parts.forEach(({ inStock }, k) => {
    missing[homes.length + k] = -inStock;
  });
  for (const { pattern, options } of step.columns) {
    if (pattern.fitsAt >= 0) missing[pattern.fitsAt] = (missing[pattern.fitsAt] as number) + 1;
    if (pattern.freesAt >= 0) missing[pattern.freesAt] = (missing[pattern.freesAt] as number) - 1;
    for (const option of options) {
      const circuit = pattern.circuits[pattern.owner[option] as number] as number;
      missing[circuit] = (missing[circuit] as number) - 1;
    }
  }
  return missing;
}

/**
 * How little can any solution weigh? Each circuit gets a price; a module takes the column that gains most at these prices. The sum is a bound for any prices;
 * prices of circuits that nobody takes rise and of those that two take fall (subgradient steps with a deflected direction), which lifts it. Undefined where
 * some module has no column at all.
 */
export function raisePrices(
  prepared: Prepared,
  weights: Weights,
  start: Float64Array,
  ascent: Ascent,
): Priced | undefined {
  const { homes, parts } = prepared.problem;
  const count = homes.length + parts.length;
  // A part is worth no more than it costs to buy; where none can be bought, as much as it takes.
  const mostOf = (i: number): number =>
    weights.perCost === 0 ? 0 : weights.perCost * (parts[i - homes.length]?.price ?? 0);
  const prices = Float64Array.from(start);
  const direction = new Float64Array(count);
  let best: { prices: Float64Array; step: Step } | undefined;
  let scale = 1.2;
  let stale = 0;
  for (let turn = 0; turn < ascent.mostSteps && scale > 0.01; turn++) {
    const step = priceOnce(prepared, weights, prices);
    if (step === undefined) return undefined;
    const gained = step.bound - (best?.step.bound ?? Number.NEGATIVE_INFINITY);
    if (gained > 1e-9) {
      best = { prices: Float64Array.from(prices), step };
      stale = gained < 1e-3 * Math.max(ascent.least, ascent.target - step.bound) ? stale + 0.5 : 0;
    } else stale++;
    if (best === undefined || best.step.bound >= ascent.enough) break;
    if (stale >= PATIENCE) {
      scale *= 0.6;
      stale = 0;
      prices.set(best.prices);
      direction.fill(0);
    }
    const missing = missingIn(prepared, step);
    for (let i = homes.length; i < count; i++)
      if ((missing[i] as number) < 0 ? prices[i] === 0 : prices[i] === mostOf(i)) missing[i] = 0;
    if (missing.every((each) => each === 0)) break;
    let length = 0;
    for (let i = 0; i < count; i++) {
      direction[i] = (missing[i] as number) + DEFLECTION * (direction[i] as number);
      length += (direction[i] as number) ** 2;
    }
    const by = (scale * Math.max(ascent.least, ascent.target - step.bound)) / length;
    for (let i = 0; i < count; i++) prices[i] = (prices[i] as number) + by * (direction[i] as number);
    for (let i = homes.length; i < count; i++) prices[i] = Math.min(mostOf(i), Math.max(0, prices[i] as number));
  }
  if (best === undefined) return undefined;
  const { step } = best;
  return { weights, prices: best.prices, bound: step.bound, least: Float64Array.from(step.columns, (c) => c.weighed) };
}
