import { describe, expect, it } from "vitest";
import type { FindingCode } from "../../codes.js";
import { findingsOf, verdictsOf } from "../../test-coach.js";

/** A circuit of which everything is known but one field, and one of which nothing but its load is. */
const parts = {
  modules: [{ id: "m1" }],
  circuits: [
    {
      id: "c1",
      module: "m1",
      channel: 1,
      fuse: { ratedA: 10 },
      out: { gauge: "14 AWG", lengthM: 3, insulationC: 105 },
      loads: ["l1"],
    },
    { id: "c2", module: "m1", channel: 2, loads: ["l2"] },
    { id: "c3", module: "m1", channel: 3, isSpare: true },
    { id: "c4", fusePosition: { name: "F1" }, out: { gauge: "14 AWG", resistanceOhm: 0.02 }, loads: ["l3"] },
  ],
  loads: [
    { id: "l1", name: "Lamp", class: "filament", currentA: 1 },
    { id: "l2", name: "Thing" },
    { id: "l3", name: "Strip", class: "led-resistor", powerW: 12 },
  ],
};

describe("figures whose absence blocks a verdict", () => {
  it.each<[FindingCode, string[]]>([
    ["fuse-rating-missing", ["c1 holds", "c2 open", "c4 open"]],
    ["wire-gauge-missing", ["c1 holds", "c2 open", "c4 holds"]],
    ["wire-length-missing", ["c1 holds", "c2 open", "c4 holds"]],
    ["insulation-unknown", ["c1 holds", "c4 open"]],
    ["load-current-missing", ["l1 holds", "l2 open", "l3 holds"]],
    ["load-class-missing", ["l1 holds", "l2 open", "l3 holds"]],
    ["kind-missing", ["m1 open"]],
  ])("%s: open for what nobody wrote down, holds for what is known, silent on spares", (code, verdicts) => {
    expect(verdictsOf(code, parts)).toEqual(verdicts);
  });
  it("names the field to fill and the instrument", () => {
    const settled = (code: FindingCode) =>
      findingsOf(code, parts)
        .find((f) => f.verdict === "open")
        ?.settledBy.map(({ path, instrument }) => `${path} ${instrument}`);
    expect(settled("fuse-rating-missing")).toEqual(["circuits[1].fuse.ratedA look"]);
    expect(settled("wire-length-missing")).toEqual(["circuits[1].out.lengthM tape measure"]);
    expect(settled("load-current-missing")).toEqual(["loads[1].currentA clamp meter"]);
  });
  it("asks a chassis for its resistance, and a return and a tail for their wire where the record has them", () => {
    expect(
      verdictsOf("wire-length-missing", {
        cables: [
          { id: "k1", kind: "chassis", from: "a", to: "b" },
          { id: "k2", kind: "chassis", from: "a", to: "b", resistanceOhm: 0.001 },
        ],
        circuits: [{ id: "c1", out: { gauge: "14", lengthM: 1 }, return: { node: "b" }, loads: ["l1"] }],
        loads: [{ id: "l1", name: "Lamp", tail: {} }],
      }),
    ).toEqual(["c1 holds", "c1 open", "l1 open", "k1 open", "k2 holds"]);
  });
  it("asks cables for their copper, straps and chassis not", () => {
    expect(
      verdictsOf("wire-gauge-missing", {
        cables: [
          { id: "k1", from: "a", to: "b" },
          { id: "k2", kind: "chassis", from: "a", to: "b" },
          { id: "k3", from: "a", to: "b", sectionMm2: 16 },
        ],
      }),
    ).toEqual(["k1 open", "k3 holds"]);
  });
});

describe("kind-rating-missing", () => {
  it("wants the dimmed rating and the frequency only of a kind that dims, and nothing of kinds not in use", () => {
    const rated = { ratedSwitchedA: 10, ratedTotalA: 40, maxFuseA: 15 };
    const found = findingsOf("kind-rating-missing", {
      moduleKinds: [
        { id: "R", name: "R", channels: 8, output: "relay", ...rated },
        { id: "D", name: "D", channels: 8, output: "pwm", ...rated },
        { id: "X", name: "X", channels: 8 },
      ],
      modules: [
        { id: "m1", kind: "R" },
        { id: "m2", kind: "D" },
      ],
    });
    expect(found.map((f) => [f.subject.id, f.verdict, f.parameters.fields])).toEqual([
      ["R", "holds", ""],
      ["D", "open", "ratedDimmedA, pwmHz"],
    ]);
  });
});

describe("nominal-voltage-assumed", () => {
  it("is open where the coach does not say 12 V or 24 V", () => {
    expect(findingsOf("nominal-voltage-assumed", {})[0]?.verdict).toBe("holds");
    expect(findingsOf("nominal-voltage-assumed", { coach: { name: "Bare" } })[0]?.verdict).toBe("open");
  });
});

describe("survey-cell-unread", () => {
  it("lists every cell kept as text, on a circuit or of a row that became none", () => {
    const found = findingsOf("survey-cell-unread", {
      circuits: [{ id: "c1", unread: { Wire: "12 or 14", Amps: "??" } }, { id: "c2" }],
      survey: { unread: [{ row: "7", column: "Fuse", text: "ask Jo" }] },
    });
    expect(found.map((f) => [f.subject.id, f.verdict, f.parameters.text])).toEqual([
      ["c1", "open", "12 or 14"],
      ["c1", "open", "??"],
      ["7", "open", "ask Jo"],
    ]);
  });
});
