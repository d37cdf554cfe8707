import type { Circuit, CoachIndex, Module } from "@fusebook/core/record";

/** A module as a person finds it: its own name, which usually says where it is, else its id and place. */
export function moduleName(index: CoachIndex, module: Module): string {
  if (module.name !== undefined) return module.name;
  const place = module.place === undefined ? undefined : index.places.get(module.place)?.name;
  return place === undefined ? `Module ${module.id}` : `Module ${module.id}, ${place}`;
}

/** What a circuit feeds, in the names of its loads; "spare" or a question where there are none. */
export function feedsOf(index: CoachIndex, circuit: Circuit): string {
  const names = (circuit.loads ?? []).map((id) => {
    const load = index.loads.get(id);
    if (load === undefined) return id;
    return (load.quantity ?? 1) > 1 ? `${load.name} (${load.quantity})` : load.name;
  });
  if (names.length > 0) return names.join(", ");
  if (circuit.isSpare) return "spare";
  return circuit.name ?? (circuit.label ? `not traced; its label says “${circuit.label}”` : "not traced");
}

/** The number by which a circuit's fuse is found: the channel on a module, the position's own name on a block. */
export const fuseNumber = (circuit: Circuit): string =>
  circuit.channel !== undefined ? String(circuit.channel) : (circuit.fusePosition?.name ?? circuit.id);

export const placeName = (index: CoachIndex, id: string | undefined): string =>
  id === undefined ? "" : (index.places.get(id)?.name ?? id);
