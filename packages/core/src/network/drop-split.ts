import type { CircuitWiring, CoachNetwork, LoadWiring, SupplyWiring } from "./coach-network.js";
import type { Reach } from "./reach.js";
import type { DropPart, DropPlace } from "./results.js";
import type { Series } from "./series.js";

/** Where the volts go between the supply's terminals and this load and back: parts in the order the current meets them. They add up to the whole drop. */
export function dropSplit(
  coach: CoachNetwork,
  branchA: ArrayLike<number>,
  supply: SupplyWiring,
  wiring: CircuitWiring,
  load: LoadWiring,
): DropPart[] {
  const parts: DropPart[] = [];
  const through = (way: Series | undefined, currentA: number, place?: DropPlace) => {
    for (const piece of way?.pieces ?? [])
      parts.push({ place: place ?? piece.place, dropV: piece.ohm * currentA, id: piece.id });
  };
  const alongCables = (reach: Reach, node: number, isBack: boolean) => {
    const steps = reach.wayTo(node);
    for (const { edge, to } of isBack ? steps.reverse() : steps) {
      const cable = coach.cableOfEdge[edge]!;
      // The branch runs from the cable's `from` to its `to`; the way out goes away from the supply, the way back towards it.
      const isAlong = (coach.edges[edge]!.b === to) !== isBack;
      const currentA = isAlong ? branchA[cable.branch]! : -branchA[cable.branch]!;
      for (const piece of cable.series.pieces) {
        const place = isBack && piece.place === "feeder" ? "return" : piece.place;
        parts.push({ place, dropV: piece.ohm * currentA, id: piece.id });
      }
    }
  };
  alongCables(supply.toFeeds, wiring.joinedFeed, false);
  if (wiring.entryBranch >= 0) through(wiring.entry, branchA[wiring.entryBranch]!);
  if (wiring.outBranch >= 0) through(wiring.out, branchA[wiring.outBranch]!);
  if (load.tailBranch >= 0) through(load.tail, branchA[load.tailBranch]!);
  if (wiring.returnBranch >= 0) through(wiring.back, branchA[wiring.returnBranch]!);
  alongCables(supply.toReturns, wiring.joinedReturn, true);
  return parts;
}
