import { Invariant } from "../quantity/index.js";
import { type CoachIndex, indexRecord, readRecord } from "../record/index.js";

const exactly = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** A wire of this many ohms, known exactly; a return lands on battery negative. */
export const wireOf = (ohm: number, node?: string) => ({
  resistanceOhm: exactly(ohm),
  ...(node === undefined ? {} : { node }),
});

/** A circuit on the small coach's module: 0.01 ohm of fuse, 0.1 ohm out, 0.05 ohm back. */
export const circuitOn = (channel: number, load: string) => ({
  id: `c${channel}`,
  module: "m1",
  channel,
  fuse: { ratedA: 5, resistanceOhm: exactly(0.01) },
  out: wireOf(0.1),
  return: wireOf(0.05, "n-neg"),
  loads: [load],
});

/**
 * A coach for a test, small enough for a sheet of paper: 12.6 V behind 0.01 ohm, one module (0.02 ohm a channel, nothing for itself) whose block b1
 * of channels 1 and 2 dims, and on channel 1 a lamp of 2 A give or take 0.2 A that draws the same at any voltage. `parts` replaces whole collections.
 */
export function smallCoach(parts: Readonly<Record<string, unknown>> = {}): CoachIndex {
  const outcome = readRecord({
    format: "fusebook/1",
    id: "small",
    coach: { name: "Small coach", nominalV: 12 },
    nodes: [
      { id: "n-pos", kind: "busbar", name: "Bar", rail: "positive" },
      { id: "n-neg", kind: "ground", name: "Battery negative", rail: "return" },
    ],
    supplies: [
      {
        id: "s1",
        kind: "battery",
        name: "House",
        node: "n-pos",
        returnNode: "n-neg",
        openCircuitV: exactly(12.6),
        internalResistanceOhm: exactly(0.01),
      },
    ],
    moduleKinds: [
      {
        id: "K4",
        name: "Four channels",
        channels: 4,
        output: "pwm",
        onResistanceOhm: exactly(0.02),
        quiescentA: exactly(0),
        dimBlocks: [{ id: "b1", channels: [1, 2] }],
        bank: {
          switches: 2,
          options: [
            { enables: ["b1"], set: [{ switch: 1, position: 1 }] },
            { enables: [], set: [{ switch: 1, position: 0 }] },
          ],
        },
      },
    ],
    modules: [{ id: "m1", kind: "K4", feedNode: "n-pos", address: 7, positionsFound: "10" }],
    circuits: [circuitOn(1, "l-lamp")],
    loads: [lamp],
    ...parts,
  });
  if (outcome.kind === "refused")
    throw new Invariant("test-record", outcome.faults.map((fault) => `${fault.path} ${fault.message}`).join("; "));
  return indexRecord(outcome.record);
}

export const lamp = {
  id: "l-lamp",
  name: "Ceiling lamp",
  class: "led-linear",
  currentA: { value: 2, basis: "measured", plusMinus: 0.2 },
};
