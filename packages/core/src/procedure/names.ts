import type { ModuleChoice } from "../plan/index.js";
import { figureValue } from "../quantity/index.js";
import type { Circuit, CoachIndex, ModuleId } from "../record/index.js";

export const moduleName = (index: CoachIndex, id: string | undefined): string =>
  index.modules.get(id ?? "")?.name ?? id ?? "the module";

export const kindName = (index: CoachIndex, id: string | undefined): string =>
  index.moduleKinds.get(id ?? "")?.name ?? id ?? "the part that is there";

export const placeName = (index: CoachIndex, id: string | undefined): string =>
  id === undefined || id === "" ? "a place that is not on record" : (index.places.get(id)?.name ?? id);

/** What a circuit feeds, as the coach calls it. */
export function circuitName(index: CoachIndex, circuit: Circuit): string {
  if (circuit.name !== undefined) return circuit.name;
  const loads = (circuit.loads ?? []).map((id) => index.loads.get(id)?.name ?? id);
  if (loads.length > 0) return loads.join(", ");
  if (circuit.isSpare === true) return "spare";
  return circuit.label !== undefined && circuit.label !== "" ? circuit.label : circuit.id;
}

/** The places from the outermost to this one. A place within itself ends the chain. */
export function placeChain(index: CoachIndex, place: string | undefined): string[] {
  const chain: string[] = [];
  for (
    let at = place;
    at !== undefined && !chain.includes(at) && index.places.has(at);
    at = index.places.get(at)?.within
  )
    chain.unshift(at);
  return chain;
}

/** The places on the way that must be opened: those one just walks into (access minutes 0 on record) are left out. */
export const placesToOpen = (index: CoachIndex, place: string | undefined): string[] =>
  placeChain(index, place).filter((each) => {
    const accessMin = index.places.get(each)?.accessMin;
    return accessMin === undefined || figureValue(accessMin) > 0;
  });

/** Ordered so that each place is opened once: by the places on the way to it, in the record's order. */
export function byPlace(index: CoachIndex, choices: readonly ModuleChoice[]): ModuleChoice[] {
  const order = [...index.places.keys()];
  const keyOf = (id: ModuleId) => placeChain(index, index.modules.get(id)?.place).map((place) => order.indexOf(place));
  const compare = (a: readonly number[], b: readonly number[]): number => {
    for (let i = 0; i < Math.min(a.length, b.length); i++) if (a[i] !== b[i]) return (a[i] ?? 0) - (b[i] ?? 0);
    return a.length - b.length;
  };
  return choices
    .map((choice) => ({ choice, key: keyOf(choice.module) }))
    .sort((a, b) => compare(a.key, b.key))
    .map(({ choice }) => choice);
}
