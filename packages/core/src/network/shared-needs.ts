import type { CircuitWiring, CoachNetwork } from "./coach-network.js";
import { Groups } from "./islands.js";

/** For each cable edge: the circuits whose current runs through it, or may, and what is not known of those currents. */
export interface SharedNeeds {
  /** By edge. */
  readonly needs: readonly ReadonlySet<string>[];
  readonly hasLoops: boolean;
}

/** Is there more than one way along the cables between some two nodes? */
export function hasCableLoops(coach: CoachNetwork): boolean {
  const groups = new Groups(coach.network.nodeCount);
  for (const edge of coach.edges) {
    if (groups.rootOf(edge.a) === groups.rootOf(edge.b)) return true;
    groups.join(edge.a, edge.b);
  }
  return false;
}

/** The edges that a circuit's current uses, by the supply it hangs on; every edge of that side where its end is not known or where there are loops. */
export function edgesOf(coach: CoachNetwork, wiring: CircuitWiring, hasLoops: boolean): number[] {
  const { supply } = wiring;
  if (!supply || wiring.isCutOff) return [];
  const used: number[] = [];
  for (const [reach, node] of [
    [supply.toFeeds, wiring.feedNode],
    [supply.toReturns, wiring.returnNode],
  ] as const)
    if (node < 0 || hasLoops)
      coach.edges.forEach((edge, e) => {
        if (reach.isReached[edge.a]) used.push(e);
      });
    else used.push(...reach.wayTo(node).map((step) => step.edge));
  return used;
}

/** What would have to be known for the current of each cable. */
export function sharedNeeds(coach: CoachNetwork): SharedNeeds {
  const hasLoops = hasCableLoops(coach);
  const needs: Set<string>[] = coach.edges.map(() => new Set<string>());
  for (const wiring of coach.circuits) {
    const own = [...wiring.currentNeeds];
    const feedPath = wiring.feedNode < 0 || wiring.returnNode < 0 ? wiring.wayNeeds : [];
    if (own.length === 0 && feedPath.length === 0) continue;
    for (const e of edgesOf(coach, wiring, hasLoops)) for (const need of [...own, ...feedPath]) needs[e]!.add(need);
  }
  return { needs, hasLoops };
}
