/** A branch between two nodes. */
interface Ends {
  readonly from: number;
  readonly to: number;
}

/**
 * Which branches are the only way between what lies beyond them and the held nodes, and what lies beyond each. All that is drawn beyond a bridge comes
 * through it, so its share of any transfer resistance is its own resistance; only what is in a loop shares currents by its resistances.
 */
export class Bridges {
  /** By branch: true where it is the only way. */
  readonly isBridge: readonly boolean[];
  /** By branch that is a bridge: the node at its far end; else -1. */
  private readonly far: Int32Array;
  private readonly first: Int32Array;
  private readonly last: Int32Array;

  constructor(size: number, branches: readonly Ends[], held: ReadonlySet<number>) {
    const start = [...held][0]!;
    const placeOf = (node: number) => (held.has(node) ? start : node);
    const at: number[][] = Array.from({ length: size }, () => []);
    branches.forEach(({ from, to }, b) => {
      at[placeOf(from)]!.push(b);
      at[placeOf(to)]!.push(b);
    });
    this.first = new Int32Array(size).fill(-1);
    this.last = new Int32Array(size).fill(-2);
    this.far = new Int32Array(branches.length).fill(-1);
    const { first, last, far } = this;
    const low = new Int32Array(size);
    const next = new Int32Array(size);
    let clock = 0;
    const stack: { node: number; by: number }[] = [{ node: start, by: -1 }];
    first[start] = low[start] = clock++;
    while (stack.length > 0) {
      const { node, by } = stack.at(-1)!;
      const b = at[node]![next[node]!++];
      if (b === undefined) {
        last[node] = clock - 1;
        stack.pop();
        const up = stack.at(-1);
        if (!up) continue;
        low[up.node] = Math.min(low[up.node]!, low[node]!);
        if (low[node]! > first[up.node]!) far[by] = node;
        continue;
      }
      if (b === by) continue;
      const [p, q] = [placeOf(branches[b]!.from), placeOf(branches[b]!.to)];
      const other = p === node ? q : p;
      if (first[other]! < 0) {
        first[other] = low[other] = clock++;
        stack.push({ node: other, by: b });
      } else low[node] = Math.min(low[node]!, first[other]!);
    }
    this.isBridge = branches.map((_, b) => far[b]! >= 0);
  }

  /** Does this node lie beyond this bridge? */
  isBeyond(branch: number, node: number): boolean {
    const { first, last, far } = this;
    const end = far[branch]!;
    return end >= 0 && first[node]! >= first[end]! && first[node]! <= last[end]!;
  }
}
