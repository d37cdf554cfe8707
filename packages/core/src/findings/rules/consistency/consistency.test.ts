import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";

const LAMP = { id: "l1", name: "Lamp" };

describe("duplicate-id", () => {
  it("fails on the later of two things with one id in one collection", () => {
    expect(
      verdictsOf("duplicate-id", { loads: [LAMP, { ...LAMP, name: "Other" }, { id: "l2", name: "Fan" }] }),
    ).toEqual(["l1 holds", "l1 fails", "l2 holds"]);
  });
  it("only watches an id shared by two collections that a probe may name", () => {
    const [, shared] = findingsOf("duplicate-id", {
      nodes: [{ id: "x", kind: "stud", name: "Stud" }],
      loads: [{ id: "x", name: "Lamp" }],
    });
    expect(shared).toMatchObject({ verdict: "fails", severity: "watch", subject: { path: "loads[0]" } });
  });
  it("lets collections of different sorts share an id", () => {
    expect(
      verdictsOf("duplicate-id", { places: [{ id: "x", name: "Bay" }], loads: [{ id: "x", name: "Lamp" }] }),
    ).toEqual(["x holds", "x holds"]);
  });
});

describe("dangling-reference", () => {
  it("names the field that refers to nothing and the object that holds it", () => {
    const found = findingsOf("dangling-reference", {
      circuits: [{ id: "c1", module: "m9", channel: 1, loads: ["l1"] }],
      loads: [LAMP],
    });
    expect(found.map(({ subject, verdict }) => [subject.path, subject.id, verdict])).toEqual([
      ["circuits[0].module", "c1", "fails"],
    ]);
    expect(found[0]?.severity).toBe("mend");
  });
  it("lets a stop of the trunk be told in words", () => {
    expect(verdictsOf("dangling-reference", { network: { trunk: [{ at: "behind the dash" }] } })).toEqual([
      "test holds",
    ]);
  });
});

describe("channel-claimed-twice", () => {
  it("fails on the second claim of a channel and of a plain fuse", () => {
    expect(
      verdictsOf("channel-claimed-twice", {
        modules: [{ id: "m1" }],
        circuits: [
          { id: "c1", module: "m1", channel: 1 },
          { id: "c2", module: "m1", channel: 1 },
          { id: "c3", module: "m1", channel: 2 },
          { id: "c4", fusePosition: { name: "F1" } },
          { id: "c5", fusePosition: { name: "F1" } },
        ],
      }),
    ).toEqual(["c1 holds", "c2 fails", "c3 holds", "c4 holds", "c5 fails"]);
  });
});

describe("channel-out-of-range", () => {
  it("holds up to the kind's last channel, fails past it, says nothing of a module of unknown kind", () => {
    expect(
      verdictsOf("channel-out-of-range", {
        moduleKinds: [{ id: "R8", name: "R8", channels: 8 }],
        modules: [{ id: "m1", kind: "R8" }, { id: "m2" }],
        circuits: [
          { id: "c1", module: "m1", channel: 8 },
          { id: "c2", module: "m1", channel: 9 },
          { id: "c3", module: "m2", channel: 40 },
        ],
      }),
    ).toEqual(["c1 holds", "c2 fails"]);
  });
});

describe("load-claimed-twice and load-not-fed", () => {
  const parts = {
    loads: [LAMP, { id: "l2", name: "Fan" }, { id: "l3", name: "Pump" }],
    circuits: [
      { id: "c1", fusePosition: { name: "F1" }, loads: ["l1", "l2"] },
      { id: "c2", fusePosition: { name: "F2" }, loads: ["l2"] },
    ],
  };
  it("fails where two circuits list one load", () => {
    expect(verdictsOf("load-claimed-twice", parts)).toEqual(["l1 holds", "l2 fails"]);
  });
  it("fails where no circuit lists it", () => {
    expect(verdictsOf("load-not-fed", parts)).toEqual(["l1 holds", "l2 holds", "l3 fails"]);
  });
});

describe("wire-to-nowhere", () => {
  const nodes = [
    { id: "bus", kind: "busbar", name: "Bus", rail: "positive" },
    { id: "stud", kind: "stud", name: "Stud", rail: "positive" },
    { id: "gnd", kind: "ground", name: "Ground", rail: "return" },
  ];
  it("fails for a circuit without a start and for a return on the positive side; open without a channel", () => {
    expect(
      verdictsOf("wire-to-nowhere", {
        nodes,
        modules: [{ id: "m1" }],
        circuits: [
          { id: "c1" },
          { id: "c2", module: "m1" },
          { id: "c3", module: "m1", channel: 1, return: { node: "bus" } },
          { id: "c4", module: "m1", channel: 2, return: { node: "gnd" } },
        ],
      }),
    ).toEqual(["c1 fails", "c2 open", "c3 fails", "c4 holds"]);
  });
  it("stops a cable from the positive side straight to the return side", () => {
    const found = findingsOf("wire-to-nowhere", {
      nodes,
      cables: [
        { id: "k1", from: "bus", to: "stud" },
        { id: "k2", from: "bus", to: "gnd" },
        { id: "k3", from: "bus", to: "bus" },
      ],
    });
    expect(found.map(({ subject, verdict, severity }) => [subject.id, verdict, severity])).toEqual([
      ["k1", "holds", "mend"],
      ["k2", "fails", "stop"],
      ["k3", "fails", "mend"],
    ]);
  });
});

describe("length-not-positive and rating-not-positive", () => {
  const parts = {
    circuits: [
      { id: "c1", out: { lengthM: 3, bundleCount: 2 }, return: { lengthM: -2 }, fuse: { ratedA: 0 } },
      { id: "c2", out: { lengthM: 0, resistanceOhm: 0 }, fuse: { ratedA: 10 } },
    ],
    cables: [{ id: "k1", from: "a", to: "b", protection: { ratedA: 50, distanceFromSourceM: 0 } }],
    loads: [{ id: "l1", name: "Lamp", currentA: { value: -1, basis: "measured" }, madeUpA: -4 }],
  };
  it("fails for a wire of nothing or less; a device at the terminal itself is fair", () => {
    expect(findingsOf("length-not-positive", parts).map((f) => [f.subject.path, f.verdict])).toEqual([
      ["circuits[0].out.lengthM", "holds"],
      ["circuits[0].return.lengthM", "fails"],
      ["circuits[1].out.lengthM", "fails"],
      ["cables[0].protection.distanceFromSourceM", "holds"],
    ]);
  });
  it("fails for a rating of nothing or a draw below it; a resistance of nothing is fair; unknown fields are not judged", () => {
    expect(findingsOf("rating-not-positive", parts).map((f) => [f.subject.path, f.verdict])).toEqual([
      ["circuits[0].out.bundleCount", "holds"],
      ["circuits[0].fuse.ratedA", "fails"],
      ["circuits[1].out.resistanceOhm", "holds"],
      ["circuits[1].fuse.ratedA", "holds"],
      ["cables[0].protection.ratedA", "holds"],
      ["loads[0].currentA", "fails"],
    ]);
  });
});

describe("tolerance-over-value", () => {
  it("is open where a tolerance is wider than its figure, and a finer reading settles it; a resistance that may be nothing, and a figure without one, are not judged", () => {
    const figure = (value: number, plusMinus: number) => ({ value, basis: "measured", plusMinus });
    const parts = {
      circuits: [
        { id: "c1", out: { lengthM: figure(3, 9), resistanceOhm: figure(0.001, 0.002) }, fuse: { ratedA: 10 } },
      ],
      loads: [
        { id: "l1", name: "Lamp", currentA: figure(0.5, 2) },
        { id: "l2", name: "Fan", currentA: figure(2, 0.1) },
      ],
    };
    expect(findingsOf("tolerance-over-value", parts).map((f) => [f.subject.path, f.verdict])).toEqual([
      ["circuits[0].out.lengthM", "open"],
      ["loads[0].currentA", "open"],
      ["loads[1].currentA", "holds"],
    ]);
  });
});

describe("feed-without-path and cables-form-loop", () => {
  const nodes = ["bat", "bus", "m1", "m2", "neg"].map((id) => ({ id, kind: "stud", name: id }));
  const supplies = [{ id: "s", kind: "battery", name: "House", node: "bat", returnNode: "neg" }];
  const modules = [{ id: "m1", feedNode: "m1" }, { id: "m2", feedNode: "m2" }, { id: "m3" }];
  const cables = [
    { id: "k1", from: "bat", to: "bus" },
    { id: "k2", from: "m1", to: "bus" },
  ];
  it("holds along cables in either direction, fails where none leads, open where nobody said", () => {
    expect(verdictsOf("feed-without-path", { nodes, supplies, modules, cables })).toEqual([
      "m1 holds",
      "m2 fails",
      "m3 open",
    ]);
  });
  it("says nothing while no supply says where it connects", () => {
    expect(verdictsOf("feed-without-path", { nodes, modules, cables })).toEqual([]);
  });
  it("fails on the cable that closes a ring, and on none else; two supplies on one bar are no ring", () => {
    const charger = { id: "s2", kind: "charger", name: "Charger", node: "m2" };
    const tied = [...cables, { id: "k3", from: "m2", to: "bus" }];
    expect(verdictsOf("cables-form-loop", { nodes, supplies: [...supplies, charger], cables: tied })).toEqual([
      "k1 holds",
      "k2 holds",
      "k3 holds",
    ]);
    const ring = [...tied, { id: "k4", from: "bat", to: "m2" }];
    expect(
      verdictsOf("cables-form-loop", { nodes, supplies, cables: ring }).filter((told) => told.endsWith("fails")),
    ).toHaveLength(1);
  });
});

describe("dim-block-out-of-range", () => {
  it("fails for a channel that the kind has not, or that stands in two blocks", () => {
    const kind = (id: string, ...blocks: number[][]) => ({
      id,
      name: id,
      channels: 8,
      dimBlocks: blocks.map((channels, i) => ({ id: `b${i}`, channels })),
    });
    expect(
      verdictsOf("dim-block-out-of-range", {
        moduleKinds: [
          kind("fine", [1, 2, 3, 4], [5, 6, 7, 8]),
          kind("far", [7, 8, 9]),
          kind("twice", [1, 2], [2, 3]),
          { id: "none", name: "none", channels: 8 },
        ],
      }),
    ).toEqual(["fine holds", "far fails", "twice fails"]);
  });
});
