import type { Weights } from "./chain-problem.js";
import type { PreparedPattern } from "./prepared.js";

/**
 * A pattern under given weights and prices, with the least that can still be reached from any place in the list of circuits and any free channels:
 * `rest[i * count + state]` is the least sum of weighed options of the circuits from the `i`th on. It is exact but for the limit on current.
 */
export interface LaidPattern {
  readonly prepared: PreparedPattern;
  /** Weighed cost of the pattern itself. */
  readonly base: number;
  /** Options worth a look, by place in the prepared list, those of circuit `i` from `from[i]` up to `from[i + 1]`; most gainful circuits first. */
  readonly from: Int32Array;
  readonly option: Int32Array;
  readonly weighed: Float64Array;
  readonly rest: Float64Array;
  /** Penalty on current under which the limit is bounded too; 0 where the limit does not bind. */
  perMicroA: number;
  restPenalised: Float64Array | undefined;
}

const EPSILON = 1e-9;

/** Weighed cost of an option: what it costs less what it is worth, less the price of the circuit it holds. */
const weighOption = (prepared: PreparedPattern, option: number, weights: Weights, price: number): number =>
  weights.perCost * (prepared.cost[option] as number) -
  weights.perValue * (prepared.value[option] as number) +
  weights.perWire * (prepared.wires[option] as number) -
  price;

const baseOf = (prepared: PreparedPattern, weights: Weights, prices: Float64Array): number => {
  const { pattern, share, fitsAt, freesAt } = prepared;
  let base = weights.perCost * (pattern.cost + share) - weights.perValue * pattern.value;
  if (fitsAt >= 0) base += prices[fitsAt] as number;
  if (freesAt >= 0) base -= prices[freesAt] as number;
  return base;
};

/** A quick bound: every circuit at its best, channels not counted. */
export function quickBound(prepared: PreparedPattern, weights: Weights, prices: Float64Array): number {
  let bound = baseOf(prepared, weights, prices);
  const { circuits, from } = prepared;
  for (let i = 0; i < circuits.length; i++) {
    const price = prices[circuits[i] as number] as number;
    let low = 0;
    for (let o = from[i] as number; o < (from[i + 1] as number); o++) {
      const weighed = weighOption(prepared, o, weights, price);
      if (weighed < low) low = weighed;
    }
    bound += low;
  }
  return bound;
}

function fillRest(laid: Omit<LaidPattern, "rest">, perMicroA: number): Float64Array {
  const { prepared, from, option, weighed } = laid;
  const { count } = prepared.states;
  const n = from.length - 1;
  const rest = new Float64Array((n + 1) * count);
  for (let i = n - 1; i >= 0; i--) {
    const row = i * count;
    const next = row + count;
    for (let state = 0; state < count; state++) rest[row + state] = rest[next + state] as number;
    for (let o = from[i] as number; o < (from[i + 1] as number); o++) {
      const add = (weighed[o] as number) + perMicroA * (prepared.microA[option[o] as number] as number);
      const after = prepared.after[option[o] as number] as Int16Array;
      for (let state = 0; state < count; state++) {
        const to = after[state] as number;
        if (to < 0) continue;
        const sum = add + (rest[next + to] as number);
        if (sum < (rest[row + state] as number)) rest[row + state] = sum;
      }
    }
  }
  return rest;
}

/** Lays a pattern out, leaving away every option that weighs more than `spare`. */
export function layPattern(
  prepared: PreparedPattern,
  weights: Weights,
  prices: Float64Array,
  spare: number,
): LaidPattern {
  const { circuits, from } = prepared;
  const kept: { circuit: number; low: number; options: number[]; weighed: number[] }[] = [];
  for (let i = 0; i < circuits.length; i++) {
    const price = prices[circuits[i] as number] as number;
    let each: (typeof kept)[number] | undefined;
    for (let o = from[i] as number; o < (from[i + 1] as number); o++) {
      const weighed = weighOption(prepared, o, weights, price);
      if (weighed > spare) continue;
      if (each === undefined) {
        each = { circuit: i, low: weighed, options: [], weighed: [] };
        kept.push(each);
      }
      each.options.push(o);
      each.weighed.push(weighed);
      if (weighed < each.low) each.low = weighed;
    }
  }
  kept.sort((a, b) => a.low - b.low || a.circuit - b.circuit);
  const laidFrom = new Int32Array(kept.length + 1);
  for (let i = 0; i < kept.length; i++) laidFrom[i + 1] = (laidFrom[i] as number) + (kept[i]?.options.length as number);
  const laid = {
    prepared,
    base: baseOf(prepared, weights, prices),
    from: laidFrom,
    option: Int32Array.from(kept.flatMap((each) => each.options)),
    weighed: Float64Array.from(kept.flatMap((each) => each.weighed)),
    perMicroA: 0,
    restPenalised: undefined,
  };
  return { ...laid, rest: fillRest(laid, 0) };
}

export const lowOf = (laid: LaidPattern): number => laid.base + (laid.rest[laid.prepared.states.start] as number);

/** The column that the table (with or without penalty on current) calls least: its options, and what its circuits draw. */
export function traceLeast(
  laid: LaidPattern,
  rest: Float64Array,
  perMicroA: number,
): { readonly options: number[]; readonly microA: number } {
  const { prepared, from, option, weighed } = laid;
  const { count, start } = prepared.states;
  const options: number[] = [];
  let state = start;
  let microA = 0;
  for (let i = 0; i < from.length - 1; i++) {
    const here = rest[i * count + state] as number;
    if (here >= (rest[(i + 1) * count + state] as number) - EPSILON) continue;
    for (let o = from[i] as number; o < (from[i + 1] as number); o++) {
      const at = option[o] as number;
      const to = (prepared.after[at] as Int16Array)[state] as number;
      if (to < 0) continue;
      const draws = prepared.microA[at] as number;
      if ((weighed[o] as number) + perMicroA * draws + (rest[(i + 1) * count + to] as number) > here + EPSILON)
        continue;
      options.push(o);
      microA += draws;
      state = to;
      break;
    }
  }
  return { options, microA };
}

/** Sets the penalty on current by halving, so that the bound on columns within the limit is as high as it gets. */
export function penaliseCurrent(laid: LaidPattern): void {
  const { prepared, option, weighed } = laid;
  let low = 0;
  let high = 0;
  option.forEach((at, o) => {
    const draws = prepared.microA[at] as number;
    if (draws > 0) high = Math.max(high, Math.abs(weighed[o] as number) / draws);
  });
  if (high === 0) return;
  for (let turn = 0; turn < 10; turn++) {
    const middle = (low + high) / 2;
    if (traceLeast(laid, fillRest(laid, middle), middle).microA > prepared.pattern.limitMicroA) low = middle;
    else high = middle;
  }
  laid.perMicroA = high;
  laid.restPenalised = fillRest(laid, high);
}
