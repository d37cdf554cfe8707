import { type ChainPoint, type ChainProblem, weigh } from "./chain-problem.js";
import { weightsFor, wireWeightFor } from "./corner-weights.js";
import type { Measures } from "./corners.js";
import { ANYTHING, OpenFront } from "./open-front.js";
import { prepare } from "./prepared.js";
import { priceBookOf } from "./price-book.js";
import { type Ground, type Probe, probe } from "./probe.js";
import { scaleOf } from "./problem-scale.js";

export interface ChainFrontOptions {
  /** Nothing dearer is looked for. */
  readonly mostCost?: number | undefined;
  /** Steps of listing and joining spent on one corner before it is given to the caller. */
  readonly effort?: number;
}

/** Where a search stands after each turn. Unbeaten so far are `points`; more may lie in `corners`. */
export interface ChainTurn {
  readonly points: readonly ChainPoint[];
  readonly corners: readonly Measures[];
  /** True: the cheapest and the worthiest of all are among the points. */
  readonly areEndsKnown: boolean;
  /** The search could not settle this corner: the caller does (a point in it, or undefined: there is none), or leaves it open. */
  readonly stuckAt?: Measures;
}

export type Settled = { readonly point: ChainPoint | undefined } | "left-open";

const EFFORT = 8_000_000;
const STEPS = 80;
const STEPS_OF_PROOF = 25;

class ChainSearch {
  readonly ground: Ground;
  /** Corners of this cost are open upwards: every solution that may be costs less. */
  private readonly topCost: number;
  private readonly climbs = new Map<number, number>();
  constructor(
    problem: ChainProblem,
    private readonly effort: number,
    mostCost: number | undefined,
  ) {
    const prepared = prepare(problem);
    const scale = scaleOf(problem);
    this.topCost = Math.min(scale.mostCost, (mostCost ?? scale.mostCost) + scale.step.cost);
    this.ground = {
      prepared,
      scale,
      book: priceBookOf(problem, scale),
      front: new OpenFront(scale.step, { ...ANYTHING, cost: this.topCost }),
    };
  }

  private probe(asked: Omit<Probe, "effort">): ReturnType<typeof probe> {
    return probe(this.ground, { ...asked, effort: this.effort });
  }

  /** The cheapest of all, of those the worthiest, of those with the fewest wires moved. */
  cheapest(): ReturnType<typeof probe> {
    const { step } = this.ground.scale;
    return this.probe({
      weights: { perCost: 1, perValue: (1e-3 * step.cost) / step.value, perWire: 1e-4 * step.cost },
      aimed: Number.POSITIVE_INFINITY,
      aim: ANYTHING,
      mostSteps: STEPS,
      isWanted: () => false,
    });
  }

  private settle(corner: Measures): ReturnType<typeof probe> {
    const { front, scale } = this.ground;
    const aim = front.aimOf(corner);
    const weights = weightsFor(aim, front.points, scale.range);
    const isWanted = () => front.corners.includes(corner);
    const outcome = this.probe({ weights, aimed: weigh(aim, weights), aim, mostSteps: STEPS, isWanted });
    return outcome === "done" && isWanted() ? "too-much" : outcome;
  }

  /** A corner open upwards: is a higher value proved impossible? If not, the weight of value rises until a point is found. */
  private climb(corner: Measures): ReturnType<typeof probe> {
    const { front, scale } = this.ground;
    const aim = front.aimOf(corner);
    const isWanted = () => front.corners.includes(corner);
    const atAnyCost = { ...aim, cost: Number.POSITIVE_INFINITY };
    const proof = weightsFor(atAnyCost, front.points, scale.rangeOfValue);
    const before = this.climbs.get(corner.wires);
    const mostSteps = before === undefined ? 1 : STEPS_OF_PROOF;
    this.probe({ weights: proof, aimed: weigh(aim, proof), aim, mostSteps, isWanted });
    if (!isWanted()) return "done";
    const perValue = (before ?? scale.step.cost / scale.step.value / 2) * 2;
    if (perValue > scale.range.mostPerValue) return this.settle(corner);
    this.climbs.set(corner.wires, perValue);
    const perWire = wireWeightFor(aim, front.points, 1, perValue, scale.range).at;
    const weights = { perCost: 1, perValue, perWire };
    return this.probe({ weights, aimed: weigh(aim, weights), aim, mostSteps: STEPS, isWanted: () => false });
  }

  private isTop(corner: Measures): boolean {
    return corner.cost >= this.topCost;
  }

  get areEndsKnown(): boolean {
    return !this.ground.front.corners.some((corner) => this.isTop(corner) && corner.wires === Number.POSITIVE_INFINITY);
  }

  /** Deals with one corner; the corner where it could not. */
  turn(): Measures | undefined {
    const { front } = this.ground;
    const corner =
      front.corners.find((each) => this.isTop(each) && each.wires === Number.POSITIVE_INFINITY) ??
      front.corners.find((each) => !this.isTop(each)) ??
      front.corners[0];
    if (corner === undefined) return undefined;
    const outcome = this.isTop(corner) ? this.climb(corner) : this.settle(corner);
    return outcome === "too-much" && front.corners.includes(corner) ? corner : undefined;
  }
}

/**
 * The exact front of a row of modules over cost, value and wires moved: every point that no other is no worse than, and a proof that there are no more. Turn by turn, so that the
 * caller may look, pause or stop: the points so far are always real solutions. It begins with the cheapest and climbs to the worthiest, then fills in between.
 */
export function* chainFront(
  problem: ChainProblem,
  options: ChainFrontOptions = {},
): Generator<ChainTurn, ChainTurn, Settled | undefined> {
  const search = new ChainSearch(problem, options.effort ?? EFFORT, options.mostCost);
  const { front } = search.ground;
  const leftOpen: Measures[] = [];
  const turn = (): ChainTurn => ({
    points: front.points,
    corners: [...front.corners, ...leftOpen],
    areEndsKnown: search.areEndsKnown,
  });
  if (search.cheapest() === "no-solution") return { points: [], corners: [], areEndsKnown: true };
  yield turn();
  while (front.corners.length > 0) {
    const stuckAt = search.turn();
    if (stuckAt === undefined) {
      yield turn();
      continue;
    }
    const settled = yield { ...turn(), stuckAt };
    if (settled !== undefined && settled !== "left-open" && settled.point !== undefined) front.add([settled.point]);
    else {
      front.close(stuckAt);
      if (settled === undefined || settled === "left-open") leftOpen.push(stuckAt);
    }
  }
  return turn();
}
