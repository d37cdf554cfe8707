import { describe, expect, it } from "vitest";
import type { Fuse } from "../record/index.js";
import { type FuseGates, fuseGatesOf, openingTimes, protectionOf, selectivityOf, sureOpeningA } from "./index.js";
import { smallCoach } from "./small-coach.js";

const gatesOf = (fuse: Fuse): FuseGates => {
  const found = fuseGatesOf(fuse, "circuits[0].fuse");
  expect(found.kind).toBe("known");
  return (found as { value: FuseGates }).value;
};

describe("gates of a fuse", () => {
  it("families that no table holds are missing, with the field for the sheet's own gates; nothing is made up", () => {
    for (const type of ["bolt-down", "cartridge", "breaker", "fusible-link", "blade-slow"] as const)
      expect(fuseGatesOf({ ratedA: 10, type }, "circuits[0].fuse")).toEqual({
        kind: "missing",
        needs: ["circuits[0].fuse.gates"],
      });
  });

  it("no rating and no type are missing by their fields; a module's own type stands in; a rating of nothing is refused", () => {
    expect(fuseGatesOf({ type: "blade" }, "f")).toEqual({ kind: "missing", needs: ["f.ratedA"] });
    expect(fuseGatesOf(undefined, "f")).toEqual({ kind: "missing", needs: ["f.ratedA"] });
    expect(fuseGatesOf({ ratedA: 10 }, "f")).toEqual({ kind: "missing", needs: ["f.type"] });
    expect(fuseGatesOf({ ratedA: 10 }, "f", "blade").kind).toBe("known");
    expect(fuseGatesOf({ ratedA: 0, type: "blade" }, "f")).toMatchObject({
      kind: "refused",
      code: "rating-not-positive",
    });
  });

  it("gates read off the fuse's own sheet win, and turned-round ones are refused by name", () => {
    const own = gatesOf({ ratedA: 100, type: "bolt-down", gates: [{ ratio: 2, minS: 1, maxS: 20 }] });
    expect(openingTimes(own, 200)).toMatchObject({ soonestS: 1, latestS: 20 });
    expect(own.sets[0]?.source.how).toBe("seen");
    const faulty: Fuse = { ratedA: 100, gates: [{ ratio: 2, minS: 20, maxS: 1 }] };
    expect(fuseGatesOf(faulty, "f")).toMatchObject({ kind: "refused", code: "gate-faulty" });
  });

  it("blade gates say that they are from memory", () => {
    expect(gatesOf({ ratedA: 10, type: "blade" }).sets.map((set) => set.source.how)).toEqual(["memory"]);
  });

  it("a quick glass fuse may be of either standard: the latest of both, and no soonest where one has no gate", () => {
    const fuse = gatesOf({ ratedA: 10, type: "glass-fast" });
    expect(fuse.sets).toHaveLength(2);
    // IEC F: 30 min at 210 %; UL 248-14: at most 2 min at 200 %. UL says nothing of how soon above 110 %.
    expect(openingTimes(fuse, 21)).toMatchObject({ latestS: 1800, soonestS: 0 });
  });

  it("below its first longest time a fuse need not open at all", () => {
    const fuse = gatesOf({ ratedA: 10, type: "blade" });
    expect(openingTimes(fuse, 13).latestS).toBe(Number.POSITIVE_INFINITY);
    expect(sureOpeningA(fuse, 5)).toBeCloseTo(20, 9);
  });

  it("a guessed rating opens as soon as the smallest and as late as the largest it may be", () => {
    const guessed = gatesOf({ ratedA: { value: 10, basis: "assumed" }, type: "blade" });
    expect(openingTimes(guessed, 20).soonestS).toBe(openingTimes(gatesOf({ ratedA: 5, type: "blade" }), 20).soonestS);
    expect(openingTimes(guessed, 20).latestS).toBe(openingTimes(gatesOf({ ratedA: 15, type: "blade" }), 20).latestS);
  });
});

describe("selectivity", () => {
  const blade = (ratedA: number) => gatesOf({ ratedA, type: "blade" });
  it("in a hard short blade ratings six times apart are selective, twice apart their gates overlap", () => {
    // Held I2t: 36 x 0.1 = 3.6 of the lower rating squared against 12.25 x 0.04 = 0.49 of the upper: ratings 2.71 apart pass in a hard short.
    const hard = { lo: 2000, hi: 2000 };
    const found = selectivityOf(blade(5), blade(30), hard);
    expect(found.verdict).toBe("holds");
    expect(selectivityOf(blade(10), blade(20), hard).verdict).toBe("open");
  });
  it("a smaller fuse before a larger one is sure to open first", () => {
    expect(selectivityOf(blade(30), blade(3), { lo: 200, hi: 400 }).verdict).toBe("fails");
  });
  it("gates of the sheet tell what no table holds", () => {
    const main = gatesOf({ ratedA: 100, type: "bolt-down", gates: [{ ratio: 6, minS: 0.05, maxS: 2 }] });
    const found = selectivityOf(blade(10), main, { lo: 100, hi: 200 });
    expect(found.verdict).toBe("open");
    expect(found.worstAtA).toBeCloseTo(13.5, 6);
  });
});

it("a rating next to nothing is told without a throw: the fuse's cold resistance stays a number", () => {
  const index = smallCoach({ fuse: { ratedA: 5e-324, resistanceOhm: undefined } });
  const told = protectionOf(index, "c1");
  expect(told).toMatchObject({ kind: "known", value: { fault: { kind: "known" } } });
});
