import { Invariant } from "../quantity/index.js";
import { type CoachIndex, indexRecord, readRecord } from "../record/index.js";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

export interface SmallCoach {
  readonly out?: object;
  readonly back?: object;
  readonly fuse?: object;
  readonly loads?: readonly object[];
  readonly battery?: object;
  readonly supplies?: readonly object[];
  readonly main?: object;
}

/** For tests: one battery of 12.6 V behind 10 mOhm, a main cable of 2 mOhm, one plain-fuse circuit c1 with one load l1, returned to battery negative. */
export function smallCoach(parts: SmallCoach = {}): CoachIndex {
  const loads = parts.loads ?? [{ id: "l1", name: "Lamp", class: "led-resistor", currentA: exact(1) }];
  const read = readRecord({
    format: "fusebook/1",
    id: "small",
    coach: { name: "Small coach", nominalV: 12 },
    supplies: [
      {
        id: "s1",
        name: "Bank",
        kind: "battery",
        node: "n-plus",
        returnNode: "n-minus",
        openCircuitV: exact(12.6),
        internalResistanceOhm: exact(0.01),
        ...parts.battery,
      },
      ...(parts.supplies ?? []),
    ],
    nodes: [
      { id: "n-plus", name: "plus", kind: "terminal", rail: "positive" },
      { id: "n-bar", name: "bar", kind: "busbar", rail: "positive" },
      { id: "n-minus", name: "minus", kind: "busbar", rail: "return" },
    ],
    cables: [
      {
        id: "k1",
        name: "Main",
        from: "n-plus",
        to: "n-bar",
        gauge: "2 AWG",
        insulationC: 105,
        resistanceOhm: exact(0.001),
        protection: { ratedA: 100, type: "bolt-down", resistanceOhm: exact(0.001), ...parts.main },
      },
    ],
    circuits: [
      {
        id: "c1",
        fusePosition: { node: "n-bar", name: "F1" },
        fuse: { ratedA: 10, type: "blade", resistanceOhm: exact(0.008), ...parts.fuse },
        out: { gauge: "16 AWG", insulationC: 105, bundleCount: 1, lengthM: exact(3), ...parts.out },
        return: { resistanceOhm: exact(0.01), gauge: "16 AWG", insulationC: 105, node: "n-minus", ...parts.back },
        loads: loads.map((load) => (load as { id: string }).id),
      },
    ],
    loads,
  });
  if (read.kind === "refused") throw new Invariant("test-record", read.faults.map((fault) => fault.path).join("; "));
  return indexRecord(read.record);
}
