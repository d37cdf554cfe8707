import {
  allOnState,
  busyState,
  type CoachSpans,
  type CoachState,
  conductorCOf,
  nominalVOf,
  spanCoach,
  wireResistance,
} from "../network/index.js";
import type { Outcome } from "../quantity/index.js";
import { type Cable, type CoachIndex, type DimBlockId, policyOf, type WireRun } from "../record/index.js";
import { ampacityLimit, ceilingLimit } from "./conductor-limits.js";
import type { CoachContext } from "./context.js";
import { enabledBlocksOf } from "./enabled-blocks.js";
import { wiringOf } from "./wiring.js";

/** Computes once, when first asked for. */
function once<T>(compute: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: compute() };
    return made.value;
  };
}

/** Computes once for each key. */
function onceFor<K, T>(compute: (key: K) => T): (key: K) => T {
  const made = new Map<K, T>();
  return (key) => {
    const found = made.get(key) ?? compute(key);
    made.set(key, found);
    return found;
  };
}

/** Computes once for conductors that are alike in all that a limit depends on: a coach has many wires and few sorts. */
function onceAlike<T>(compute: (run: WireRun | Cable) => T): (run: WireRun | Cable) => T {
  const made = new Map<string, T>();
  return (run) => {
    const { gauge, sectionMm2, insulationC, bundleCount, isSheathed, zone, place } = run;
    const key = JSON.stringify([gauge, sectionMm2, insulationC, bundleCount, isSheathed, zone, place]);
    const found = made.get(key) ?? compute(run);
    made.set(key, found);
    return found;
  };
}

const ifKnown = <T>(outcome: Outcome<T>): T | undefined => (outcome.kind === "known" ? outcome.value : undefined);

/** What rules look at: the record looked up, and the engines' results, each computed when a rule first asks for it. */
export function contextOf(index: CoachIndex): CoachContext {
  const policy = policyOf(index.record);
  const all = once(() => allOnState(index));
  const busy = once(() => busyState(index));
  const solved = new Map<string, Outcome<CoachSpans>>();
  const inState = (state: CoachState): Outcome<CoachSpans> => {
    const key = `${[...state.on].join(" ")}|${state.chargerOn === true}|${state.engineOn === true}`;
    const found = solved.get(key) ?? spanCoach(index, state);
    solved.set(key, found);
    return found;
  };
  const zoneOf = (place: string): string | undefined => index.places.get(place)?.zone;
  return {
    index,
    policy,
    nominalV: nominalVOf(index),
    allOnState: all,
    busyState: busy,
    inState,
    allOn: () => ifKnown(inState(all())),
    busy: () => ifKnown(inState(busy())),
    wiring: once(() => wiringOf(index)),
    enabledBlocks: onceFor((module): Outcome<readonly DimBlockId[]> => enabledBlocksOf(index, module)),
    ampacity: onceAlike((run) => ampacityLimit(run, policy, zoneOf)),
    deviceCeiling: onceAlike((run) => ceilingLimit(run, policy, zoneOf)),
    resistance: onceFor((run) => wireResistance(run, policy, conductorCOf(run, policy, zoneOf))),
  };
}
