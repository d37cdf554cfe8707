import { faultAtFarEnd } from "@fusebook/core/protection";
import { indexRecord } from "@fusebook/core/record";
import { beforeAll, describe, expect, it } from "vitest";
import { copperOhm } from "./transient-circuits.js";
import { coachLines, exact, FUSE_OHM, recordOf, type SmallCoach, type Wire } from "./transient-coach.js";
import { Simulator } from "./transient-simulator.js";
import { Tally } from "./transient-tally.js";

const simulator = new Simulator();
beforeAll(() => simulator.start());

interface Run {
  readonly nominalV: 12 | 24;
  readonly openCircuitV: number;
  readonly batteryOhm: number;
  readonly feeder: Wire;
  readonly back: Wire;
  readonly wire: Wire;
  /** The load's own wire after the splice. */
  readonly tail?: Wire;
  readonly ambientC?: number;
}

const RUNS: readonly Run[] = [
  {
    nominalV: 12,
    openCircuitV: 12.7,
    batteryOhm: 0.006,
    feeder: { gauge: 4, lengthM: 3 },
    back: { gauge: 4, lengthM: 3 },
    wire: { gauge: 14, lengthM: 8 },
  },
  {
    nominalV: 12,
    openCircuitV: 12.4,
    batteryOhm: 0.012,
    feeder: { gauge: 8, lengthM: 5 },
    back: { gauge: 8, lengthM: 4 },
    wire: { gauge: 16, lengthM: 11 },
    tail: { gauge: 22, lengthM: 1.5 },
  },
  {
    nominalV: 12,
    openCircuitV: 12.7,
    batteryOhm: 0.003,
    feeder: { gauge: 2, lengthM: 1.5 },
    back: { gauge: 2, lengthM: 1 },
    wire: { gauge: 10, lengthM: 2 },
    tail: { gauge: 18, lengthM: 0.4 },
  },
  {
    nominalV: 24,
    openCircuitV: 25.4,
    batteryOhm: 0.01,
    feeder: { gauge: 6, lengthM: 6 },
    back: { gauge: 6, lengthM: 6 },
    wire: { gauge: 18, lengthM: 12 },
  },
  {
    nominalV: 24,
    openCircuitV: 25.2,
    batteryOhm: 0.008,
    feeder: { gauge: 8, lengthM: 2 },
    back: { gauge: 10, lengthM: 2 },
    wire: { gauge: 12, lengthM: 7 },
    tail: { gauge: 20, lengthM: 2 },
  },
  {
    nominalV: 12,
    openCircuitV: 12.7,
    batteryOhm: 0.006,
    feeder: { gauge: 4, lengthM: 3 },
    back: { gauge: 4, lengthM: 3 },
    wire: { gauge: 14, lengthM: 8 },
    ambientC: 60,
  },
];

const named = ({ nominalV, wire, tail, ambientC = 30 }: Run) =>
  `${nominalV} V, ${wire.gauge} AWG ${wire.lengthM} m${tail ? `, tail ${tail.gauge} AWG ${tail.lengthM} m` : ""}, ${ambientC} C`;

/** The coach of a run with one lamp, as a record; and the same circuit with a dead short where the lamp, or the end of the run, is. */
function coachOf(run: Run): SmallCoach {
  const load = {
    class: "led-resistor",
    currentA: exact(1),
    ...(run.tail && { tail: { gauge: `${run.tail.gauge} AWG`, lengthM: exact(run.tail.lengthM), insulationC: 105 } }),
  };
  return {
    nominalV: run.nominalV,
    openCircuitV: run.openCircuitV,
    batteryOhm: run.batteryOhm,
    feeder: run.feeder,
    sharedReturn: run.back,
    pwmHz: 220,
    onOhm: 0.008,
    channels: [{ wire: run.wire, fuseA: 10, dutyRatio: 1, load, lines: () => [] }],
    ...(run.ambientC !== undefined && { ambientC: run.ambientC }),
  };
}

async function shortA(run: Run, at: "run" | "tail"): Promise<number> {
  const tailOhm = run.tail ? copperOhm(run.tail.gauge, run.tail.lengthM, run.ambientC ?? 30) : 0;
  const lines = coachLines({
    ...coachOf(run),
    channels: [
      {
        ...coachOf(run).channels[0]!,
        lines: (id, from, to) => [`Rs${id} ${from} ${to} ${at === "tail" ? tailOhm : 1e-9}`],
      },
    ],
  });
  const point = await simulator.operatingPoint(lines);
  return point.fedBy("V1")[0]!;
}

describe("a dead short at the far end against ngspice", () => {
  it("battery, feeder, channel, fuse, wire, tail and return: the prospective current within 0.05 %", async () => {
    // Ohms on both sides from the ASTM B258 diameters, IEC 60028 copper and a lay of 1.02, written out twice; what is left is rounding and a short of a nano-ohm.
    const tally = new Tally("short at the far end");
    for (const run of RUNS) {
      const found = faultAtFarEnd(indexRecord(recordOf(coachOf(run))), "c1");
      if (found.kind !== "known") throw new Error(JSON.stringify(found));
      const what = named(run);
      const atRun = tally.note(`${what}, end of run`, { short: [found.value.currentA, await shortA(run, "run")] });
      expect(Math.abs(atRun.short!), what).toBeLessThan(5e-4);
      if (!run.tail) continue;
      const end = found.value.ends.find((one) => one.at === "tail")!;
      const atTail = tally.note(`${what}, end of tail`, { short: [end.currentA, await shortA(run, "tail")] });
      expect(Math.abs(atTail.short!), what).toBeLessThan(5e-4);
      expect(end.currentA, what).toBeLessThan(found.value.currentA);
    }
    tally.print();
    expect(tally.circuits).toBe(9);
  });

  it("the parts of the way add up to what limits it, the fuse's own resistance among them", () => {
    for (const run of RUNS) {
      const found = faultAtFarEnd(indexRecord(recordOf(coachOf(run))), "c1");
      if (found.kind !== "known") throw new Error(JSON.stringify(found));
      const sum = found.value.parts.reduce((all, part) => all + part.ohm, 0);
      expect(Math.abs(run.openCircuitV / sum / found.value.currentA - 1), named(run)).toBeLessThan(1e-6);
      expect(found.value.parts.find((part) => part.place === "fuse")?.ohm).toBeCloseTo(FUSE_OHM, 12);
    }
  });
});
