import type { CircuitWiring, CoachNetwork } from "./coach-network.js";

/** A pair of record nodes that current is taken from and given back to. */
export interface Ends {
  readonly from: number;
  readonly to: number;
}

/**
 * Which current runs through which cable, told from the coach's shape alone. A cable that is the only way to what lies beyond it carries just what
 * is drawn there and given back elsewhere; of a cable in a loop (two batteries on one bar make one) only the whole can be said.
 */
export class CableFlow {
  /** When each node was first and last met walking from battery negative; -1 where nothing leads to it. */
  private readonly first: Int32Array;
  private readonly last: Int32Array;
  /** By edge: the node beyond it where it is the only way there; -1 in a loop, -2 where nothing leads to it. */
  private readonly beyond: Int32Array;

  constructor(coach: CoachNetwork) {
    const size = coach.nodeOf.size;
    const ways: { from: number; to: number; edge: number }[] = coach.edges.map((edge, e) => ({
      from: edge.a,
      to: edge.b,
      edge: e,
    }));
    const others = [
      ...coach.circuits.filter((one) => one.entryBranch >= 0).map((one) => one.entryBranch),
      ...coach.supplies.filter((supply) => supply.branch >= 0).map((supply) => supply.branch),
    ];
    for (const b of others) {
      const { from, to } = coach.network.branches[b]!;
      ways.push({ from, to, edge: -1 });
    }
    const at: number[][] = Array.from({ length: size }, () => []);
    ways.forEach((way, w) => {
      at[way.from]!.push(w);
      at[way.to]!.push(w);
    });
    this.first = new Int32Array(size).fill(-1);
    this.last = new Int32Array(size).fill(-1);
    this.beyond = new Int32Array(coach.edges.length).fill(-2);
    const low = new Int32Array(size);
    const next = new Int32Array(size);
    let clock = 0;
    const { first, last, beyond } = this;
    const stack: { node: number; by: number }[] = [{ node: coach.network.reference, by: -1 }];
    first[coach.network.reference] = low[coach.network.reference] = clock++;
    while (stack.length > 0) {
      const { node, by } = stack.at(-1)!;
      const w = at[node]![next[node]!++];
      if (w === undefined) {
        last[node] = clock - 1;
        stack.pop();
        const up = stack.at(-1);
        if (!up) continue;
        low[up.node] = Math.min(low[up.node]!, low[node]!);
        const { edge } = ways[by]!;
        if (edge >= 0) beyond[edge] = low[node]! > first[up.node]! ? node : -1;
        continue;
      }
      if (w === by) continue;
      const way = ways[w]!;
      const other = way.from === node ? way.to : way.from;
      if (first[other]! < 0) {
        first[other] = low[other] = clock++;
        stack.push({ node: other, by: w });
      } else {
        low[node] = Math.min(low[node]!, first[other]!);
        if (way.edge >= 0) beyond[way.edge] = -1;
      }
    }
  }

  isInLoop(edge: number): boolean {
    return this.beyond[edge] === -1;
  }

  /** How a current between these ends runs through a cable: 1 or -1 one way or the other, 0 not at all, undefined where a loop leaves it open. */
  share(edge: number, ends: Ends): -1 | 0 | 1 | undefined {
    const node = this.beyond[edge]!;
    if (node === -2 || ends.from === ends.to) return 0;
    if (node === -1) return undefined;
    const isFromBeyond = this.isBeyond(node, ends.from);
    if (isFromBeyond === this.isBeyond(node, ends.to)) return 0;
    return isFromBeyond ? 1 : -1;
  }

  private isBeyond(node: number, other: number): boolean {
    return this.first[other]! >= this.first[node]! && this.first[other]! <= this.last[node]!;
  }

  /** Where a circuit's current leaves and meets the cables. */
  endsOf(wiring: CircuitWiring): Ends {
    return { from: wiring.joinedFeed, to: wiring.joinedReturn };
  }
}

/** What would have to be known for the current of each cable, by edge. */
export function cableNeeds(coach: CoachNetwork, flow: CableFlow): readonly ReadonlySet<string>[] {
  const needs: Set<string>[] = coach.edges.map(() => new Set<string>());
  for (const wiring of coach.circuits) {
    const { supply, feedNode, returnNode, currentNeeds } = wiring;
    const isPlaced = feedNode >= 0 && returnNode >= 0;
    if (!supply || wiring.isCutOff || (currentNeeds.length === 0 && isPlaced)) continue;
    const own = isPlaced ? currentNeeds : [...currentNeeds, ...wiring.wayNeeds];
    const ends = flow.endsOf(wiring);
    coach.edges.forEach((edge, e) => {
      const isUnplaced =
        (feedNode < 0 && supply.toFeeds.isReached[edge.a] === 1) ||
        (returnNode < 0 && supply.toReturns.isReached[edge.a] === 1);
      if (isUnplaced || flow.share(e, ends) !== 0) for (const need of own) needs[e]!.add(need);
    });
  }
  return needs;
}

/** Is there more than one way along the cables, entries and batteries between some two nodes? */
export const hasLoops = (coach: CoachNetwork, flow: CableFlow): boolean =>
  coach.edges.some((_, e) => flow.isInLoop(e)) || coach.circuits.some((one) => one.entryBranch >= 0);
