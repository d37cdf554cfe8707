import type { Cable } from "../record/index.js";
import type { CableWiring } from "./coach-network.js";
import type { Draft } from "./draft.js";
import { fuseResistance } from "./fuse-resistance.js";
import type { DropPlace } from "./results.js";
import { series, Way } from "./series.js";
import { conductorCOf, wireResistance } from "./wire-resistance.js";

function placeOf(draft: Draft, cable: Cable): DropPlace {
  if (cable.kind === "chassis" || cable.kind === "strap") return "ground";
  const [from, to] = [draft.index.nodes.get(cable.from), draft.index.nodes.get(cable.to)];
  const isReturn = (to?.rail ?? from?.rail) === "return" || from?.kind === "ground" || to?.kind === "ground";
  return isReturn ? "return" : "feeder";
}

/** Lays every cable whose ends are on record and whose disconnect is not open; its conductor and its protection are one branch. */
export function layCables(draft: Draft): CableWiring[] {
  const { index, policy, edges } = draft;
  const cables: CableWiring[] = [];
  for (const cable of index.cables.values()) {
    const path = index.pathOf("cables", cable.id);
    const from = draft.nodeAt(cable.from);
    const to = draft.nodeAt(cable.to);
    const way = new Way();
    const conductorC = conductorCOf(cable, policy, (p) => index.places.get(p)?.zone);
    const place = placeOf(draft, cable);
    if (cable.kind === "chassis" && cable.resistanceOhm === undefined) way.needs.push(`${path}.resistanceOhm`);
    else way.add(place, cable.id, wireResistance(cable, policy, conductorC, `${path}.`), `${path}.lengthM`);
    if (cable.protection !== undefined) {
      const fuse = fuseResistance(cable.protection, `${path}.protection`);
      if (fuse.assumedFrom)
        draft.finder.assumed.push({
          path: `${path}.protection.resistanceOhm`,
          value: fuse.ohm,
          source: fuse.assumedFrom,
        });
      way.put("fuse", cable.id, fuse);
    }
    const total = series(way.isKnown ? way.pieces : []);
    const isOpen = cable.disconnect?.isClosed === false || from === undefined || to === undefined || from === to;
    const edge = isOpen ? -1 : edges.length;
    if (!isOpen) {
      for (const need of way.needs) draft.leftOut.add(need);
      edges.push({ a: from, b: to, isKnown: way.isKnown, needs: way.needs });
      draft.edgesAt[from]!.push(edge);
      draft.edgesAt[to]!.push(edge);
    }
    cables.push({
      cable,
      path,
      branch: isOpen ? -1 : draft.branch(from, to, total),
      edge,
      series: total,
      needs: way.needs,
    });
  }
  return cables;
}
