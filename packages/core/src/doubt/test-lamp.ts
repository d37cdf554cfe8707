import { type CoachRecord, indexRecord } from "../record/index.js";

/** Known to this, half a span either way. */
export const read = (value: number, plusMinus = 0) => ({ value, basis: "measured", plusMinus });

export interface LampParts {
  readonly out?: object;
  readonly load?: object;
  readonly fuse?: object;
  readonly places?: readonly object[];
}

/** One lamp on 12 V that can be worked out by hand: nothing of its way has a resistance but the wire out, 0.24 ohm known to 0.08; it draws 5 A at any volts. */
export const lampCoach = ({ out, load, fuse, places = [] }: LampParts = {}) =>
  indexRecord({
    format: "fusebook/1",
    id: "lamp",
    coach: { name: "One lamp", nominalV: 12 },
    places,
    supplies: [
      {
        id: "s1",
        kind: "battery",
        name: "House",
        node: "bat",
        returnNode: "neg",
        openCircuitV: read(12),
        internalResistanceOhm: read(0),
      },
    ],
    nodes: [
      { id: "bat", kind: "terminal", name: "Battery +", rail: "positive" },
      { id: "neg", kind: "terminal", name: "Battery -", rail: "return" },
    ],
    moduleKinds: [
      { id: "R8", name: "R8", channels: 8, output: "relay", onResistanceOhm: read(0), quiescentA: read(0) },
    ],
    modules: [{ id: "m1", kind: "R8", feedNode: "bat", returnNode: "neg" }],
    circuits: [
      {
        id: "c1",
        module: "m1",
        channel: 1,
        fuse: { resistanceOhm: read(0), ...fuse },
        out: { resistanceOhm: read(0.24, 0.08), ...out },
        return: { resistanceOhm: read(0), node: "neg" },
        loads: ["l1"],
      },
    ],
    loads: [{ id: "l1", name: "Lamp", class: "led-linear", ratedV: read(12), currentA: read(5), ...load }],
  } as unknown as CoachRecord);
