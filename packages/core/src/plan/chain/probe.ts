import type { ChainPoint, Weights } from "./chain-problem.js";
import { columnsWithin } from "./columns.js";
import { joinColumns } from "./join-columns.js";
import type { OpenFront } from "./open-front.js";
import type { Prepared } from "./prepared.js";
import type { PriceBook } from "./price-book.js";
import { raisePrices } from "./prices.js";
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
  readonly mostWires: number;
  readonly mostSteps: number;
  /** Steps of listing and joining before it gives up. */
  readonly effort: number;
  /** True: goes on until nothing up to `aimed` can be missing; else until the least point is proved. */
  isWanted(): boolean;
}

const TOLERANCE = 1e-6;
/** How much wider the gap gets each time. */
const WIDER = 1.7;

/**
 * Lists every solution under some weights from the bound up, gap by widening gap: what it finds and proves goes into the front. `no-solution`: the problem has none at
 * all. `too-much`: the effort ran out first.
 */
export function probe(ground: Ground, asked: Probe): "done" | "too-much" | "no-solution" {
  const { prepared, scale, book, front } = ground;
  const { weights, aimed, mostWires } = asked;
  const known = front.bestWeighed(weights, mostWires);
  const priced = raisePrices(prepared, weights, book.nearest(weights), {
    target: Math.min(known, aimed + TOLERANCE, scale.mostCost),
    enough: aimed + 2 * TOLERANCE,
    mostSteps: asked.mostSteps,
    least: 0.3 * (weights.perCost === 0 ? scale.step.value : scale.step.cost),
  });
  if (priced === undefined) return "no-solution";
  book.add(priced);
  front.prove(weights, priced.bound - TOLERANCE, Number.POSITIVE_INFINITY);
  const whole = aimed - priced.bound;
  if (weights.perCost === 0 || whole < -TOLERANCE) return "done";
  const effort = { left: asked.effort };
  for (let gap = Math.min(Math.max(whole, 0), 0.6 * scale.grain); ; gap = Math.min(whole, gap * WIDER)) {
    const columns = columnsWithin(prepared, priced, gap, mostWires, effort);
    const points = columns === undefined ? undefined : joinColumns(prepared, columns, gap, mostWires, effort);
    if (points === undefined) return "too-much";
    front.add(points);
    front.prove(weights, priced.bound + gap, mostWires);
    if (gap >= whole) return "done";
    if (priced.bound + gap >= front.bestWeighed(weights, mostWires) && !asked.isWanted()) return "done";
  }
}
