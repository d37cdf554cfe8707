import { describe, expect, it } from "vitest";
import { findingsOf } from "../../test-coach.js";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });
const ownGates = [
  { ratio: 1.1, minS: 360_000 },
  { ratio: 1.35, minS: 1, maxS: 600 },
  { ratio: 6, minS: 0.05, maxS: 0.1 },
];

/** One battery of 12.6 V behind 10 mOhm, a main cable, one plain fuse with one load. */
const coach = (fuse: object, out: object = {}, load: object = {}, main: object = {}) => ({
  supplies: [
    {
      id: "s1",
      name: "Bank",
      kind: "battery",
      node: "n1",
      returnNode: "n3",
      openCircuitV: exact(12.6),
      internalResistanceOhm: exact(0.01),
    },
  ],
  nodes: [
    { id: "n1", name: "plus", kind: "terminal", rail: "positive" },
    { id: "n2", name: "bar", kind: "busbar", rail: "positive" },
    { id: "n3", name: "minus", kind: "busbar", rail: "return" },
  ],
  cables: [
    {
      id: "k1",
      from: "n1",
      to: "n2",
      gauge: "2 AWG",
      insulationC: 105,
      resistanceOhm: exact(0.002),
      protection: { ratedA: 100, type: "bolt-down", resistanceOhm: exact(0.001), ...main },
    },
  ],
  circuits: [
    {
      id: "c1",
      fusePosition: { node: "n2", name: "F1" },
      fuse: { ratedA: 10, type: "blade", resistanceOhm: exact(0.008), ...fuse },
      out: { gauge: "16 AWG", insulationC: 105, lengthM: exact(3), ...out },
      return: { gauge: "16 AWG", insulationC: 105, lengthM: exact(1), node: "n3" },
      loads: ["l1"],
    },
  ],
  loads: [{ id: "l1", name: "Lamp", class: "led-resistor", currentA: exact(1), ...load }],
});

describe("inrush-over-fuse", () => {
  const pump = { class: "pump", currentA: exact(4), stallA: exact(40), runUpS: exact(0.4) };
  const at = (ratedA: number) => findingsOf("inrush-over-fuse", coach({ ratedA }, {}, pump));
  it("a long hard start fails on 5 A as something to watch, holds on 30 A", () => {
    expect(at(5)).toMatchObject([{ subject: { id: "c1" }, verdict: "fails", severity: "watch" }]);
    expect(at(30)).toMatchObject([{ verdict: "holds" }]);
  });
  it("a start that only class figures tell is open, and asks for a clamp reading of it", () => {
    const [found] = findingsOf("inrush-over-fuse", coach({ ratedA: 10 }, {}, { class: "pump", currentA: exact(4) }));
    expect(found).toMatchObject({ verdict: "open", severity: "note" });
    expect(found?.settledBy.map((one) => one.path)).toContain("loads[0].stallA");
  });
  it("says nothing of loads that draw from the first moment what they draw", () => {
    expect(findingsOf("inrush-over-fuse", coach({}))).toEqual([]);
  });
});

describe("fault-not-cleared", () => {
  const at = (fuse: object, out: object) => findingsOf("fault-not-cleared", coach(fuse, out));
  it("a 20 A fuse on 20 m of 18 AWG must be mended: the short drives too little to open it", () => {
    expect(at({ ratedA: 20 }, { gauge: "18 AWG", lengthM: exact(20) })).toMatchObject([
      { subject: { id: "c1" }, verdict: "fails", severity: "mend", limit: { value: 40, unit: "A", sense: "at-least" } },
    ]);
    expect(at({ ratedA: 5 }, {})).toMatchObject([{ verdict: "holds" }]);
  });
  it("is open for a guessed length across the limit, and asks for the tape measure", () => {
    const [found] = at({ ratedA: 20 }, { gauge: "18 AWG", lengthM: { value: 12, basis: "assumed" } });
    expect(found).toMatchObject({ verdict: "open", settledBy: [{ path: "circuits[0].out.lengthM" }] });
  });
  it("a fuse of a family without gates is not judged", () => {
    expect(at({ type: "breaker" }, {})).toEqual([]);
  });
});

describe("fault-over-conductor and fault-over-tail", () => {
  it("a 30 A fuse lets through more than a 22 AWG run stands: mend, never stop, because blade gates are from memory", () => {
    const [found] = findingsOf(
      "fault-over-conductor",
      coach({ ratedA: 30 }, { gauge: "22 AWG", insulationC: 80, lengthM: exact(0.5) }),
    );
    expect(found).toMatchObject({
      verdict: "fails",
      severity: "mend",
      parameters: { run: "wire" },
      limit: { unit: "mm2" },
    });
    expect(found?.alsoRestsOn?.some((source) => source.id === "k-values")).toBe(true);
  });
  it("names the load whose own wire is too thin for the fuse, and holds for a smaller fuse", () => {
    const tail = { tail: { gauge: "24 AWG", insulationC: 80, lengthM: exact(0.3) } };
    const at = (ratedA: number) => findingsOf("fault-over-tail", coach({ ratedA }, {}, tail));
    expect(at(30)).toMatchObject([{ subject: { id: "l1" }, verdict: "fails", severity: "mend" }]);
    expect(at(3)).toMatchObject([{ verdict: "holds" }]);
  });
});

describe("not-selective", () => {
  it("with gates off the main fuse's sheet it is told; without them nothing is said", () => {
    expect(findingsOf("not-selective", coach({}))).toEqual([]);
    const at = (ratedA: number) => findingsOf("not-selective", coach({}, {}, {}, { ratedA, gates: ownGates }));
    expect(at(100)).toMatchObject([{ subject: { id: "c1" }, verdict: "holds" }]);
    expect(at(12)).toMatchObject([{ verdict: "open", severity: "note", settledBy: [{ instrument: "look" }, {}] }]);
    expect(at(2)).toMatchObject([{ verdict: "fails", severity: "watch" }]);
  });
});

describe("interrupt-under-fault", () => {
  it("a main fuse that breaks less than the battery drives must be mended; with its print unread it is open", () => {
    const at = (main: object) => findingsOf("interrupt-under-fault", coach({}, {}, {}, main));
    // 12.6 V behind 10 mOhm: 1260 A.
    expect(at({ interruptA: 1000 })).toMatchObject([{ subject: { id: "k1" }, verdict: "fails", severity: "mend" }]);
    expect(at({ interruptA: 2000 })).toMatchObject([{ verdict: "holds" }]);
    expect(at({})).toMatchObject([
      {
        verdict: "open",
        severity: "note",
        settledBy: [{ path: "cables[0].protection.interruptA", instrument: "look" }],
      },
    ]);
  });
});
