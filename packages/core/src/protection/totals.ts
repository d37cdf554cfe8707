import { allOnState, busyState, type CoachSpans, type Spanned, spanCoach } from "../network/index.js";
import { type Figure, known, type Outcome } from "../quantity/index.js";
import { type CoachIndex, policyOf } from "../record/index.js";
import { type Ampacity, ampacityOf } from "./ampacity.js";
import { type BusCurrent, busCurrentOf } from "./bus-current.js";
import { type Demand, moduleDemandOf } from "./demand.js";

/** What runs through the shared parts of the coach in one named state. */
export interface StateTotals {
  /** "everything on" or "busy evening". */
  readonly state: string;
  readonly modules: readonly { readonly id: string; readonly currentA: Outcome<Spanned>; readonly ratedA?: Figure }[];
  readonly feeders: readonly {
    readonly id: string;
    readonly currentA: Outcome<Spanned>;
    readonly ampacity: Outcome<Ampacity>;
    readonly deviceA?: Figure;
  }[];
  readonly bars: readonly { readonly id: string; readonly currentA: Outcome<BusCurrent>; readonly ratedA?: Figure }[];
}

export interface CoachTotals {
  /** The worst that really happens. */
  readonly busy: StateTotals;
  /** More than ever happens: the limit of what can. */
  readonly allOn: StateTotals;
  /** By module: connected current and demand. */
  readonly demand: ReadonlyMap<string, Outcome<Demand>>;
}

function totalsIn(index: CoachIndex, spans: CoachSpans): StateTotals {
  const policy = policyOf(index.record);
  const zoneOf = (place: string) => index.places.get(place)?.zone;
  return {
    state: spans.state.name,
    modules: [...index.modules.values()].map((module) => {
      const ratedA = index.moduleKinds.get(module.kind ?? ("" as never))?.ratedTotalA;
      return { id: module.id, currentA: spans.moduleA.get(module.id)!, ...(ratedA === undefined ? {} : { ratedA }) };
    }),
    feeders: [...index.cables.values()].map((cable) => ({
      id: cable.id,
      currentA: spans.cableA.get(cable.id)!,
      ampacity: ampacityOf(cable, policy, `${index.pathOf("cables", cable.id)}.`, zoneOf),
      ...(cable.protection?.ratedA === undefined ? {} : { deviceA: cable.protection.ratedA }),
    })),
    bars: [...index.nodes.values()]
      .filter((node) => node.kind === "busbar")
      .map((node) => ({
        id: node.id,
        currentA: busCurrentOf(index, spans, node.id),
        ...(node.ratedA === undefined ? {} : { ratedA: node.ratedA }),
      })),
  };
}

/** What do modules, feeders and bars carry, in the worst evening that really happens and with everything on? Missing and refused as `spanCoach`. */
export function totalsOf(index: CoachIndex): Outcome<CoachTotals> {
  const busy = spanCoach(index, busyState(index));
  if (busy.kind !== "known") return busy;
  const allOn = spanCoach(index, allOnState(index));
  if (allOn.kind !== "known") return allOn;
  return known({
    busy: totalsIn(index, busy.value),
    allOn: totalsIn(index, allOn.value),
    demand: new Map([...index.modules.keys()].map((id) => [id, moduleDemandOf(index, id)])),
  });
}
