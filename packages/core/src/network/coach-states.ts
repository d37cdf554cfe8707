import type { Circuit, CircuitId, CoachIndex, LoadClass } from "../record/index.js";
import { nominalVOf } from "./build-coach.js";
import { loadFiguresOf } from "./load-figures.js";
import type { CoachState } from "./state.js";

/** Loads that turn or push something: of these only the greatest runs in the busy state. */
export const MOVING_CLASSES: ReadonlySet<LoadClass> = new Set(["motor", "pump", "fan", "actuator"]);

const feedsSomething = (circuit: Circuit): boolean => circuit.isSpare !== true && (circuit.loads ?? []).length > 0;

/** Every circuit that feeds something on at once, on battery alone: more than ever happens, and so the limit of what can. Unnamed circuits that are no spares are on too. */
export function allOnState(index: CoachIndex): CoachState {
  const on = [...index.circuits.values()].filter((circuit) => circuit.isSpare !== true);
  return { name: "everything on", on: new Set(on.map((circuit) => circuit.id)) };
}

/** The rated current of a circuit's loads as far as it is known. */
function ratedA(index: CoachIndex, circuit: Circuit): number {
  let sum = 0;
  for (const id of circuit.loads ?? []) {
    const load = index.loads.get(id);
    const figures = load && loadFiguresOf(load, nominalVOf(index), "");
    if (figures?.kind === "known") sum += figures.value.ratedA;
  }
  return sum;
}

/**
 * The worst evening that can really happen, on battery alone: every circuit with lights, electronics, valves, heaters, signals, outlets or loads of
 * unknown class on, and of the circuits that only move something (motors, pumps, fans, actuators) the one that draws most. Common practice, no source.
 */
export function busyState(index: CoachIndex): CoachState {
  const on = new Set<CircuitId>();
  let greatest: { id: CircuitId; currentA: number } | undefined;
  for (const circuit of index.circuits.values()) {
    if (circuit.isSpare === true) continue;
    const moves =
      feedsSomething(circuit) &&
      (circuit.loads ?? []).every((id) => {
        const of = index.loads.get(id)?.class;
        return of !== undefined && MOVING_CLASSES.has(of);
      });
    if (!moves) on.add(circuit.id);
    else {
      const currentA = ratedA(index, circuit);
      if (greatest === undefined || currentA > greatest.currentA) greatest = { id: circuit.id, currentA };
    }
  }
  if (greatest) on.add(greatest.id);
  return { name: "busy evening", on };
}

/** Only these circuits on, on battery alone. Ids that are not on record are left out. */
export function onlyState(index: CoachIndex, ids: Iterable<string>, name: string): CoachState {
  const on = new Set<CircuitId>();
  for (const id of ids) {
    const circuit = index.circuits.get(id);
    if (circuit) on.add(circuit.id);
  }
  return { name, on };
}
