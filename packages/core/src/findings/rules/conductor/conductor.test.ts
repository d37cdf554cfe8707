import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";

const read = (value: number, plusMinus: number) => ({ value, basis: "measured", plusMinus });
/** Well-known insulation, alone, in the cabin at 30 C. */
const KNOWN = { insulationC: 105, bundleCount: 1, zone: "cabin" };
const battery = { id: "s1", kind: "battery", name: "House", node: "bat", returnNode: "neg" };
const nodes = [
  { id: "bat", kind: "terminal", name: "Battery +", rail: "positive" },
  { id: "bus", kind: "busbar", name: "Bus", rail: "positive" },
  { id: "far", kind: "stud", name: "Far stud", rail: "positive" },
  { id: "neg", kind: "terminal", name: "Battery -", rail: "return" },
  { id: "gnd", kind: "ground", name: "Chassis", rail: "return" },
  { id: "gnd2", kind: "ground", name: "Galley ground", rail: "return" },
];
const coach = (cables: object[], more: object = {}) => ({ supplies: [battery], nodes, cables, ...more });

describe("protection-missing", () => {
  // 10 AWG may have 30 A at most (NEC 240.4(D)(7)).
  const at = (first: object, second: object) =>
    findingsOf(
      "protection-missing",
      coach([
        { id: "k1", from: "bat", to: "bus", gauge: "2 AWG", ...KNOWN, ...first },
        { id: "k2", from: "bus", to: "far", gauge: "10 AWG", ...KNOWN, ...second },
      ]),
    ).map(({ subject, verdict, severity }) => `${subject.id} ${verdict} ${severity}`);
  it("stops a cable from the battery without any device", () => {
    expect(at({}, {})).toEqual(["k1 fails stop", "k2 fails stop"]);
  });
  it("holds with a device of its own, and behind a device that is small enough for it too", () => {
    expect(at({ protection: { ratedA: 30 } }, {})).toEqual(["k1 holds stop", "k2 holds stop"]);
  });
  it("fails behind a device that is too large for it", () => {
    expect(at({ protection: { ratedA: 100 } }, {})).toEqual(["k1 holds stop", "k2 fails stop"]);
    expect(at({ protection: { ratedA: 100 } }, { protection: { ratedA: 30 } })).toEqual([
      "k1 holds stop",
      "k2 holds stop",
    ]);
  });
  it("is open behind a device of unknown rating, and asks for a look at it", () => {
    const found = findingsOf(
      "protection-missing",
      coach([
        { id: "k1", from: "bat", to: "bus", gauge: "2 AWG", ...KNOWN, protection: {} },
        { id: "k2", from: "bus", to: "far", gauge: "10 AWG", ...KNOWN },
      ]),
    );
    expect(found[1]).toMatchObject({
      verdict: "open",
      settledBy: [{ path: "cables[0].protection.ratedA", instrument: "look" }],
    });
  });
  it("asks nothing of returns", () => {
    expect(verdictsOf("protection-missing", coach([{ id: "k3", from: "gnd", to: "neg", gauge: "2 AWG" }]))).toEqual([]);
  });
});

describe("protection-far-from-source", () => {
  // NEC 552.10(E)(4): 450 mm. 33 CFR 183.455: 178 mm, 1.02 m where sheathed.
  const at = (distanceFromSourceM: unknown, more: object = {}, policy: object = {}) =>
    verdictsOf("protection-far-from-source", {
      ...coach([{ id: "k1", from: "bat", to: "bus", protection: { ratedA: 50, distanceFromSourceM }, ...more }]),
      policy,
    });
  it("holds at 0.4 m, fails at 0.6 m, is open across 0.45 m and where nobody measured", () => {
    expect(at(read(0.4, 0.02))).toEqual(["k1 holds"]);
    expect(at(read(0.6, 0.02))).toEqual(["k1 fails"]);
    expect(at(read(0.45, 0.02))).toEqual(["k1 open"]);
    expect(at(undefined)).toEqual(["k1 open"]);
  });
  it("takes the marine distances under the marine rule", () => {
    const marine = { conductorRule: "marine" };
    expect(at(read(0.4, 0.02), {}, marine)).toEqual(["k1 fails"]);
    expect(at(read(0.4, 0.02), { isSheathed: true }, marine)).toEqual(["k1 holds"]);
  });
});

describe("feeder-device-over-conductor and fuse-over-conductor", () => {
  const feeder = (ratedA: unknown, more: object) =>
    findingsOf(
      "feeder-device-over-conductor",
      coach([{ id: "k1", from: "bat", to: "bus", protection: { ratedA }, ...more }]),
    );
  it("stops 50 A on 10 AWG, for which NEC 240.4(D)(7) names 30 A; holds for 30 A", () => {
    expect(feeder(50, { gauge: "10 AWG", ...KNOWN })).toMatchObject([
      { verdict: "fails", severity: "stop", source: { id: "nec-lv-rv" }, limit: { value: 30 } },
    ]);
    expect(feeder(30, { gauge: "10 AWG", ...KNOWN })).toMatchObject([{ verdict: "holds" }]);
  });
  it("is open on 8 AWG of unknown insulation at 70 A: 55 A at 60 C, 100 A at 200 C (33 CFR 183 table 5)", () => {
    const [found] = feeder(70, { gauge: "8 AWG", bundleCount: 1, zone: "cabin" });
    expect(found).toMatchObject({
      verdict: "open",
      settledBy: [{ path: "cables[0].insulationC", instrument: "look" }],
    });
    expect(feeder(50, { gauge: "8 AWG", bundleCount: 1, zone: "cabin" })[0]?.verdict).toBe("holds");
    expect(feeder(110, { gauge: "8 AWG", bundleCount: 1, zone: "cabin" })[0]?.verdict).toBe("fails");
  });
  it("judges the wire out and the wire back of a circuit, each by its own gauge", () => {
    // 14 AWG may have 15 A, 18 AWG 7 A.
    const circuit = {
      id: "c1",
      fuse: { ratedA: 15 },
      out: { gauge: "14 AWG", ...KNOWN },
      return: { gauge: "18 AWG", ...KNOWN },
    };
    const found = findingsOf("fuse-over-conductor", { circuits: [circuit] });
    expect(found.map((f) => [f.parameters.run, f.verdict, f.parameters.limit])).toEqual([
      ["out", "holds", 15],
      ["return", "fails", 7],
    ]);
  });
  it("raises no stop where the limit rests on a derating factor from memory", () => {
    // 33 CFR 183 engine-space factor of the 80 C class is recalled, that of 105 C was seen.
    const at = (insulationC: number) =>
      findingsOf("fuse-over-conductor", {
        policy: { conductorRule: "marine", bundling: "none" },
        circuits: [{ id: "c1", fuse: { ratedA: 100 }, out: { gauge: "18 AWG", insulationC, zone: "engine" } }],
      })[0];
    expect(at(80)).toMatchObject({ verdict: "fails", severity: "mend" });
    expect(at(105)).toMatchObject({ verdict: "fails", severity: "stop" });
  });
  it("says nothing of a wire whose gauge is not known", () => {
    expect(verdictsOf("fuse-over-conductor", { circuits: [{ id: "c1", fuse: { ratedA: 30 }, out: {} }] })).toEqual([]);
  });
  it("judges a load's own thinner wire by the circuit's fuse", () => {
    const at = (ratedA: unknown) =>
      verdictsOf("fuse-over-tail", {
        circuits: [{ id: "c1", fuse: { ratedA }, loads: ["l1"] }],
        loads: [{ id: "l1", name: "Lamp", tail: { gauge: "18 AWG", ...KNOWN } }],
      });
    expect(at(5)).toEqual(["l1 holds"]);
    expect(at(10)).toEqual(["l1 fails"]);
    expect(at({ value: 7.5, basis: "typical" })).toEqual(["l1 open"]);
  });
});

describe("conductor-under-minimum and bonding-under-minimum", () => {
  const at = (gauge: string, policy: object = {}) =>
    verdictsOf("conductor-under-minimum", { circuits: [{ id: "c1", out: { gauge } }], policy });
  it("holds for 18 AWG and fails for 20 under the NEC rule, wants 16 under the marine one", () => {
    expect(at("18 AWG")).toEqual(["c1 holds"]);
    expect(at("20 AWG")).toEqual(["c1 fails"]);
    expect(at("18 AWG", { conductorRule: "marine" })).toEqual(["c1 fails"]);
    expect(at("16", { conductorRule: "marine" })).toEqual(["c1 holds"]);
  });
  it("compares a section with the least copper of that gauge, 0.779 mm2 for SAE 18", () => {
    const mm2 = (value: number, plusMinus: number) =>
      verdictsOf("conductor-under-minimum", { circuits: [{ id: "c1", out: { sectionMm2: read(value, plusMinus) } }] });
    expect(mm2(1, 0.05)).toEqual(["c1 holds"]);
    expect(mm2(0.5, 0.05)).toEqual(["c1 fails"]);
    expect(mm2(0.78, 0.05)).toEqual(["c1 open"]);
  });
  it("wants 8 AWG or thicker from battery negative to a ground, and asks nothing of other cables", () => {
    const bond = (gauge: string) =>
      verdictsOf(
        "bonding-under-minimum",
        coach([
          { id: "k1", from: "neg", to: "gnd", gauge },
          { id: "k2", from: "bat", to: "bus", gauge: "18 AWG" },
        ]),
      );
    expect(bond("8 AWG")).toEqual(["k1 holds"]);
    expect(bond("10 AWG")).toEqual(["k1 fails"]);
    expect(
      verdictsOf("bonding-under-minimum", coach([{ id: "k1", from: "neg", to: "gnd", sectionMm2: read(7.5, 1) }])),
    ).toEqual(["k1 open"]);
  });
});

describe("return-missing", () => {
  it("fails where the record has neither a return wire nor the ground it lands on, is open where it has only the wire", () => {
    expect(
      verdictsOf("return-missing", {
        nodes,
        loads: [{ id: "l1", name: "Lamp" }],
        circuits: [
          { id: "c1", loads: ["l1"] },
          { id: "c2", loads: ["l1"], return: {} },
          { id: "c3", loads: ["l1"], return: { node: "gnd" } },
          { id: "c4" },
          { id: "c5", loads: ["l1"], return: { gauge: "14 AWG" } },
        ],
      }),
    ).toEqual(["c1 fails", "c2 fails", "c3 holds", "c5 open"]);
  });
});

describe("ground-resistance-high and shared-return-poor", () => {
  // FAA AC 43.13-1B 11-66: 0.005 ohm through structure.
  const at = (resistanceOhm: object, circuits: number) =>
    coach([{ id: "k1", kind: "chassis", from: "gnd2", to: "neg", resistanceOhm }], {
      circuits: Array.from({ length: circuits }, (_, i) => ({ id: `c${i}`, loads: ["l1"], return: { node: "gnd2" } })),
      loads: [{ id: "l1", name: "Lamp" }],
    });
  it("fails above 5 milliohm, holds below, is open across it", () => {
    expect(verdictsOf("ground-resistance-high", at(read(0.034, 0.002), 0))).toEqual(["k1 fails"]);
    expect(verdictsOf("ground-resistance-high", at(read(0.002, 0.001), 0))).toEqual(["k1 holds"]);
    expect(verdictsOf("ground-resistance-high", at(read(0.005, 0.001), 0))).toEqual(["k1 open"]);
  });
  it("names the ground that two circuits or more share; one circuit shares nothing", () => {
    expect(findingsOf("shared-return-poor", at(read(0.034, 0.002), 2))).toMatchObject([
      { subject: { id: "gnd2" }, verdict: "fails", severity: "mend", parameters: { count: 2 } },
    ]);
    expect(verdictsOf("shared-return-poor", at(read(0.034, 0.002), 1))).toEqual([]);
    expect(verdictsOf("shared-return-poor", at(read(0.002, 0.001), 2))).toEqual(["gnd2 holds"]);
    expect(verdictsOf("shared-return-poor", at(read(0.005, 0.001), 2))).toEqual(["gnd2 open"]);
  });
});
