import type { Circuit, CoachIndex, Module } from "../record/index.js";
import type { TestKind } from "./proof.js";

/** What to do and what to look at, by kind of test. */
const ASKS: Readonly<Record<TestKind, string>> = {
  switches: "Switch it on and off from its own button or switch. Does it come on, and go off again?",
  "voltage-at-load":
    "Charger, engine and solar off, all else off that can be, this on at full. Put both probes on the load's own terminals, positive and return. What does the voltmeter show?",
  current:
    "Charger, engine and solar off, all else off that can be, this on at full. Close the clamp round the one wire at the fuse, without opening the circuit. What does the clamp meter show, once steady?",
  dims: "Dim it from its own button, slowly, down and up. Does the light follow all the way, without flicker or jumps?",
  "stays-steady":
    "Dim every other channel of the module down and up while this is on. Does it keep full, steady power and never pulse?",
  address: "Ask the module from the controller, or read what it reports. Which address does it answer to?",
  answers:
    "It was moved to this channel. Work every button that is to work it, then take this channel's fuse out and work them again. Does this load, and nothing else, come on, and does it stay off without the fuse?",
  "always-fed":
    "It has a feed of its own now. Work every button that used to work it, then all off. Does it keep its power all the time?",
  "channel-dead":
    "The wire that sat here has moved. See that its fuse place is empty, hold a filament test lamp from the channel's output to battery negative, and work every button that used to work it. Does the lamp stay dark?",
  lamp: "Look at the lamp on the module. What does it show?",
};

export const modulePlaceWords = (module: Module): string =>
  module.name === undefined ? `Module ${module.id}` : `${module.name} (${module.id})`;

/** Where a circuit is, as a person would look for it. */
export function circuitPlaceWords(index: CoachIndex, circuit: Circuit): string {
  const named = [circuit.name, circuit.label].find((each) => each !== undefined && each.trim() !== "") ?? circuit.id;
  if (circuit.module !== undefined) {
    const channel = circuit.channel === undefined ? "" : ` channel ${circuit.channel}`;
    return `${named} (${circuit.module}${channel})`;
  }
  const position = circuit.fusePosition;
  if (position === undefined) return `${named} (${circuit.id})`;
  const node = position.node === undefined ? undefined : index.nodes.get(position.node)?.name;
  return `${named} (fuse ${position.name}${node === undefined ? "" : `, ${node}`})`;
}

/** How every test of a kind is done, said once for a whole sheet. */
export const methodWords = (kind: TestKind): string => ASKS[kind];

/** The line of the test sheet: where, what to beware of, what to do, what is asked. */
export const asksWords = (kind: TestKind, place: string, cautions: readonly string[]): string =>
  [`${place}.`, ...(kind === "address" || kind === "lamp" || kind === "channel-dead" ? [] : cautions), ASKS[kind]].join(
    " ",
  );
