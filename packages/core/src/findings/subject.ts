import type { Cable, Circuit, CoachIndex, Collection, Load, Module } from "../record/index.js";
import type { Finding } from "./finding.js";

type Subject = Finding["subject"];

/** What a module is called on the coach: its name, else its id. */
export const moduleName = (module: Module): string => module.name ?? module.id;

/** Where a circuit is found: `Galley lamps (module M3, channel 4)`, or the name of its plain fuse. */
export function circuitName(index: CoachIndex, circuit: Circuit): string {
  const name = circuit.name ?? (circuit.label || undefined) ?? circuit.id;
  if (circuit.module !== undefined) {
    const module = index.modules.get(circuit.module);
    const channel = circuit.channel === undefined ? "" : `, channel ${circuit.channel}`;
    return `${name} (${module === undefined ? circuit.module : moduleName(module)}${channel})`;
  }
  return circuit.fusePosition === undefined ? name : `${name} (fuse ${circuit.fusePosition.name})`;
}

export const cableName = (index: CoachIndex, cable: Cable): string =>
  cable.name ?? `${index.nodes.get(cable.from)?.name ?? cable.from} to ${index.nodes.get(cable.to)?.name ?? cable.to}`;

export const ofCircuit = (index: CoachIndex, circuit: Circuit): Subject => ({
  path: index.pathOf("circuits", circuit.id),
  id: circuit.id,
  name: circuitName(index, circuit),
});

export const ofCable = (index: CoachIndex, cable: Cable): Subject => ({
  path: index.pathOf("cables", cable.id),
  id: cable.id,
  name: cableName(index, cable),
});

export const ofLoad = (index: CoachIndex, load: Load): Subject => ({
  path: index.pathOf("loads", load.id),
  id: load.id,
  name: load.name,
});

export const ofModule = (index: CoachIndex, module: Module): Subject => ({
  path: index.pathOf("modules", module.id),
  id: module.id,
  name: moduleName(module),
});

/** Any object of the record that has an id and perhaps a name. */
export const ofItem = (
  index: CoachIndex,
  collection: Collection,
  item: { readonly id: string; readonly name?: string | undefined },
): Subject => ({ path: index.pathOf(collection, item.id), id: item.id, name: item.name ?? item.id });

/** The coach as a whole. */
export const ofCoach = (index: CoachIndex): Subject => ({
  path: "coach",
  id: index.record.id,
  name: index.record.coach.name,
});

/** The two-wire network that modules and buttons talk on. */
export const TWO_WIRE: Subject = { path: "network", id: "network", name: "Two-wire network" };
