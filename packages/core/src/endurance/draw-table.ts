import type { Outcome } from "../quantity/index.js";
import type { MeanNetwork, MeanPoint } from "./mean-network.js";

interface Knot {
  readonly chargeRatio: number;
  readonly point: MeanPoint;
}

/** Straight lines between solved charges may miss a bank's current by this share; where they miss more, the stretch is halved. */
const LINE_RELATIVE = 2e-4;
const DEEPEST = 5;
/** A stretch in which the loads cannot run any more is narrowed down to this much charge. */
const EDGE_RATIO = 1 / 512;

const between = (a: readonly number[], b: readonly number[], t: number): number[] =>
  a.map((x, i) => x + (b[i]! - x) * t);

const mix = (a: Knot, b: Knot, chargeRatio: number): MeanPoint => {
  const t = b.chargeRatio === a.chargeRatio ? 0 : (chargeRatio - a.chargeRatio) / (b.chargeRatio - a.chargeRatio);
  return {
    groupA: between(a.point.groupA, b.point.groupA, t),
    groupV: between(a.point.groupV, b.point.groupV, t),
    // A step asks for the banks' currents many times, for what takes them once.
    get drawerA() {
      return between(a.point.drawerA, b.point.drawerA, t);
    },
    get drawerV() {
      return between(a.point.drawerV, b.point.drawerV, t);
    },
  };
};

const misses = (a: MeanPoint, b: MeanPoint): boolean =>
  a.groupA.some((x, i) => Math.abs(x - b.groupA[i]!) > LINE_RELATIVE * Math.max(Math.abs(b.groupA[i]!), 0.01));

/**
 * Mean currents of one state at any charge, from a few solves: at the bends of the batteries' own curves and between them, straight lines in between,
 * halved where a line would miss. Solved only where a run comes by.
 */
export class DrawTable {
  private readonly knots = new Map<number, Outcome<MeanPoint>>();
  private readonly cells = new Map<number, readonly Knot[]>();
  solves = 0;
  /** Below this charge the loads cannot all run, and why. */
  stopsAt: { readonly chargeRatio: number; readonly because: string } | undefined;

  constructor(
    readonly network: MeanNetwork,
    private readonly bends: readonly number[],
  ) {}

  /** The currents at this charge; at the lowest charge they can run at, where that is higher (see `stopsAt`). Nothing where they cannot run at all. */
  at(chargeRatio: number): MeanPoint | undefined {
    const s = Math.min(1, Math.max(0, chargeRatio));
    let c = this.bends.findIndex((bend) => bend >= s);
    c = Math.max(1, c < 0 ? this.bends.length - 1 : c);
    for (; c < this.bends.length; c++) {
      const cell = this.cells.get(c) ?? this.fill(c);
      if (cell.length === 0) continue;
      const upper = cell.findIndex((knot) => knot.chargeRatio >= s);
      return upper <= 0 ? cell[0]!.point : mix(cell[upper - 1]!, cell[upper]!, s);
    }
    return undefined;
  }

  private solve(chargeRatio: number): Outcome<MeanPoint> {
    const kept = this.knots.get(chargeRatio);
    if (kept !== undefined) return kept;
    const made = this.network.at(chargeRatio);
    this.solves++;
    this.knots.set(chargeRatio, made);
    return made;
  }

  private fill(c: number): readonly Knot[] {
    const top = this.bends[c]!;
    let bottom = this.bends[c - 1]!;
    const atTop = this.solve(top);
    let atBottom = this.solve(bottom);
    if (atTop.kind !== "known") {
      this.stop(top, atTop);
      this.cells.set(c, []);
      return [];
    }
    if (atBottom.kind !== "known") {
      let [bad, good] = [bottom, top];
      const why = atBottom;
      while (good - bad > EDGE_RATIO) {
        const middle = (good + bad) / 2;
        if (this.solve(middle).kind === "known") good = middle;
        else bad = middle;
      }
      this.stop(good, why);
      bottom = good;
      atBottom = this.solve(good);
    }
    if (atBottom.kind !== "known") return [];
    const knots = [{ chargeRatio: bottom, point: atBottom.value }];
    this.halve(knots, { chargeRatio: top, point: atTop.value }, 0);
    this.cells.set(c, knots);
    return knots;
  }

  private halve(knots: Knot[], end: Knot, depth: number): void {
    const start = knots.at(-1)!;
    const middle = (start.chargeRatio + end.chargeRatio) / 2;
    const found = depth < DEEPEST && end.chargeRatio > start.chargeRatio ? this.solve(middle) : undefined;
    if (found?.kind === "known") {
      const knot = { chargeRatio: middle, point: found.value };
      if (misses(mix(start, end, middle), found.value)) {
        this.halve(knots, knot, depth + 1);
        this.halve(knots, end, depth + 1);
        return;
      }
      if (depth === 0) knots.push(knot);
    }
    knots.push(end);
  }

  private stop(chargeRatio: number, why: Outcome<MeanPoint>): void {
    if (this.stopsAt !== undefined && this.stopsAt.chargeRatio >= chargeRatio) return;
    this.stopsAt = { chargeRatio, because: why.kind === "refused" ? why.because : "the network cannot be solved" };
  }
}

/** Where the published curve and the batteries' own curves bend, from 0 to 1. */
export function bendsOf(curves: readonly (readonly { readonly chargeRatio: number }[] | undefined)[]): number[] {
  const all = [0, 0.25, 0.5, 0.75, 1, ...curves.flatMap((curve) => (curve ?? []).map((point) => point.chargeRatio))];
  return [...new Set(all.filter((s) => s >= 0 && s <= 1))].sort((a, b) => a - b);
}
