import type { Arena } from "./arena.js";
import { islandsOf } from "./islands.js";
import type { Network } from "./network.js";
import { findSpurs, type Spurs } from "./spurs.js";

/** Which nodes and branches of a network have an equation of their own, and where each lands in the matrix. */
export interface SolverPattern {
  readonly islands: readonly (readonly number[])[];
  readonly spurs: Spurs;
  /** By node: its unknown; -1 where its volts are given or worked out with a load. */
  readonly unknown: Int32Array;
  /** How many unknowns. */
  readonly size: number;
  /** Branches with an equation of their own. */
  readonly active: Int32Array;
  /** By branch and by load: its pair of unknowns; -1 where it has none. */
  readonly branchPair: Int32Array;
  readonly loadPair: Int32Array;
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

/** Told from the shape of the network alone. */
export function solverPattern(network: Network, arena: Arena): SolverPattern {
  const { nodeCount, branches, loads, reference } = network;
  const islands = islandsOf(network, arena);
  const isPinned = arena.u8(nodeCount);
  isPinned[reference] = 1;
  for (const island of islands) isPinned[island[0]!] = 1;
  const spurs = findSpurs(network, isPinned, arena);
  const unknown = arena.i32(nodeCount).fill(-1);
  let size = 0;
  for (let n = 0; n < nodeCount; n++) if (isPinned[n] === 0 && spurs.isInner[n] === 0) unknown[n] = size++;
  const own: number[] = [];
  for (let b = 0; b < branches.length; b++) if (spurs.isMerged[b] === 0) own.push(b);
  const active = arena.i32(own.length);
  active.set(own);
  const rows: number[] = [];
  const columns: number[] = [];
  const pairOf = (fromNode: number, toNode: number): number => {
    const a = unknown[fromNode]!;
    const b = unknown[toNode]!;
    if (a < 0 || b < 0 || a === b) return -1;
    rows.push(a);
    columns.push(b);
    return rows.length - 1;
  };
  const branchPair = arena.i32(branches.length).fill(-1);
  for (const b of own) branchPair[b] = pairOf(branches[b]!.from, branches[b]!.to);
  const loadPair = arena.i32(loads.length);
  for (let k = 0; k < loads.length; k++) loadPair[k] = pairOf(spurs.from[k]!, spurs.to[k]!);
  return { islands, spurs, unknown, size, active, branchPair, loadPair, rows, columns };
}
