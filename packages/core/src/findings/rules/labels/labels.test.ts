import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";

const labelled = (label: string, load: object, more: object = {}) => ({
  circuits: [{ id: "c1", fusePosition: { name: "F1" }, label, loads: ["l1"] }],
  loads: [{ id: "l1", name: "It", ...load }],
  ...more,
});

describe("label-contradicts-loads", () => {
  const of = (label: string, load: object, more: object = {}) =>
    verdictsOf("label-contradicts-loads", labelled(label, load, more));
  it("fails where the label speaks of a pump and a lamp is fed", () => {
    expect(of("WATER PUMP", { class: "led-resistor" })).toEqual(["c1 fails"]);
  });
  it("holds where sort and label fit, and where the label names no sort at all", () => {
    expect(of("WATER PUMP", { class: "pump" })).toEqual(["c1 holds"]);
    expect(of("BATH LTS", { class: "filament" })).toEqual(["c1 holds"]);
    expect(of("AUX 3", { class: "filament" })).toEqual(["c1 holds"]);
  });
  it("is open where the load's sort is not known, settled by a look", () => {
    const [found] = findingsOf("label-contradicts-loads", labelled("WATER PUMP", {}));
    expect(found).toMatchObject({ verdict: "open", settledBy: [{ path: "loads[0].class", instrument: "look" }] });
  });
  it("fails where the label names another place than the loads are in, holds for the place around them", () => {
    const places = {
      places: [
        { id: "bath", name: "Bath" },
        { id: "galley", name: "Galley" },
        { id: "hood", name: "Hood", within: "galley" },
      ],
    };
    expect(of("BATH AUX", { class: "filament", place: "hood" }, places)).toEqual(["c1 fails"]);
    expect(of("GALLEY AUX", { class: "filament", place: "hood" }, places)).toEqual(["c1 holds"]);
    expect(of("BATH AUX", { class: "filament" }, places)).toEqual(["c1 holds"]);
  });
  it("fails where the label says spare and something is fed", () => {
    expect(of("SPARE", { class: "filament" })).toEqual(["c1 fails"]);
  });
});

describe("label-missing", () => {
  it("fails for an empty label, is open where nobody looked, holds for a written one, asks nothing of spares", () => {
    const circuit = (id: string, more: object) => ({ id, fusePosition: { name: id }, loads: [id], ...more });
    expect(
      verdictsOf("label-missing", {
        circuits: [
          circuit("a", { label: "" }),
          circuit("b", {}),
          circuit("c", { label: "LTS" }),
          circuit("d", { label: "", isSpare: true }),
        ],
      }),
    ).toEqual(["a fails", "b open", "c holds"]);
  });
});

describe("spare-fuse-fitted", () => {
  it("fails for a fuse in a spare place, is open where nobody calls it spare, holds without a fuse", () => {
    expect(
      verdictsOf("spare-fuse-fitted", {
        circuits: [
          { id: "a", isSpare: true, fuse: { ratedA: 10 } },
          { id: "b", label: "spare", fuse: { ratedA: 10 } },
          { id: "c", label: "AUX", fuse: { ratedA: 10 } },
          { id: "d", isSpare: true },
          { id: "e", loads: ["l1"], fuse: { ratedA: 10 } },
        ],
      }),
    ).toEqual(["a fails", "b fails", "c open", "d holds"]);
  });
});

describe("circuit-unverified", () => {
  it("is open until somebody has seen what the fuse feeds", () => {
    expect(
      verdictsOf("circuit-unverified", {
        circuits: [
          { id: "a", loads: ["l1"] },
          { id: "b", loads: ["l1"], verified: { what: "pulled the fuse" } },
          { id: "c" },
          { id: "d", isSpare: true },
        ],
      }),
    ).toEqual(["a open", "b holds", "c open"]);
  });
});
