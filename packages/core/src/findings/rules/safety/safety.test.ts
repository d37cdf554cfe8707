import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";

describe("detector-on-switched-channel", () => {
  it("stops a detector on a module's channel, holds on a plain fuse, is open where its fuse is not known", () => {
    const found = findingsOf("detector-on-switched-channel", {
      modules: [{ id: "m1" }],
      loads: ["l1", "l2", "l3"].map((id) => ({ id, name: id, class: "detector" })),
      circuits: [
        { id: "c1", module: "m1", channel: 1, loads: ["l1"] },
        { id: "c2", fusePosition: { name: "F1" }, loads: ["l2"] },
        { id: "c3", loads: ["l3"] },
      ],
    });
    expect(found.map((f) => [f.subject.id, f.verdict, f.severity])).toEqual([
      ["l1", "fails", "stop"],
      ["l2", "holds", "stop"],
      ["l3", "open", "stop"],
    ]);
    expect(found[2]?.settledBy).toMatchObject([{ path: "circuits[2].fusePosition" }]);
  });
});

const supply = (id: string, what?: string) => ({
  id,
  kind: "charger",
  name: id,
  ...(what === undefined ? {} : { isolation: { what } }),
});

describe("supply-without-isolation", () => {
  it("fails where nothing, or only blanks, say what to open", () => {
    expect(
      verdictsOf("supply-without-isolation", {
        supplies: [supply("a", "Main switch"), supply("b"), supply("c", "  ")],
      }),
    ).toEqual(["a holds", "b fails", "c fails"]);
  });
});

describe("several-supplies-one-isolation", () => {
  it("is open, to be measured once, where two supplies name one switch", () => {
    const found = findingsOf("several-supplies-one-isolation", {
      supplies: [supply("a", "Main switch"), supply("b", " main  SWITCH"), supply("c", "Solar breaker")],
    });
    expect(found.map((f) => `${f.subject.id} ${f.verdict}`)).toEqual(["a holds", "b open", "c holds"]);
    expect(found[1]?.settledBy[0]?.instrument).toBe("voltmeter");
  });
});

describe("module-dead", () => {
  it("fails for a module that the record calls dead", () => {
    expect(verdictsOf("module-dead", { modules: [{ id: "m1", isDead: true }, { id: "m2" }] })).toEqual([
      "m1 fails",
      "m2 holds",
    ]);
  });
});
