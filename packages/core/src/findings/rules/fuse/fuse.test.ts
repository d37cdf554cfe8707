import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";

const read = (value: number, plusMinus: number) => ({ value, basis: "measured", plusMinus });
/** One circuit of one load on channel 1 of a kind. */
const coach = (fuse: object, load: object, kind: object = {}, more: object = {}) => ({
  moduleKinds: [{ id: "R8", name: "R8", channels: 8, output: "relay", ...kind }],
  modules: [{ id: "m1", kind: "R8" }],
  circuits: [{ id: "c1", module: "m1", channel: 1, fuse, loads: ["l1"] }],
  loads: [{ id: "l1", name: "Lamp", class: "led-resistor", ...load }],
  ...more,
});

describe("fuse-over-channel", () => {
  const at = (ratedA: unknown) => findingsOf("fuse-over-channel", coach({ ratedA }, {}, { maxFuseA: 15 }));
  it("stops a 20 A fuse where the channel allows 15 A, holds for 15 A", () => {
    expect(at(20)).toMatchObject([{ subject: { id: "c1" }, verdict: "fails", severity: "stop" }]);
    expect(at(15)).toMatchObject([{ verdict: "holds" }]);
  });
  it("is open for a guessed 15 A, which may be a 20 A, and asks for a look at the fuse", () => {
    expect(at({ value: 15, basis: "assumed" })).toMatchObject([
      { verdict: "open", settledBy: [{ path: "circuits[0].fuse.ratedA", instrument: "look" }] },
    ]);
  });
  it("says nothing where the kind states no limit", () => {
    expect(verdictsOf("fuse-over-channel", coach({ ratedA: 20 }, {}))).toEqual([]);
  });
});

describe("fuse-over-load-limit", () => {
  it("names each load that allows less than its fuse", () => {
    const at = (ratedA: unknown) => verdictsOf("fuse-over-load-limit", coach({ ratedA }, { maxFuseA: 5 }));
    expect(at(10)).toEqual(["l1 fails"]);
    expect(at(5)).toEqual(["l1 holds"]);
    expect(at({ value: 5, basis: "typical" })).toEqual(["l1 open"]);
    expect(verdictsOf("fuse-over-load-limit", coach({ ratedA: 10 }, {}))).toEqual([]);
  });
});

describe("load-over-fuse", () => {
  const at = (currentA: object) => findingsOf("load-over-fuse", coach({ ratedA: 5 }, { currentA, quantity: 2 }));
  it("counts every piece: two of 2 A hold on 5 A, two of 3 A fail, two of 2.5 A are open", () => {
    expect(at(read(2, 0.1))[0]?.verdict).toBe("holds");
    expect(at(read(3, 0.1))[0]?.verdict).toBe("fails");
    expect(at(read(2.5, 0.1))[0]?.verdict).toBe("open");
  });
  it("asks for a clamp reading of a draw that nobody measured", () => {
    const [found] = at({ value: 2.5, basis: "typical" });
    expect(found).toMatchObject({
      verdict: "open",
      settledBy: [{ path: "loads[0].currentA", instrument: "clamp meter" }],
    });
  });
});

describe("continuous-load-over-fuse", () => {
  // 125 % of the lasting load: a 10 A fuse carries 8 A on and on.
  const at = (currentA: object, more: object = {}) =>
    findingsOf("continuous-load-over-fuse", coach({ ratedA: 10 }, { currentA, isContinuous: true }, {}, more));
  it("holds at 7.5 A, fails at 8.5 A, is open across 8 A", () => {
    expect(at(read(7.5, 0.2))[0]?.verdict).toBe("holds");
    expect(at(read(8.5, 0.2))[0]?.verdict).toBe("fails");
    expect(at(read(8, 0.2))[0]?.verdict).toBe("open");
  });
  it("holds at exactly 8 A", () => {
    expect(at(read(8, 0))[0]?.verdict).toBe("holds");
  });
  it("cites the code for its own factor, the policy for another", () => {
    expect(at(read(8.5, 0.2))[0]?.source.id).toBe("nec-lv-rv");
    expect(at(read(8.5, 0.2), { policy: { continuousFactor: 1.1 } })[0]).toMatchObject({
      verdict: "holds",
      source: { id: "record-policy" },
    });
  });
  it("says nothing of loads that are not left on", () => {
    expect(verdictsOf("continuous-load-over-fuse", coach({ ratedA: 10 }, { currentA: 9 }))).toEqual([]);
  });
});

describe("fuse-rating-nonstandard", () => {
  const at = (fuse: object) => verdictsOf("fuse-rating-nonstandard", coach(fuse, {}));
  it("holds for a 7.5 A blade, fails for a 6 A blade, is open for a guessed 6 A", () => {
    expect(at({ ratedA: 7.5, type: "blade" })).toEqual(["c1 holds"]);
    expect(at({ ratedA: 6, type: "blade" })).toEqual(["c1 fails"]);
    expect(at({ ratedA: { value: 6, basis: "assumed" } })).toEqual(["c1 open"]);
  });
  it("judges breakers by NEC 240.6(A), which lists 45 A and not 55 A, and glass fuses not at all", () => {
    expect(at({ ratedA: 45, type: "breaker" })).toEqual(["c1 holds"]);
    expect(at({ ratedA: 55, type: "breaker" })).toEqual(["c1 fails"]);
    expect(at({ ratedA: 6, type: "glass-fast" })).toEqual([]);
  });
});

describe("fuse-type-wrong", () => {
  const at = (type: string) => verdictsOf("fuse-type-wrong", coach({ type }, {}, { fuseType: "blade" }));
  it("fails for a glass fuse where the module takes blades", () => {
    expect(at("glass-fast")).toEqual(["c1 fails"]);
    expect(at("blade")).toEqual(["c1 holds"]);
  });
});
