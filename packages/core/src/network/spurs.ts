import { Arena } from "./arena.js";
import type { Network } from "./network.js";

/**
 * Loads that hang at the end of their own wires: a node that only one wire and one load meet carries one current, so the wire is counted with the load
 * and the node needs no equation of its own. Most nodes of a coach are such.
 */
export interface Spurs {
  /** By branch: 1 where it is counted with a load. */
  readonly isMerged: Uint8Array;
  /** By load: the branch before its `from` end and after its `to` end; -1 where there is none. */
  readonly fromBranch: Int32Array;
  readonly toBranch: Int32Array;
  /** By load: the nodes that it and its own wires stand between. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** By node: 1 where it has no equation of its own. */
  readonly isInner: Uint8Array;
}

/** `isPinned`: nodes whose volts are given. Branches with a source in them are never merged. */
export function findSpurs(network: Network, isPinned: Uint8Array, arena = new Arena()): Spurs {
  const { nodeCount, branches, loads } = network;
  const wires = arena.i32(nodeCount);
  const ends = arena.i32(nodeCount);
  const wire = arena.i32(nodeCount);
  for (let b = 0; b < branches.length; b++) {
    const { from, to, emfV } = branches[b]!;
    wires[from]!++;
    wires[to]!++;
    wire[from] = emfV === undefined ? b : -1;
    wire[to] = emfV === undefined ? b : -1;
  }
  for (let k = 0; k < loads.length; k++) {
    ends[loads[k]!.from]!++;
    ends[loads[k]!.to]!++;
  }
  const isMerged = arena.u8(branches.length);
  const isInner = arena.u8(nodeCount);
  const fromBranch = arena.i32(loads.length).fill(-1);
  const toBranch = arena.i32(loads.length).fill(-1);
  const from = arena.i32(loads.length);
  const to = arena.i32(loads.length);
  const beyond = (node: number): number => {
    const b = wires[node] === 1 && ends[node] === 1 && isPinned[node] === 0 ? wire[node]! : -1;
    if (b < 0 || isMerged[b] === 1) return -1;
    isMerged[b] = 1;
    isInner[node] = 1;
    return b;
  };
  const otherEnd = (b: number, node: number): number =>
    branches[b]!.from === node ? branches[b]!.to : branches[b]!.from;
  for (let k = 0; k < loads.length; k++) {
    const load = loads[k]!;
    fromBranch[k] = beyond(load.from);
    from[k] = fromBranch[k]! < 0 ? load.from : otherEnd(fromBranch[k]!, load.from);
    toBranch[k] = beyond(load.to);
    to[k] = toBranch[k]! < 0 ? load.to : otherEnd(toBranch[k]!, load.to);
  }
  return { isMerged, fromBranch, toBranch, from, to, isInner };
}
