import type { Circuit, CoachIndex, Load, LoadClass } from "../record/index.js";
import { caution } from "./make-step.js";
import type { Caution } from "./procedure.js";

type Hazard = Caution["code"];

/** What can happen when power reaches a load of this class. Common practice, no source. */
export const HAZARD_OF_CLASS: Readonly<Record<LoadClass, Hazard | undefined>> = {
  "led-resistor": undefined,
  "led-linear": undefined,
  "led-driver": undefined,
  filament: undefined,
  motor: "something-moves",
  pump: "water-may-run",
  fan: "something-moves",
  actuator: "something-moves",
  valve: "water-may-run",
  // A coil closes a contact: what is behind it is not on record, so it is treated as something that may move.
  "relay-coil": "something-moves",
  "heater-control": "heat-may-start",
  "inverter-remote": "engine-or-generator-may-start",
  electronics: undefined,
  outlet: undefined,
  detector: "life-safety",
  "resistive-heater": "heat-may-start",
};

/** A load of unknown class is never read as harmless: it may move. */
const hazardOf = (load: Load | undefined): Hazard | undefined =>
  load?.class === undefined ? "something-moves" : HAZARD_OF_CLASS[load.class];

const ORDER: readonly Hazard[] = [
  "something-moves",
  "water-may-run",
  "heat-may-start",
  "engine-or-generator-may-start",
  "life-safety",
];

/** The cautions that belong to the loads of these circuits: one for each hazard, naming the loads. A circuit with no load listed and not spare may feed anything. */
export function loadCautions(index: CoachIndex, circuits: readonly Circuit[]): Caution[] {
  const named = new Map<Hazard, string[]>();
  const add = (hazard: Hazard, name: string) => named.set(hazard, [...(named.get(hazard) ?? []), name]);
  for (const circuit of circuits) {
    const loads = circuit.loads ?? [];
    if (loads.length === 0 && circuit.isSpare !== true)
      add("something-moves", `whatever ${circuit.label || circuit.id} feeds (not on record)`);
    for (const id of loads) {
      const load = index.loads.get(id);
      const hazard = hazardOf(load);
      if (hazard !== undefined)
        add(hazard, load?.class === undefined ? `${load?.name ?? id} (class not on record)` : load.name);
    }
  }
  return ORDER.flatMap((code) => {
    const names = named.get(code);
    return names === undefined ? [] : [caution(code, { loads: names.join(", ") })];
  });
}
