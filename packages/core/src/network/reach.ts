/** A cable as an edge between two node numbers; `isKnown` false where its resistance is not. */
export interface Edge {
  readonly a: number;
  readonly b: number;
  readonly isKnown: boolean;
  /** Paths of the figures it lacks. */
  readonly needs: readonly string[];
}

/** How to get from a starting node to every other along closed cables: known cables first, the fewest of them. */
export class Reach {
  /** The edge each node was reached by; -1 at the start and where it is not reached. */
  readonly by: Int32Array;
  readonly isReached: Uint8Array;

  constructor(
    readonly start: number,
    size: number,
    private readonly edges: readonly Edge[],
    at: readonly (readonly number[])[],
  ) {
    this.by = new Int32Array(size).fill(-1);
    this.isReached = new Uint8Array(size);
    this.isReached[start] = 1;
    let front = [start];
    const all = [start];
    for (const knownOnly of [true, false]) {
      front = [...all];
      while (front.length > 0) {
        const next: number[] = [];
        for (const node of front)
          for (const e of at[node] ?? []) {
            const edge = edges[e]!;
            if (knownOnly && !edge.isKnown) continue;
            const other = edge.a === node ? edge.b : edge.a;
            if (this.isReached[other]) continue;
            this.isReached[other] = 1;
            this.by[other] = e;
            next.push(other);
            all.push(other);
          }
        front = next;
      }
    }
  }

  /** The edges from the start to this node, first one first, each with the node it leads to. */
  wayTo(node: number): { readonly edge: number; readonly to: number }[] {
    const way: { edge: number; to: number }[] = [];
    for (let n = node; this.by[n]! >= 0; ) {
      const e = this.by[n]!;
      way.push({ edge: e, to: n });
      const edge = this.edges[e]!;
      n = edge.a === n ? edge.b : edge.a;
    }
    return way.reverse();
  }

  /** What is not known on the way to this node. */
  needsTo(node: number): string[] {
    return this.wayTo(node).flatMap((step) => [...this.edges[step.edge]!.needs]);
  }
}
