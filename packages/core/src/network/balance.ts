import { Arena } from "./arena.js";
import type { LoadTable } from "./load-model.js";
import type { Network } from "./network.js";

/** How closely a solution keeps the laws: worst current left over at a node and power left over, each relative to its total. */
export interface Balance {
  readonly currentRelative: number;
  readonly powerRelative: number;
}

/** A node's leftover is measured against at least this part of the greatest current in the network. */
const QUIET_NODE_RATIO = 1e-6;
/** Currents and powers below this are nothing: a nanoampere, a nanowatt. */
const NOTHING = 1e-9;

interface Weighed {
  readonly ohm: Float64Array;
  readonly emfV: Float64Array;
  readonly nodeV: Float64Array;
  readonly branchA: Float64Array;
  readonly loadA: Float64Array;
}

/** Both laws at every node and branch of the whole network, whatever way the solution was found. */
export class Balancer {
  /** Currents left over, by node, of the last `weigh`. */
  readonly leftA: Float64Array;
  /** Volts left over, by branch: V(from) - V(to) + emf - R i. */
  readonly branchLeftV: Float64Array;
  private readonly flowA: Float64Array;
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private readonly loadFrom: Int32Array;
  private readonly loadTo: Int32Array;

  constructor(
    network: Network,
    private readonly loads: LoadTable,
    arena = new Arena(),
  ) {
    const { nodeCount, branches, loads: ends } = network;
    this.leftA = arena.f64(nodeCount);
    this.flowA = arena.f64(nodeCount);
    this.branchLeftV = arena.f64(branches.length);
    this.from = arena.i32(branches.length);
    this.to = arena.i32(branches.length);
    for (let b = 0; b < branches.length; b++) {
      this.from[b] = branches[b]!.from;
      this.to[b] = branches[b]!.to;
    }
    this.loadFrom = arena.i32(ends.length);
    this.loadTo = arena.i32(ends.length);
    for (let k = 0; k < ends.length; k++) {
      this.loadFrom[k] = ends[k]!.from;
      this.loadTo[k] = ends[k]!.to;
    }
  }

  /** Of the last `weigh`. */
  currentRelative = 0;
  powerRelative = 0;

  /** Weighs these volts and currents and returns the worse of the two; fills `loadA` with what the loads draw at their volts. */
  weigh({ ohm, emfV, nodeV, branchA, loadA }: Weighed): number {
    const { from, to, branchLeftV, leftA, flowA, loads, loadFrom, loadTo } = this;
    leftA.fill(0);
    flowA.fill(0);
    let inW = 0;
    let outW = 0;
    let mostA = 0;
    for (let b = 0; b < from.length; b++) {
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
    for (let k = 0; k < loadFrom.length; k++) {
      const v = nodeV[loadFrom[k]!]! - nodeV[loadTo[k]!]!;
      loads.atV = v;
      loads.look(k);
      const i = loads.currentA;
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
    const least = Math.max(NOTHING, QUIET_NODE_RATIO * mostA);
    let currentRelative = 0;
    for (let n = 0; n < leftA.length; n++) {
      const left = leftA[n]!;
      const flow = flowA[n]!;
      const relative = Math.abs(left) / Math.max(flow, least);
      // Also true of what is no number.
      if (!(relative <= currentRelative)) currentRelative = relative;
    }
    this.currentRelative = currentRelative;
    this.powerRelative = Math.abs(inW - outW) / Math.max(inW, outW, NOTHING);
    return Math.max(currentRelative, this.powerRelative);
  }
}
