import { type Network, type NetworkSolution, solveNetwork, wireResistance } from "@fusebook/core/network";
import { DEFAULT_POLICY } from "@fusebook/core/record";
import { describe, expect, it } from "vitest";

/** Solves, or fails the test. */
function solved(network: Network): NetworkSolution {
  const found = solveNetwork(network);
  if (found.kind !== "known") throw new Error(JSON.stringify(found));
  return found.value;
}

const R = (from: number, to: number, resistanceOhm: number, emfV?: number) =>
  emfV === undefined ? { from, to, resistanceOhm } : { from, to, resistanceOhm, emfV };
const ohms = (from: number, to: number, resistanceOhm: number) => ({
  from,
  to,
  model: { kind: "resistance", resistanceOhm } as const,
});

/** Agreement to the digits that the source prints: half a unit of the last one, and a hair. */
function toDigits(got: number, printed: string) {
  const digits = printed.split(".")[1]?.length ?? 0;
  expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(0.501 * 10 ** -digits);
}

describe("OpenStax College Physics 2e, chapter 21 (W18, W19, W21)", () => {
  it("21.1 series: 12.0 V over 1.00, 6.00 and 13.0 ohm: 0.600 A; 0.600, 3.60, 7.80 V; 7.20 W", () => {
    const s = solved({ nodeCount: 3, reference: 0, branches: [R(0, 1, 1, 12), R(1, 2, 6)], loads: [ohms(2, 0, 13)] });
    toDigits(s.loadA[0]!, "0.600");
    toDigits(s.branchA[0]! * 1, "0.600");
    toDigits(s.nodeV[1]! - s.nodeV[2]!, "3.60");
    toDigits(s.nodeV[2]!, "7.80");
    toDigits(12 * s.loadA[0]!, "7.20");
  });
  it("21.1 parallel: 12.0 V on 1.00, 6.00 and 13.0 ohm: 14.92 A; 12.0, 2.00, 0.92 A; 179 W", () => {
    // The textbook's source has no resistance; a micro-ohm stands for none and moves nothing that is printed.
    const s = solved({
      nodeCount: 2,
      reference: 0,
      branches: [R(0, 1, 1e-6, 12)],
      loads: [ohms(1, 0, 1), ohms(1, 0, 6), ohms(1, 0, 13)],
    });
    toDigits(s.branchA[0]!, "14.92");
    toDigits(s.loadA[0]!, "12.0");
    toDigits(s.loadA[1]!, "2.00");
    toDigits(s.loadA[2]!, "0.92");
    toDigits(12 * s.branchA[0]!, "179");
  });
  it("21.2 battery: 12.0 V, 0.100 ohm: 10.0 ohm gives 1.188 A, 11.9 V; 0.500 ohm gives 20.0 A, 10.0 V, 200 W", () => {
    const at = (own: number, load: number) =>
      solved({ nodeCount: 2, reference: 0, branches: [R(0, 1, own, 12)], loads: [ohms(1, 0, load)] });
    toDigits(at(0.1, 10).loadA[0]!, "1.188");
    toDigits(at(0.1, 10).nodeV[1]!, "11.9");
    toDigits(at(0.1, 0.5).loadA[0]!, "20.0");
    toDigits(at(0.1, 0.5).nodeV[1]!, "10.0");
    toDigits(at(0.1, 0.5).loadA[0]! * at(0.1, 0.5).nodeV[1]!, "200");
  });
  it("21.2 a tired battery: 0.500 ohm inside, 0.500 ohm load: 12.0 A, 6.00 V, 72.0 W", () => {
    const s = solved({ nodeCount: 2, reference: 0, branches: [R(0, 1, 0.5, 12)], loads: [ohms(1, 0, 0.5)] });
    toDigits(s.loadA[0]!, "12.0");
    toDigits(s.nodeV[1]!, "6.00");
    toDigits(s.loadA[0]! * s.nodeV[1]!, "72.0");
  });
});

describe("Lessons In Electric Circuits, vol. I (W01, W02, W23, W24)", () => {
  it("two batteries, one load: 28 V by 4 ohm and 7 V by 1 ohm on 2 ohm: 8 V, 4 A, 5 A out of one and 1 A into the other", () => {
    const s = solved({ nodeCount: 2, reference: 0, branches: [R(0, 1, 4, 28), R(0, 1, 1, 7)], loads: [ohms(1, 0, 2)] });
    expect(s.nodeV[1]).toBeCloseTo(8, 12);
    expect(s.loadA[0]).toBeCloseTo(4, 12);
    expect(s.branchA[0]).toBeCloseTo(5, 12);
    expect(s.branchA[1]).toBeCloseTo(-1, 12);
  });
  it("node voltage method: 3.8095 V and -1.5476 V", () => {
    const s = solved({
      nodeCount: 3,
      reference: 0,
      branches: [R(0, 1, 2, 10), R(1, 0, 4), R(1, 2, 2.5), R(2, 0, 5), R(0, 2, 1, -4)],
      loads: [],
    });
    toDigits(s.nodeV[1]!, "3.8095");
    toDigits(s.nodeV[2]!, "-1.5476");
  });
  it("2/0 AWG over 2300 ft each way feeds 25 A from 230 V with 220 V or more left; 1/0 does not (20 C, 10.09 ohm cmil/ft)", () => {
    const left = (circularMils: number) => {
      const leg = (10.09 * 2300) / circularMils;
      const s = solved({
        nodeCount: 3,
        reference: 0,
        branches: [R(0, 1, leg, 230), R(2, 0, leg)],
        loads: [{ from: 1, to: 2, model: { kind: "current", currentA: 25, kneeV: 100 } }],
      });
      return s.nodeV[1]! - s.nodeV[2]!;
    };
    expect(left(133100)).toBeGreaterThan(220);
    expect(left(105500)).toBeLessThan(220);
    expect(left(116035)).toBeCloseTo(220, 3);
  });
  it("the same run in 14 AWG (4107 cmil): 5.651 ohm a leg, at most 20.352 A even into a short", () => {
    const leg = (10.09 * 2300) / 4107;
    toDigits(leg, "5.651");
    const s = solved({
      nodeCount: 3,
      reference: 0,
      branches: [R(0, 1, leg, 230), R(1, 2, 1e-6), R(2, 0, leg)],
      loads: [],
    });
    toDigits(s.branchA[0]!, "20.352");
  });
});

describe("university and homework solutions (W26, W27)", () => {
  it("two-node ladder: 16 V and five 1 ohm resistors: V1 6 V, V2 2 V, 4 V between them, 2 A through the last", () => {
    // 16 V by 1 ohm to V1, 1 ohm to common, 1 ohm to V2, 1 ohm to common, and the fifth in parallel with it: V1 = 6, V2 = 2.
    const s = solved({
      nodeCount: 3,
      reference: 0,
      branches: [R(0, 1, 1, 16), R(1, 0, 1), R(1, 2, 1), R(2, 0, 1), R(2, 0, 1)],
      loads: [],
    });
    expect(s.nodeV[1]).toBeCloseTo(6, 12);
    expect(s.nodeV[2]).toBeCloseTo(2, 12);
    expect(s.nodeV[1]! - s.nodeV[2]!).toBeCloseTo(4, 12);
    expect(s.branchA[3]).toBeCloseTo(2, 12);
  });
  it("9.0 V by 26 ohm and 12.0 V by 37 ohm on a shared 62 ohm: 0.03, 0.102 and 0.13 A", () => {
    const s = solved({
      nodeCount: 2,
      reference: 0,
      branches: [R(0, 1, 26, 9), R(0, 1, 37, 12), R(1, 0, 62)],
      loads: [],
    });
    toDigits(s.branchA[0]!, "0.03");
    toDigits(s.branchA[1]!, "0.102");
    toDigits(s.branchA[2]!, "0.13");
  });
});

describe("OpenStax College Physics 2e, 20.3 (W17)", () => {
  it("20.0 m of 12 gauge copper measures 0.104 ohm (solid, 20 C; stranded is 2 % more)", () => {
    const found = wireResistance({ gauge: "12 AWG", lengthM: 20 }, DEFAULT_POLICY, 20);
    if (found.kind !== "known") throw new Error(JSON.stringify(found));
    toDigits(found.value.ohm / 1.02, "0.104");
    expect(found.value.span.lo).toBeLessThan(0.104);
    expect(found.value.span.hi).toBeGreaterThan(0.106);
  });
});

/*
 * A 12.6 V path through ten elements, and what a meter reads at each point: Ohm's and Kirchhoff's laws worked out outside this project, to the
 * millivolt, with a 10 megohm meter (which moves no reading here by a millivolt except where the path is open).
 */
const HEALTHY = {
  battery: 0.01,
  mainfuse: 0.001,
  busbar: 0.001,
  channel: 0.015,
  fuse: 0.005,
  wire: 0.06,
  connector: 0.004,
  load: 3.0,
  return: 0.06,
  ground: 0.004,
};
const POINTS = [
  "batt",
  "mainfuse_out",
  "bus",
  "ch_out",
  "fuse_out",
  "wire_end",
  "load_pos",
  "load_neg",
  "return_end",
  "batt_neg",
] as const;

function readings(injectedOhm: Partial<Record<keyof typeof HEALTHY, number>>): { volts: number[]; currentA: number } {
  const elements = Object.entries(HEALTHY).map(([name, ohm]) => ohm + (injectedOhm[name as keyof typeof HEALTHY] ?? 0));
  const meterOhm = 1e7;
  // Node 0 is battery negative; the path starts there through the battery and ends there after the ground.
  const last = elements.length;
  const branches = elements.map((ohm, e) =>
    R(e === 0 ? 0 : e, e === last - 1 ? 0 : e + 1, ohm, e === 0 ? 12.6 : undefined),
  );
  const s = solved({
    nodeCount: last,
    reference: 0,
    branches,
    loads: Array.from({ length: last - 1 }, (_, n) => ohms(n + 1, 0, meterOhm)),
  });
  return { volts: POINTS.map((_, p) => (p === last - 1 ? 0 : s.nodeV[p + 1]!)), currentA: s.branchA[7]! };
}

describe("readings along a 12 V path, healthy and with one fault (textbook laws, worked out outside)", () => {
  it.each([
    ["healthy", {}, [12.56, 12.556, 12.552, 12.492, 12.472, 12.233, 12.217, 0.255, 0.016, 0], 3.987],
    [
      "a connector with 1.5 ohm more",
      { connector: 1.5 },
      [12.573, 12.57, 12.568, 12.527, 12.513, 12.351, 8.285, 0.173, 0.011, 0],
      2.704,
    ],
    [
      "a ground with 0.8 ohm more",
      { ground: 0.8 },
      [12.568, 12.565, 12.562, 12.514, 12.498, 12.307, 12.295, 2.749, 2.558, 0],
      3.182,
    ],
    ["the wire open", { wire: 1e12 }, [12.6, 12.6, 12.6, 12.6, 12.6, 0, 0, 0, 0, 0], 0],
    ["the load open", { load: 1e12 }, [12.6, 12.6, 12.6, 12.6, 12.6, 12.6, 12.6, 0, 0, 0], 0],
    ["the fuse open", { fuse: 1e12 }, [12.6, 12.6, 12.6, 12.6, 0, 0, 0, 0, 0, 0], 0],
  ] as const)("%s", (_name, injected, volts, currentA) => {
    const got = readings(injected);
    // A millivolt: the last digit printed, and what ten meters at once take.
    volts.forEach((v, p) => {
      expect(Math.abs(got.volts[p]! - v), POINTS[p]).toBeLessThan(0.001);
    });
    expect(Math.abs(got.currentA - currentA)).toBeLessThan(0.001);
  });
});
