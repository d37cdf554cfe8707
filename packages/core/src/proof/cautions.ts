import type { Circuit, CoachIndex, LoadClass } from "../record/index.js";

/** What may hurt somebody when a load of this class is switched on. Common practice, no source. */
const CAUTION_OF_CLASS: Readonly<Record<LoadClass, string | undefined>> = {
  "led-resistor": undefined,
  "led-linear": undefined,
  "led-driver": undefined,
  filament: "The lamp gets hot enough to burn: do not touch it.",
  motor: "It will turn or move: keep hands, hair and tools clear.",
  fan: "It will turn: keep hands, hair and tools clear.",
  pump: "Liquid will move: see that hoses and taps are closed up, and do not let it run dry.",
  actuator: "It will move with force: nobody and nothing in its way, and one person watching it.",
  valve: "It may let liquid through: know where it goes first. A gas valve is not part of this test.",
  "relay-coil": "What the relay feeds may start: know what that is first.",
  "heater-control": "A heater may fire: clear its outlet, and leave gas and fuel to a licensed person.",
  "inverter-remote":
    "An inverter or generator may start and put mains voltage on the outlets: stand clear, the mains side belongs to a licensed electrician.",
  electronics: undefined,
  outlet: "What is plugged in may start: unplug it first.",
  detector:
    "A life-safety detector: it must have power whatever button is pressed. Do not switch it off and do not take it down.",
  "resistive-heater": "It gets hot enough to burn: clear it and do not leave it.",
};

const NOT_KNOWN =
  "It is not known what this feeds: it may move, spray or heat. Have somebody watch before it is switched on.";

/** The cautions for switching a circuit on, each once, in the order of its loads. */
export function cautionsOf(index: CoachIndex, circuit: Circuit): string[] {
  const loads = circuit.loads ?? [];
  if (loads.length === 0) return [NOT_KNOWN];
  const found = loads.map((id) => {
    const of = index.loads.get(id)?.class;
    return of === undefined ? NOT_KNOWN : CAUTION_OF_CLASS[of];
  });
  return [...new Set(found.filter((each) => each !== undefined))];
}
