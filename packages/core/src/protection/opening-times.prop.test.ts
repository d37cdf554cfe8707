import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FuseType } from "../record/index.js";
import { type FuseGates, fuseGatesOf, leastOpeningA, openingTimes, sureOpeningA } from "./index.js";

const OPTIONS = { seed: 1407, numRuns: 300 } as const;
const FAMILIES: readonly FuseType[] = ["blade", "glass-fast", "glass-slow"];

const fuseOf = (type: FuseType, ratedA: number): FuseGates => {
  const found = fuseGatesOf({ type, ratedA }, "fuse");
  if (found.kind !== "known") throw new Error(`no gates for ${type}`);
  return found.value;
};
const family = fc.constantFrom(...FAMILIES);
const rating = fc.constantFrom(1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40);
const current = fc.double({ min: 0.5, max: 3000, noNaN: true });

describe("opening times", () => {
  it("neither time rises with the current, and the soonest never comes after the latest", () => {
    fc.assert(
      fc.property(family, rating, current, current, (type, ratedA, a, b) => {
        const fuse = fuseOf(type, ratedA);
        const [less, more] = [openingTimes(fuse, Math.min(a, b)), openingTimes(fuse, Math.max(a, b))];
        expect(more.soonestS).toBeLessThanOrEqual(less.soonestS * (1 + 1e-12));
        expect(more.latestS === less.latestS || more.latestS <= less.latestS * (1 + 1e-12)).toBe(true);
        expect(less.soonestS).toBeLessThanOrEqual(less.latestS);
      }),
      OPTIONS,
    );
  });

  it("a bigger fuse of the same family never opens sooner, at the soonest or at the latest", () => {
    fc.assert(
      fc.property(family, rating, rating, current, (type, a, b, currentA) => {
        const small = openingTimes(fuseOf(type, Math.min(a, b)), currentA);
        const big = openingTimes(fuseOf(type, Math.max(a, b)), currentA);
        expect(big.soonestS).toBeGreaterThanOrEqual(small.soonestS * (1 - 1e-12));
        expect(big.latestS === small.latestS || big.latestS >= small.latestS * (1 - 1e-12)).toBe(true);
      }),
      OPTIONS,
    );
  });

  it("what the slowest fuse lets through (I2t) never rises with the current once it must open", () => {
    fc.assert(
      fc.property(rating, current, current, (ratedA, a, b) => {
        const fuse = fuseOf("blade", ratedA);
        const joules = (currentA: number) => currentA ** 2 * openingTimes(fuse, currentA).latestS;
        expect(joules(Math.max(a, b))).toBeLessThanOrEqual(joules(Math.min(a, b)) * (1 + 1e-9));
      }),
      OPTIONS,
    );
  });

  it("the least current that may open it in a time and the time at that current are one curve read both ways", () => {
    fc.assert(
      fc.property(rating, fc.double({ min: 1e-3, max: 500, noNaN: true }), (ratedA, timeS) => {
        const fuse = fuseOf("blade", ratedA);
        expect(openingTimes(fuse, leastOpeningA(fuse, timeS) * 1.0001).soonestS).toBeLessThanOrEqual(timeS);
        expect(openingTimes(fuse, sureOpeningA(fuse, timeS) * 1.0001).latestS).toBeLessThanOrEqual(timeS);
        expect(openingTimes(fuse, leastOpeningA(fuse, timeS) * 0.9999).soonestS).toBeGreaterThanOrEqual(timeS);
        expect(openingTimes(fuse, sureOpeningA(fuse, timeS) * 0.9999).latestS).toBeGreaterThanOrEqual(timeS);
      }),
      OPTIONS,
    );
  });
});
