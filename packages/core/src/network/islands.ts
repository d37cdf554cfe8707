import { Arena } from "./arena.js";
import type { Network } from "./network.js";

/** Disjoint groups of nodes, joined pair by pair. */
export class Groups {
  private readonly parent: Int32Array;
  constructor(size: number, arena = new Arena()) {
    this.parent = arena.i32(size);
    for (let i = 0; i < size; i++) this.parent[i] = i;
  }
  rootOf(node: number): number {
    const { parent } = this;
    let root = node;
    while (parent[root] !== root) root = parent[root]!;
    for (let n = node; n !== root; ) {
      const up = parent[n]!;
      parent[n] = root;
      n = up;
    }
    return root;
  }
  join(a: number, b: number): void {
    this.parent[this.rootOf(a)] = this.rootOf(b);
  }
}

/** Groups of nodes that nothing joins to the reference, each in node order. Their first node is taken as 0 V: only volts within an island mean anything. */
export function islandsOf(network: Network, arena = new Arena()): number[][] {
  const groups = new Groups(network.nodeCount, arena);
  for (const branch of network.branches) groups.join(branch.from, branch.to);
  for (const load of network.loads) groups.join(load.from, load.to);
  const home = groups.rootOf(network.reference);
  const byRoot = new Map<number, number[]>();
  for (let n = 0; n < network.nodeCount; n++) {
    const root = groups.rootOf(n);
    if (root === home) continue;
    const island = byRoot.get(root);
    if (island) island.push(n);
    else byRoot.set(root, [n]);
  }
  return [...byRoot.values()];
}
