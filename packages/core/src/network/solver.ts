import { Arena } from "./arena.js";
import { type Balance, Balancer } from "./balance.js";
import { SparseLdl } from "./ldl.js";
import { LoadTable } from "./load-model.js";
import type { Network } from "./network.js";
import { solverPattern } from "./solver-pattern.js";
import type { Spurs } from "./spurs.js";

export type SolveStatus = "solved" | "not-converged" | "going-out" | "unstable";

const MAX_NEWTON_STEPS = 100;
/** Where the steps have shrunk to this part of the supply volts, polishing takes over; if it then fails, the tighter one is tried. */
const LOOSE_RELATIVE = 1e-4;
const TIGHT_RELATIVE = 1e-8;
const MAX_POLISH_STEPS = 12;
/** The balance asked of every solve. */
export const BALANCE_RELATIVE = 1e-9;
/** The balance aimed at: polishing stops here. */
const AIMED_RELATIVE = 1e-13;
/** Slope put under a load that has none, in siemens, only in the step's matrix, never in its balance: it keeps a floating end solvable. */
const LEAST_SLOPE_S = 1e-9;

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
  /** Polishing stops at this balance; samples may ask for less than the utmost. */
  aimedRelative = AIMED_RELATIVE;
  iterations = 0;
  /** Loads found on the ramp below their drop-out by the last `run`. */
  goingOut: number[] = [];

  private readonly network: Network;
  private readonly spurs: Spurs;
  private readonly balancer: Balancer;
  /** Branches with an equation of their own. */
  private readonly active: Int32Array;
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private readonly unknown: Int32Array;
  private readonly branchPair: Int32Array;
  private readonly loadPair: Int32Array;
  private readonly ldl: SparseLdl;
  private readonly leftA: Float64Array;
  private readonly rhs: Float64Array;
  private readonly step: Float64Array;
  private readonly startV: Float64Array;
  /** By load: its own wires together. */
  private readonly spurOhm: Float64Array;
  /** Slope of each load with its own wires at the volts last looked at. */
  private readonly loadSlopeS: Float64Array;
  /** What the branches alone put into the matrix; the loads' slopes come on top at every step. */
  private readonly branchDiagonal: Float64Array;
  private readonly branchOff: Float64Array;
  private readonly siemens: Float64Array;
  private loadScale = 1;
  /** Were the true slopes positive definite at the last step of the descent? */
  private isDefinite = false;

  constructor(network: Network) {
    const arena = new Arena();
    const { nodeCount, branches, loads } = network;
    this.network = network;
    this.ohm = arena.f64(branches.length);
    this.emfV = arena.f64(branches.length);
    this.from = arena.i32(branches.length);
    this.to = arena.i32(branches.length);
    for (let b = 0; b < branches.length; b++) {
      const branch = branches[b]!;
      this.ohm[b] = branch.resistanceOhm;
      this.emfV[b] = branch.emfV ?? 0;
      this.from[b] = branch.from;
      this.to[b] = branch.to;
    }
    this.loads = new LoadTable(loads, arena);
    this.nodeV = arena.f64(nodeCount);
    this.branchA = arena.f64(branches.length);
    this.loadA = arena.f64(loads.length);
    this.loadSlopeS = arena.f64(loads.length);
    this.spurOhm = arena.f64(loads.length);
    this.leftA = arena.f64(nodeCount);
    this.startV = arena.f64(nodeCount);
    const pattern = solverPattern(network, arena);
    const { size, rows, columns } = pattern;
    this.islands = pattern.islands;
    this.spurs = pattern.spurs;
    this.unknown = pattern.unknown;
    this.active = pattern.active;
    this.branchPair = pattern.branchPair;
    this.loadPair = pattern.loadPair;
    this.balancer = new Balancer(network, this.loads, arena);
    this.ldl = new SparseLdl(size, rows, columns, arena);
    this.branchDiagonal = arena.f64(size);
    this.branchOff = arena.f64(rows.length);
    this.siemens = arena.f64(branches.length);
    this.rhs = arena.f64(size);
    this.step = arena.f64(size);
  }

  /** How closely the last `run` keeps the laws. */
  get balance(): Balance {
    const { currentRelative, powerRelative } = this.balancer;
    return { currentRelative, powerRelative };
  }

  /** Solves; where `isWarm`, from the volts now in `nodeV`. */
  run(isWarm = false): SolveStatus {
    this.iterations = 0;
    if (this.goingOut.length > 0) this.goingOut = [];
    this.loadScale = 1;
    this.stampBranches();
    if (!isWarm) this.startWithChords();
    const status = this.attempt(LOOSE_RELATIVE);
    if (status !== "not-converged") return status;
    this.startWithChords();
    return this.attempt(TIGHT_RELATIVE);
  }

  private attempt(standstill: number): SolveStatus {
    return this.descend(standstill) || this.bringUp(standstill) ? this.settle() : "not-converged";
  }

  /** Brings the loads up in steps, each from the volts of the one before. */
  private bringUp(standstill: number): boolean {
    this.nodeV.fill(0);
    for (let eighth = 0; eighth <= 8; eighth++) {
      this.loadScale = eighth / 8;
      if (!this.descend(standstill)) {
        this.loadScale = 1;
        return false;
      }
    }
    return true;
  }

  private settle(): SolveStatus {
    const isStable = this.polish();
    const { loads } = this.network;
    for (let k = 0; k < loads.length; k++)
      if (this.loads.isGoingOut(k, this.nodeV[loads[k]!.from]! - this.nodeV[loads[k]!.to]!)) this.goingOut.push(k);
    if (this.goingOut.length > 0) return "going-out";
    const { currentRelative, powerRelative } = this.balancer;
    if (!(currentRelative <= BALANCE_RELATIVE && powerRelative <= BALANCE_RELATIVE)) return "not-converged";
    return isStable ? "solved" : "unstable";
  }

  private stampBranches(): void {
    const { from, to, ohm, siemens, unknown, branchPair, branchDiagonal, branchOff, active, spurs, spurOhm } = this;
    branchDiagonal.fill(0);
    branchOff.fill(0);
    for (let e = 0; e < active.length; e++) {
      const b = active[e]!;
      const s = 1 / ohm[b]!;
      siemens[b] = s;
      const a = unknown[from[b]!]!;
      const c = unknown[to[b]!]!;
      if (a === c) continue;
      if (a >= 0) branchDiagonal[a]! += s;
      if (c >= 0) branchDiagonal[c]! += s;
      const pair = branchPair[b]!;
      if (pair >= 0) branchOff[pair]! -= s;
    }
    for (let k = 0; k < spurOhm.length; k++) {
      const before = spurs.fromBranch[k]!;
      const after = spurs.toBranch[k]!;
      spurOhm[k] = (before < 0 ? 0 : ohm[before]!) + (after < 0 ? 0 : ohm[after]!);
    }
  }

  /** First guess: every load as the resistance it would be at the highest supply volts, which draws no more than it will. */
  private startWithChords(): void {
    const { loads, loadSlopeS, spurOhm, emfV } = this;
    let topV = 1;
    for (let b = 0; b < emfV.length; b++) topV = Math.max(topV, Math.abs(emfV[b]!));
    this.nodeV.fill(0);
    this.loadScale = 0;
    this.leftOver();
    this.loadScale = 1;
    for (let k = 0; k < loadSlopeS.length; k++)
      loadSlopeS[k] = Math.max(0, loads.currentThrough(k, topV, spurOhm[k]!)) / topV;
    this.fillMatrix(true);
    if (!this.ldl.factor()) return;
    this.solveStep();
    this.move(1);
  }

  /** Currents left over at every node at the volts in `nodeV`. */
  private leftOver(): void {
    const { active, from, to, siemens, emfV, nodeV, leftA, loads, spurs, spurOhm, loadScale, loadSlopeS } = this;
    leftA.fill(0);
    for (let e = 0; e < active.length; e++) {
      const b = active[e]!;
      const i = (nodeV[from[b]!]! - nodeV[to[b]!]! + emfV[b]!) * siemens[b]!;
      leftA[from[b]!]! += i;
      leftA[to[b]!]! -= i;
    }
    if (loadScale === 0) return;
    for (let k = 0; k < spurOhm.length; k++) {
      const a = spurs.from[k]!;
      const b = spurs.to[k]!;
      loads.atV = nodeV[a]! - nodeV[b]!;
      loads.seriesOhm = loadScale * spurOhm[k]!;
      loads.lookThrough(k);
      const i = loadScale * loads.currentA;
      loadSlopeS[k] = loads.slopeS;
      leftA[a]! += i;
      leftA[b]! -= i;
    }
  }

  /** Fills the matrix of slopes; with `isRaised` a falling load counts as flat, which keeps the step downhill. */
  private fillMatrix(isRaised: boolean): void {
    const { diagonal, offDiagonal } = this.ldl;
    const { unknown, spurs, loadPair, loadSlopeS, loadScale } = this;
    diagonal.set(this.branchDiagonal);
    offDiagonal.set(this.branchOff);
    for (let k = 0; k < loadPair.length; k++) {
      const slope = loadSlopeS[k]! * loadScale;
      const siemens = (isRaised && slope < 0 ? 0 : slope) + LEAST_SLOPE_S;
      const a = unknown[spurs.from[k]!]!;
      const b = unknown[spurs.to[k]!]!;
      if (a === b) continue;
      if (a >= 0) diagonal[a]! += siemens;
      if (b >= 0) diagonal[b]! += siemens;
      const pair = loadPair[k]!;
      if (pair >= 0) offDiagonal[pair]! -= siemens;
    }
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

  /** Newton steps, each as long as it goes downhill, until the volts stand still to this part of the supply's. */
  private descend(standstill: number): boolean {
    let mostV = 1;
    for (let b = 0; b < this.emfV.length; b++) mostV = Math.max(mostV, Math.abs(this.emfV[b]!));
    this.leftOver();
    for (let s = 0; s < MAX_NEWTON_STEPS; s++) {
      this.iterations++;
      this.fillMatrix(false);
      this.isDefinite = this.ldl.factor();
      if (!this.isDefinite) {
        this.fillMatrix(true);
        if (!this.ldl.factor()) return false;
      }
      const most = this.solveStep();
      if (!Number.isFinite(most)) return false;
      if (most < standstill * mostV) {
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
    const { active, from, to, siemens, emfV, nodeV, branchA, leftA, unknown, step, balancer } = this;
    for (let e = 0; e < active.length; e++) {
      const b = active[e]!;
      branchA[b] = (nodeV[from[b]!]! - nodeV[to[b]!]! + emfV[b]!) * siemens[b]!;
    }
    let isStable = this.isDefinite;
    let best = this.weigh();
    for (let s = 0; s < MAX_POLISH_STEPS && (best > this.aimedRelative || (s === 0 && !isStable)); s++) {
      this.iterations++;
      this.fillMatrix(false);
      isStable = this.ldl.factor();
      if (!isStable) {
        this.fillMatrix(true);
        if (!this.ldl.factor()) return false;
      }
      leftA.set(balancer.leftA);
      const { branchLeftV } = balancer;
      for (let e = 0; e < active.length; e++) {
        const b = active[e]!;
        const i = branchLeftV[b]! * siemens[b]!;
        leftA[from[b]!]! += i;
        leftA[to[b]!]! -= i;
      }
      this.solveStep();
      this.move(1);
      for (let e = 0; e < active.length; e++) {
        const b = active[e]!;
        const a = unknown[from[b]!]!;
        const c = unknown[to[b]!]!;
        branchA[b]! += ((a < 0 ? 0 : step[a]!) - (c < 0 ? 0 : step[c]!) + branchLeftV[b]!) * siemens[b]!;
      }
      const now = this.weigh();
      if (now >= best && now <= BALANCE_RELATIVE && s > 0) break;
      best = now;
    }
    return isStable;
  }

  /** Works out the ends of the loads' own wires, then weighs the whole network by the balance of its laws; returns the worst. */
  private weigh(): number {
    const { spurs, spurOhm, loads, loadSlopeS, nodeV, branchA, ohm, from } = this;
    const ends = this.network.loads;
    for (let k = 0; k < spurOhm.length; k++) {
      const a = spurs.from[k]!;
      const b = spurs.to[k]!;
      loads.atV = nodeV[a]! - nodeV[b]!;
      loads.seriesOhm = spurOhm[k]!;
      loads.lookThrough(k);
      const i = loads.currentA;
      loadSlopeS[k] = loads.slopeS;
      const before = spurs.fromBranch[k]!;
      if (before >= 0) {
        nodeV[ends[k]!.from] = nodeV[a]! - ohm[before]! * i;
        branchA[before] = from[before] === a ? i : -i;
      }
      const after = spurs.toBranch[k]!;
      if (after >= 0) {
        nodeV[ends[k]!.to] = nodeV[b]! + ohm[after]! * i;
        branchA[after] = from[after] === b ? -i : i;
      }
    }
    return this.balancer.weigh(this);
  }
}
