import { islandsOf } from "./islands.js";
import { SparseLdl } from "./ldl.js";
import { LoadTable } from "./load-model.js";
import type { Network } from "./network.js";

export type SolveStatus = "solved" | "not-converged" | "going-out" | "unstable";

const MAX_NEWTON_STEPS = 100;
const MAX_POLISH_STEPS = 12;
/** The balance asked of every solve. */
export const BALANCE_RELATIVE = 1e-9;
/** The balance aimed at: polishing stops here. */
const AIMED_RELATIVE = 1e-13;
/** Slope put under a load that has none, in siemens, only in the step's matrix, never in its balance: it keeps a floating end solvable. */
const LEAST_SLOPE_S = 1e-9;
/** A node's leftover is measured against at least this part of the greatest current in the network. */
const QUIET_NODE_RATIO = 1e-6;
/** Currents below this are nothing: a nanoampere. */
const NOTHING_A = 1e-9;

/**
 * Finds the operating point of one network again and again with other figures: the order of elimination and the pattern are worked out once.
 * Set `ohm`, `emfV` and `loads` before `run`; read `nodeV`, `branchA`, `loadA` and the balance after.
 *
 * Newton's method on the currents left over at the nodes. Those are the slope of the network's co-content (the sum over branches of
 * g (V + emf)^2 / 2 and over loads of the integral of I dV), so a step is taken only as far as it still goes downhill: where every load is
 * monotone that function is convex and the point found is the only one. Near the end the branch currents are unknowns of their own
 * (V(from) - V(to) + emf - R i = 0), so that the currents at a node balance to rounding however small the resistances are.
 */
export class NetworkSolver {
  readonly ohm: Float64Array;
  readonly emfV: Float64Array;
  readonly loads: LoadTable;
  readonly nodeV: Float64Array;
  readonly branchA: Float64Array;
  readonly loadA: Float64Array;
  readonly islands: readonly (readonly number[])[];
  currentRelative = 0;
  powerRelative = 0;
  iterations = 0;
  /** Loads found on the ramp below their drop-out by the last `run`. */
  goingOut: number[] = [];

  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private readonly loadFrom: Int32Array;
  private readonly loadTo: Int32Array;
  private readonly unknown: Int32Array;
  private readonly branchPair: Int32Array;
  private readonly loadPair: Int32Array;
  private readonly ldl: SparseLdl;
  private readonly leftA: Float64Array;
  private readonly flowA: Float64Array;
  private readonly rhs: Float64Array;
  private readonly step: Float64Array;
  private readonly startV: Float64Array;
  private readonly branchLeftV: Float64Array;
  private loadScale = 1;

  constructor(network: Network) {
    const { nodeCount, branches, loads } = network;
    this.ohm = Float64Array.from(branches, (branch) => branch.resistanceOhm);
    this.emfV = Float64Array.from(branches, (branch) => branch.emfV ?? 0);
    this.from = Int32Array.from(branches, (branch) => branch.from);
    this.to = Int32Array.from(branches, (branch) => branch.to);
    this.loadFrom = Int32Array.from(loads, (load) => load.from);
    this.loadTo = Int32Array.from(loads, (load) => load.to);
    this.loads = new LoadTable(loads.map((load) => load.model));
    this.nodeV = new Float64Array(nodeCount);
    this.branchA = new Float64Array(branches.length);
    this.branchLeftV = new Float64Array(branches.length);
    this.loadA = new Float64Array(loads.length);
    this.leftA = new Float64Array(nodeCount);
    this.flowA = new Float64Array(nodeCount);
    this.startV = new Float64Array(nodeCount);
    this.islands = islandsOf(network);
    this.unknown = new Int32Array(nodeCount);
    this.unknown[network.reference] = -1;
    for (const island of this.islands) this.unknown[island[0]!] = -1;
    let size = 0;
    for (let n = 0; n < nodeCount; n++) if (this.unknown[n]! >= 0) this.unknown[n] = size++;
    const rows: number[] = [];
    const columns: number[] = [];
    const pairOf = (from: Int32Array, to: Int32Array) =>
      from.map((node, e) => {
        const a = this.unknown[node]!;
        const b = this.unknown[to[e]!]!;
        if (a < 0 || b < 0 || a === b) return -1;
        rows.push(a);
        columns.push(b);
        return rows.length - 1;
      });
    this.branchPair = pairOf(this.from, this.to);
    this.loadPair = pairOf(this.loadFrom, this.loadTo);
    this.ldl = new SparseLdl(size, rows, columns);
    this.rhs = new Float64Array(size);
    this.step = new Float64Array(size);
  }

  /** Solves from the volts now in `nodeV` (all zero is a cold start). */
  run(isWarm = false): SolveStatus {
    this.iterations = 0;
    this.goingOut = [];
    this.loadScale = 1;
    if (!isWarm) this.startWithoutLoads();
    if (!this.descend()) {
      // Bring the loads up in steps, each from the volts of the one before.
      this.startWithoutLoads();
      let reached = true;
      for (let eighth = 1; eighth <= 8 && reached; eighth++) {
        this.loadScale = eighth / 8;
        reached = this.descend();
      }
      this.loadScale = 1;
      if (!reached) return "not-converged";
    }
    const isStable = this.polish();
    for (let k = 0; k < this.loadA.length; k++)
      if (this.loads.isGoingOut(k, this.nodeV[this.loadFrom[k]!]! - this.nodeV[this.loadTo[k]!]!))
        this.goingOut.push(k);
    if (this.goingOut.length > 0) return "going-out";
    if (!(this.currentRelative <= BALANCE_RELATIVE && this.powerRelative <= BALANCE_RELATIVE)) return "not-converged";
    return isStable ? "solved" : "unstable";
  }

  private startWithoutLoads(): void {
    this.nodeV.fill(0);
    this.loadScale = 0;
    this.leftOver();
    this.fillMatrix(false);
    if (!this.ldl.factor()) return;
    this.solveStep();
    this.move(1);
    this.loadScale = 1;
  }

  /** Currents left over at every node at the volts in `nodeV`. */
  private leftOver(): void {
    const { from, to, ohm, emfV, nodeV, leftA, loads, loadFrom, loadTo, loadScale } = this;
    leftA.fill(0);
    for (let b = 0; b < ohm.length; b++) {
      const i = (nodeV[from[b]!]! - nodeV[to[b]!]! + emfV[b]!) / ohm[b]!;
      leftA[from[b]!]! += i;
      leftA[to[b]!]! -= i;
    }
    for (let k = 0; k < loadFrom.length; k++) {
      const i = loadScale * loads.currentAt(k, nodeV[loadFrom[k]!]! - nodeV[loadTo[k]!]!);
      leftA[loadFrom[k]!]! += i;
      leftA[loadTo[k]!]! -= i;
    }
  }

  /** Fills the matrix of slopes; with `isRaised` a falling load counts as flat, which keeps the step downhill. */
  private fillMatrix(isRaised: boolean): void {
    const { diagonal, offDiagonal } = this.ldl;
    const { from, to, ohm, unknown, branchPair, loads, loadFrom, loadTo, loadPair, nodeV, loadScale } = this;
    diagonal.fill(0);
    offDiagonal.fill(0);
    for (let b = 0; b < ohm.length; b++) this.stamp(unknown[from[b]!]!, unknown[to[b]!]!, branchPair[b]!, 1 / ohm[b]!);
    for (let k = 0; k < loadFrom.length; k++) {
      loads.currentAt(k, nodeV[loadFrom[k]!]! - nodeV[loadTo[k]!]!);
      let slope = loads.slopeS * loadScale;
      if (isRaised && slope < 0) slope = 0;
      this.stamp(unknown[loadFrom[k]!]!, unknown[loadTo[k]!]!, loadPair[k]!, slope + LEAST_SLOPE_S);
    }
  }

  private stamp(a: number, b: number, pair: number, siemens: number): void {
    if (a === b) return;
    const { diagonal, offDiagonal } = this.ldl;
    if (a >= 0) diagonal[a]! += siemens;
    if (b >= 0) diagonal[b]! += siemens;
    if (pair >= 0) offDiagonal[pair]! -= siemens;
  }

  /** step = -matrix^-1 leftA; returns the greatest change in volts. */
  private solveStep(): number {
    const { unknown, leftA, rhs, step } = this;
    for (let n = 0; n < unknown.length; n++) if (unknown[n]! >= 0) rhs[unknown[n]!] = -leftA[n]!;
    this.ldl.solve(rhs, step);
    let most = 0;
    for (let u = 0; u < step.length; u++) most = Math.max(most, Math.abs(step[u]!));
    return most;
  }

  private move(ratio: number): void {
    const { unknown, nodeV, step } = this;
    for (let n = 0; n < unknown.length; n++) if (unknown[n]! >= 0) nodeV[n]! += ratio * step[unknown[n]!]!;
  }

  /** Slope of the co-content along the step, at the leftovers now in `leftA`. */
  private slopeAlong(): number {
    const { unknown, leftA, step } = this;
    let slope = 0;
    for (let n = 0; n < unknown.length; n++) if (unknown[n]! >= 0) slope += leftA[n]! * step[unknown[n]!]!;
    return slope;
  }

  private slopeAt(ratio: number): number {
    this.nodeV.set(this.startV);
    this.move(ratio);
    this.leftOver();
    return this.slopeAlong();
  }

  /** Newton steps, each as long as it goes downhill, until the volts stand still to a part in ten million. */
  private descend(): boolean {
    let mostV = 1;
    for (let b = 0; b < this.emfV.length; b++) mostV = Math.max(mostV, Math.abs(this.emfV[b]!));
    this.leftOver();
    for (let s = 0; s < MAX_NEWTON_STEPS; s++) {
      this.iterations++;
      this.fillMatrix(false);
      if (!this.ldl.factor()) {
        this.fillMatrix(true);
        if (!this.ldl.factor()) return false;
      }
      const most = this.solveStep();
      if (!Number.isFinite(most)) return false;
      if (most < 1e-7 * mostV) {
        this.move(1);
        return true;
      }
      this.searchAlong(most > 4 * mostV ? (4 * mostV) / most : 1);
    }
    return false;
  }

  /** Goes along the step until the slope has fallen to half or less of what it was. */
  private searchAlong(longest: number): void {
    const first = this.slopeAlong();
    this.startV.set(this.nodeV);
    let low = 0;
    let lowSlope = first;
    let high = longest;
    let highSlope = this.slopeAt(high);
    if (highSlope <= -0.5 * first || !(first < 0)) return;
    for (let t = 0; t < 60; t++) {
      const secant = low + (high - low) * (lowSlope / (lowSlope - highSlope));
      const ratio = t % 3 === 2 || !(secant > low && secant < high) ? (low + high) / 2 : secant;
      const slope = this.slopeAt(ratio);
      if (Math.abs(slope) <= -0.5 * first) return;
      if (slope < 0) {
        low = ratio;
        lowSlope = slope;
      } else {
        high = ratio;
        highSlope = slope;
      }
    }
  }

  /** Full steps with the branch currents as unknowns too. Returns whether the true slopes are positive definite: the point is stable. */
  private polish(): boolean {
    const { from, to, ohm, emfV, nodeV, branchA, branchLeftV, leftA, unknown, step } = this;
    for (let b = 0; b < ohm.length; b++) branchA[b] = (nodeV[from[b]!]! - nodeV[to[b]!]! + emfV[b]!) / ohm[b]!;
    let isStable = true;
    this.weigh();
    let best = Math.max(this.currentRelative, this.powerRelative);
    for (let s = 0; s < MAX_POLISH_STEPS && best > AIMED_RELATIVE; s++) {
      this.iterations++;
      this.fillMatrix(false);
      isStable = this.ldl.factor();
      if (!isStable) {
        this.fillMatrix(true);
        if (!this.ldl.factor()) return false;
      }
      // `weigh` left the currents over at the nodes in leftA and the volts over in branchLeftV.
      for (let b = 0; b < ohm.length; b++) {
        const i = branchLeftV[b]! / ohm[b]!;
        leftA[from[b]!]! += i;
        leftA[to[b]!]! -= i;
      }
      this.solveStep();
      this.move(1);
      for (let b = 0; b < ohm.length; b++) {
        const a = unknown[from[b]!]!;
        const c = unknown[to[b]!]!;
        branchA[b]! += ((a < 0 ? 0 : step[a]!) - (c < 0 ? 0 : step[c]!) + branchLeftV[b]!) / ohm[b]!;
      }
      this.weigh();
      const now = Math.max(this.currentRelative, this.powerRelative);
      if (now >= best && now <= BALANCE_RELATIVE && s > 0) break;
      best = now;
    }
    return isStable;
  }

  /** Both laws at the present volts and currents: the balance, with the leftovers in `leftA` and `branchLeftV`. */
  private weigh(): void {
    const { from, to, ohm, emfV, nodeV, branchA, branchLeftV, leftA, flowA, loads, loadFrom, loadTo, loadA } = this;
    leftA.fill(0);
    flowA.fill(0);
    let inW = 0;
    let outW = 0;
    let mostA = 0;
    let leftRatio = 0;
    for (let b = 0; b < ohm.length; b++) {
      const i = branchA[b]!;
      const size = i < 0 ? -i : i;
      branchLeftV[b] = nodeV[from[b]!]! - nodeV[to[b]!]! + emfV[b]! - ohm[b]! * i;
      leftA[from[b]!]! += i;
      leftA[to[b]!]! -= i;
      flowA[from[b]!]! += size;
      flowA[to[b]!]! += size;
      if (size > mostA) mostA = size;
      const w = emfV[b]! * i;
      if (w > 0) inW += w;
      else outW -= w;
      outW += ohm[b]! * i * i;
    }
    for (let k = 0; k < loadA.length; k++) {
      const v = nodeV[loadFrom[k]!]! - nodeV[loadTo[k]!]!;
      const i = loads.currentAt(k, v);
      const size = i < 0 ? -i : i;
      loadA[k] = i;
      leftA[loadFrom[k]!]! += i;
      leftA[loadTo[k]!]! -= i;
      flowA[loadFrom[k]!]! += size;
      flowA[loadTo[k]!]! += size;
      if (size > mostA) mostA = size;
      const w = v * i;
      if (w > 0) outW += w;
      else inW -= w;
    }
    const least = Math.max(NOTHING_A, QUIET_NODE_RATIO * mostA);
    for (let n = 0; n < leftA.length; n++)
      leftRatio = Math.max(leftRatio, Math.abs(leftA[n]!) / Math.max(flowA[n]!, least));
    this.currentRelative = leftRatio;
    this.powerRelative = Math.abs(inW - outW) / Math.max(inW, outW, NOTHING_A);
  }
}
