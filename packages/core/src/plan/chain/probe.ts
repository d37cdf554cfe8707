import type { ChainPoint, Weights } from "./chain-problem.js";
import { columnsWithin } from "./columns.js";
import type { Measures } from "./corners.js";
import { joinColumns } from "./join-columns.js";
import { ANYTHING, type OpenFront } from "./open-front.js";
import type { Prepared } from "./prepared.js";
import type { PriceBook } from "./price-book.js";
import { type Priced, raisePrices } from "./prices.js";
import type { ProblemScale } from "./problem-scale.js";

export interface Ground {
  readonly prepared: Prepared;
  readonly scale: ProblemScale;
  readonly book: PriceBook;
  readonly front: OpenFront<ChainPoint>;
}

export interface Probe {
  readonly weights: Weights;
  /** Weight of the worst point that is looked for. */
  readonly aimed: number;
  /** The worst point that is looked for: its wires are a limit from the first, its cost and value where the search without them grows too wide. */
  readonly aim: Measures;
  readonly mostSteps: number;
  /** Steps of listing and joining before it gives up. */
  readonly effort: number;
  /** True: goes on until nothing up to `aimed` can be missing; else until the least point is proved. */
  isWanted(): boolean;
}

const TOLERANCE = 1e-6;
/** How much wider the gap gets each time, and where the last turn was little work. */
const WIDER = 1.7;
const MUCH_WIDER = 4;
const LITTLE_WORK = 1000;
/** Share of the effort that is spent before the search keeps to the corner's own cost and value. */
const SHARE_AT_LARGE = 0.06;

function widen(ground: Ground, asked: Probe, priced: Priced, within: Measures, mostEffort: number): boolean {
  const { prepared, scale, front } = ground;
  const { weights, aimed } = asked;
  const whole = aimed - priced.bound;
  const effort = { left: mostEffort };
  for (let gap = Math.min(Math.max(whole, 0), 0.6 * scale.grain); ; ) {
    const before = effort.left;
    const columns = columnsWithin(prepared, priced, gap, within, effort);
    const points = columns === undefined ? undefined : joinColumns(prepared, columns, gap, within, effort);
    if (points === undefined) return false;
    front.add(points);
    // The whole gap reaches exactly what is aimed at, whatever the last digit of the sum.
    front.prove(weights, gap >= whole ? aimed : priced.bound + gap, within);
    if (gap >= whole) return true;
    if (priced.bound + gap >= front.bestWeighed(weights, within) && !asked.isWanted()) return true;
    gap = Math.min(whole, gap * (before - effort.left < LITTLE_WORK ? MUCH_WIDER : WIDER));
  }
}

/**
 * Lists every solution under some weights from the bound up, gap by widening gap: what it finds and proves goes into the front. `no-solution`: the problem has none at
 * all. `too-much`: the effort ran out first.
 */
export function probe(ground: Ground, asked: Probe): "done" | "too-much" | "no-solution" {
  const { prepared, scale, book, front } = ground;
  const { weights, aimed, aim } = asked;
  const atLarge = { ...ANYTHING, wires: aim.wires };
  const priced = raisePrices(prepared, weights, book.nearest(weights), {
    target: Math.min(front.bestWeighed(weights, atLarge), aimed + TOLERANCE, scale.mostCost),
    enough: aimed + 2 * TOLERANCE,
    mostSteps: asked.mostSteps,
    least: 0.3 * (weights.perCost === 0 ? scale.step.value : scale.step.cost),
  });
  if (priced === undefined) return "no-solution";
  book.add(priced);
  front.prove(weights, priced.bound - TOLERANCE, ANYTHING);
  if (weights.perCost === 0 || aimed - priced.bound < -TOLERANCE) return "done";
  if (widen(ground, asked, priced, atLarge, SHARE_AT_LARGE * asked.effort)) return "done";
  return widen(ground, asked, priced, aim, asked.effort) ? "done" : "too-much";
}
