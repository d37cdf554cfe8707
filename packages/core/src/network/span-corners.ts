import type { Span } from "../quantity/index.js";
import { type CableFlow, hasLoops } from "./cable-flow.js";
import type { CoachNetwork } from "./coach-network.js";
import { isMonotone } from "./load-model.js";
import { NetworkSolver } from "./solver.js";
import type { Cornered } from "./spanned.js";

/** Above this many loads the corners would cost more than their tightness is worth; the enclosure serves instead. */
const MOST_LOADS = 150;
/** The corners are solved to a part in 1e13; this covers their rounding. */
const OUTWARD = 1e-10;

/**
 * Exact spans by solving corner states, for coaches whose structure proves which corner is the extreme.
 *
 * One battery, no loops, every load monotone, and every two branches' sets of loads nested or apart (so that feed and return together act as one tree).
 * Seen from its top, the part of the tree behind a branch is itself a load that never draws less as the volts rise; a larger resistance in it makes it
 * draw less, a hungrier load in it makes it draw more. And in such a tree, one load drawing less at every voltage raises the volts everywhere else. So:
 * volts at a load fall with every resistance on its way and every load's hunger, rise with the battery's volts and with every resistance off its way.
 * The current of a set of loads rises with their own hunger and the battery, falls with the hunger of the others and with every resistance that carries
 * any of the set, and rises with resistances that carry none of it.
 */
export class CornerSolver {
  private readonly solver: NetworkSolver;
  private readonly nominalV: Float64Array;

  private constructor(
    private readonly coach: CoachNetwork,
    nominal: NetworkSolver,
    /** By branch: which loads it carries. */
    private readonly carries: readonly Uint8Array[],
  ) {
    this.solver = new NetworkSolver(coach.network);
    this.nominalV = nominal.nodeV.slice();
  }

  /** Undefined where the structure proves nothing. */
  static of(coach: CoachNetwork, flow: CableFlow, nominal: NetworkSolver): CornerSolver | undefined {
    const { branches, loads } = coach.network;
    if (loads.length > MOST_LOADS || coach.supplies.length !== 1 || coach.supplies[0]!.branch < 0) return undefined;
    if (hasLoops(coach, flow) || !loads.every((load) => isMonotone(load.model))) return undefined;
    const isWhole = coach.circuits.every(
      (one) =>
        one.wayNeeds.length === 0 &&
        one.currentNeeds.length === 0 &&
        !one.isCutOff &&
        one.entryBranch < 0 &&
        one.loads.every((load) => load.tailNeeds.length === 0),
    );
    if (!isWhole) return undefined;
    const carries = branches.map(() => new Uint8Array(loads.length));
    const supply = coach.supplies[0]!;
    const mark = (k: number, feed: number, back: number, own: readonly number[]): boolean => {
      if (!supply.toFeeds.isReached[feed] || !supply.toReturns.isReached[back]) return false;
      carries[supply.branch]![k] = 1;
      for (const b of own) if (b >= 0) carries[b]![k] = 1;
      for (const step of [...supply.toFeeds.wayTo(feed), ...supply.toReturns.wayTo(back)])
        carries[coach.cableOfEdge[step.edge]!.branch]![k] = 1;
      return true;
    };
    for (const one of coach.circuits)
      for (const load of one.loads)
        if (
          !mark(load.networkLoad, one.joinedFeed, one.joinedReturn, [one.outBranch, one.returnBranch, load.tailBranch])
        )
          return undefined;
    for (const { quiescentLoad } of coach.modules) {
      const { from, to } = loads[quiescentLoad]!;
      if (!mark(quiescentLoad, from, to, [])) return undefined;
    }
    return areNested(carries) ? new CornerSolver(coach, nominal, carries) : undefined;
  }

  /** Volts across one load. */
  loadVolts(k: number): Cornered | undefined {
    const of = () => this.voltsOf(k);
    const isOn = (b: number) => this.carries[b]![k] === 1;
    const lo = this.solve(
      "lo",
      (b) => (isOn(b) ? "hi" : "lo"),
      () => "most",
      of,
    );
    const hi = this.solve(
      "hi",
      (b) => (isOn(b) ? "lo" : "hi"),
      () => "least",
      of,
    );
    return this.cornered(lo, hi, true);
  }

  /** The current of a set of loads together; undefined where the set cuts across a branch's own. */
  setCurrent(set: readonly number[]): Cornered | undefined {
    const isIn = new Uint8Array(this.coach.loadBounds.length);
    for (const k of set) isIn[k] = 1;
    if (set.length > 1 && !areNested([...this.carries, isIn])) return undefined;
    const touches = this.carries.map((row) => set.some((k) => row[k] === 1));
    const of = () => set.reduce((sum, k) => sum + this.solver.loadA[k]!, 0);
    const lo = this.solve(
      "lo",
      (b) => (touches[b] ? "hi" : "lo"),
      (k) => (isIn[k] ? "least" : "most"),
      of,
    );
    const hi = this.solve(
      "hi",
      (b) => (touches[b] ? "lo" : "hi"),
      (k) => (isIn[k] ? "most" : "least"),
      of,
    );
    return this.cornered(lo, hi, true);
  }

  /** Volts along one branch: more with its own resistance and the hunger of what it carries, less with every other resistance on their way. */
  branchDrop(branch: number): Cornered | undefined {
    const set = this.loadsOf(branch);
    const touches = this.carries.map((row) => set.some((k) => row[k] === 1));
    const isIn = this.carries[branch]!;
    const of = () => set.reduce((sum, k) => sum + this.solver.loadA[k]!, 0) * this.solver.ohm[branch]!;
    const lo = this.solve(
      "lo",
      (b) => (touches[b] && b !== branch ? "hi" : "lo"),
      (k) => (isIn[k] === 1 ? "least" : "most"),
      of,
    );
    const hi = this.solve(
      "hi",
      (b) => (touches[b] && b !== branch ? "lo" : "hi"),
      (k) => (isIn[k] === 1 ? "most" : "least"),
      of,
    );
    return this.cornered(lo, hi, true);
  }

  /**
   * Volts lost between the terminals and load k. The part along branches that other loads share rises with the others' hunger, the part along its own
   * branches falls with it; each is taken at its own corner, so the sum is an enclosure.
   */
  loadDrop(k: number): Cornered | undefined {
    const supply = this.coach.supplies[0]!;
    const isOn = (b: number) => this.carries[b]![k] === 1;
    const isOwn = this.carries.map((row) => row[k] === 1 && row.reduce((sum, one) => sum + one, 0) === 1);
    const ownDropV = () => {
      let ohm = 0;
      for (let b = 0; b < isOwn.length; b++) if (isOwn[b]) ohm += this.solver.ohm[b]!;
      return ohm * this.solver.loadA[k]!;
    };
    const sharedDropV = () => {
      const { nodeV } = this.solver;
      return nodeV[supply.positive]! - nodeV[supply.negative]! - this.voltsOf(k) - ownDropV();
    };
    const other = (end: "lo" | "hi") => (end === "lo" ? "hi" : "lo");
    const hungry = (end: "lo" | "hi") => (end === "lo" ? "least" : "most");
    const at = (end: "lo" | "hi"): number | undefined => {
      const shared = this.solve(
        end,
        (b) => (b === supply.branch || isOwn[b] || !isOn(b) ? other(end) : end),
        () => hungry(end),
        sharedDropV,
      );
      const own = this.solve(
        end,
        (b) => (isOwn[b] || !isOn(b) ? end : other(end)),
        (l) => hungry(l === k ? end : other(end)),
        ownDropV,
      );
      return shared === undefined || own === undefined ? undefined : shared + own;
    };
    const lo = at("lo");
    return this.cornered(lo, at("hi"), false);
  }

  /** The loads a branch carries. */
  loadsOf(branch: number): number[] {
    return [...this.carries[branch]!.keys()].filter((k) => this.carries[branch]![k] === 1);
  }

  private cornered(lo: number | undefined, hi: number | undefined, isExact: boolean): Cornered | undefined {
    return lo === undefined || hi === undefined ? undefined : { span: outward(lo, hi), isExact };
  }

  private voltsOf(k: number): number {
    const { from, to } = this.coach.network.loads[k]!;
    return this.solver.nodeV[from]! - this.solver.nodeV[to]!;
  }

  private solve(
    emf: "lo" | "hi",
    end: (branch: number) => "lo" | "hi",
    hunger: (load: number) => "least" | "most",
    of: () => number,
  ): number | undefined {
    const { coach, solver } = this;
    for (let b = 0; b < solver.ohm.length; b++) {
      solver.ohm[b] = coach.ohmSpan[b]![end(b)];
      const volts = coach.emfSpan[b];
      if (volts) solver.emfV[b] = volts[emf];
    }
    for (let k = 0; k < coach.loadBounds.length; k++) solver.loads.put(k, coach.loadBounds[k]![hunger(k)]);
    solver.nodeV.set(this.nominalV);
    return solver.run(true) === "solved" ? of() : undefined;
  }
}

const outward = (lo: number, hi: number): Span => {
  const slack = OUTWARD * Math.max(Math.abs(lo), Math.abs(hi), 1e-6);
  return { lo: Math.min(lo, hi) - slack, hi: Math.max(lo, hi) + slack };
};

/** Are every two of these sets nested or apart? Takes them largest first and asks that each fits inside the last set put on its members. */
function areNested(sets: readonly Uint8Array[]): boolean {
  const sized = sets
    .map((row) => ({ row, size: row.reduce((sum, one) => sum + one, 0) }))
    .filter((one) => one.size > 0);
  sized.sort((a, b) => b.size - a.size);
  const owner = new Int32Array(sets[0]?.length ?? 0).fill(-1);
  for (const [s, { row }] of sized.entries()) {
    let within: number | undefined;
    for (let k = 0; k < row.length; k++) {
      if (row[k] !== 1) continue;
      if (within === undefined) within = owner[k]!;
      else if (within !== owner[k]) return false;
      owner[k] = s;
    }
  }
  return true;
}
