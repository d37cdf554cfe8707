import type { Weights } from "./chain-problem.js";
import { type LaidPattern, layPattern, lowOf, penaliseCurrent, quickBound, traceLeast } from "./laid-pattern.js";
import type { Away, PreparedPattern } from "./prepared.js";

const EPSILON = 1e-9;

/** What a module's own part of a solution may cost and how many wires it may move at most, circuits it leaves to its neighbours included. */
export interface ColumnLimits {
  readonly cost: number;
  readonly wires: number;
}

const NOTHING: Away = { cost: 0, wires: 0 };
const NO_LIMITS: ColumnLimits = { cost: Number.POSITIVE_INFINITY, wires: Number.POSITIVE_INFINITY };

/** What the search shows of a column it has reached. `options` (places in the laid list) is the search's own list: copy what is kept. */
export type Visit = (weighed: number, options: readonly number[]) => void;

/**
 * Every column of a laid pattern that weighs no more than `limitOf()` (asked again at each step, so it may fall), within channels, current and wires moved. `isStopped` ends it early.
 */
export function searchLaid(
  laid: LaidPattern,
  limitOf: () => number,
  visit: Visit,
  most: ColumnLimits = NO_LIMITS,
  isStopped?: () => boolean,
): void {
  const { prepared, from, option, weighed, rest, restPenalised, perMicroA } = laid;
  const { count, start } = prepared.states;
  const { limitMicroA } = prepared.pattern;
  const n = from.length - 1;
  const taken: number[] = [];
  // A circuit of its own that it does not hold is held next door: that costs something there.
  const away = Array.from({ length: n }, (_, i) => {
    const first = option[from[i] as number] as number;
    return prepared.away.get(prepared.circuits[prepared.owner[first] as number] as number) ?? NOTHING;
  });
  let startCost = prepared.pattern.cost;
  let startWires = 0;
  for (const each of prepared.away.values())
    if (!away.includes(each)) {
      startCost += each.cost;
      startWires += each.wires;
    }
  const go = (i: number, sum: number, state: number, microA: number, cost: number, wires: number): void => {
    const limit = limitOf();
    if (sum + (rest[i * count + state] as number) > limit) return;
    if (
      restPenalised !== undefined &&
      sum + (restPenalised[i * count + state] as number) - perMicroA * (limitMicroA - microA) > limit
    )
      return;
    if (i === n) {
      visit(sum, taken);
      return;
    }
    if (isStopped?.()) return;
    for (let o = from[i] as number; o < (from[i + 1] as number); o++) {
      const at = option[o] as number;
      const draws = microA + (prepared.microA[at] as number);
      const to = (prepared.after[at] as Int16Array)[state] as number;
      const moved = wires + (prepared.wires[at] as number);
      if (to < 0 || draws > limitMicroA || moved > most.wires) continue;
      const costs = cost + (prepared.cost[at] as number);
      if (costs > most.cost) continue;
      taken.push(o);
      go(i + 1, sum + (weighed[o] as number), to, draws, costs, moved);
      taken.pop();
    }
    const { cost: awayCost, wires: awayWires } = away[i] as Away;
    if (awayCost < Number.POSITIVE_INFINITY && cost + awayCost <= most.cost && wires + awayWires <= most.wires)
      go(i + 1, sum, state, microA, cost + awayCost, wires + awayWires);
  };
  if (startCost < Number.POSITIVE_INFINITY && startCost <= most.cost && startWires <= most.wires)
    go(0, laid.base, start, 0, startCost, startWires);
}

/** The least column of one pattern, or none below `limit`. Options are places in the laid list. */
function leastOfPattern(laid: LaidPattern, limit: number): { weighed: number; options: readonly number[] } | undefined {
  const low = lowOf(laid);
  if (!(low < limit - EPSILON)) return undefined;
  const traced = traceLeast(laid, laid.rest, 0);
  if (traced.microA <= laid.prepared.pattern.limitMicroA) return { weighed: low, options: traced.options };
  penaliseCurrent(laid);
  let best = limit - EPSILON;
  let options: number[] | undefined;
  searchLaid(
    laid,
    () => best,
    (weighed, taken) => {
      best = weighed - EPSILON;
      options = [...taken];
    },
  );
  return options === undefined ? undefined : { weighed: best + EPSILON, options };
}

export interface LeastColumn {
  readonly weighed: number;
  readonly pattern: PreparedPattern;
  /** Places of the options in the prepared pattern. */
  readonly options: readonly number[];
}

/** The least column of a module among these patterns, under weights and prices. */
export function leastColumn(
  patterns: readonly PreparedPattern[],
  weights: Weights,
  prices: Float64Array,
): LeastColumn | undefined {
  const bounded = patterns.map((pattern) => ({ pattern, bound: quickBound(pattern, weights, prices) }));
  bounded.sort((a, b) => a.bound - b.bound || a.pattern.at - b.pattern.at);
  let best: LeastColumn | undefined;
  for (const { pattern, bound } of bounded) {
    const limit = best?.weighed ?? Number.POSITIVE_INFINITY;
    if (bound >= limit - EPSILON) break;
    const laid = layPattern(pattern, weights, prices, 0);
    const found = leastOfPattern(laid, limit);
    if (found !== undefined)
      best = { weighed: found.weighed, pattern, options: found.options.map((o) => laid.option[o] as number) };
  }
  return best;
}
