import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY } from "../record/index.js";
import { ampacityOf, faultAtFarEnd, withstandOf } from "./index.js";
import { smallCoach } from "./small-coach.js";

const OPTIONS = { seed: 1408, numRuns: 60 } as const;
const section = fc.double({ min: 0.3, max: 20, noNaN: true });
const length = fc.double({ min: 0.3, max: 15, noNaN: true });

const shortOf = (run: object): { currentA: number; lo: number; hi: number } => {
  const found = faultAtFarEnd(smallCoach({ out: run }), "c1");
  if (found.kind !== "known") throw new Error(JSON.stringify(found));
  return { currentA: found.value.currentA, lo: found.value.span.lo, hi: found.value.span.hi };
};

describe("the short at the far end", () => {
  it("more copper never lowers the prospective current, nor either end of its span", () => {
    fc.assert(
      fc.property(section, section, length, (a, b, lengthM) => {
        const thin = shortOf({ sectionMm2: Math.min(a, b), lengthM });
        const thick = shortOf({ sectionMm2: Math.max(a, b), lengthM });
        for (const end of ["currentA", "lo", "hi"] as const)
          expect(thick[end]).toBeGreaterThanOrEqual(thin[end] * (1 - 1e-9));
      }),
      OPTIONS,
    );
  });

  it("a longer run never raises it", () => {
    fc.assert(
      fc.property(section, length, length, (sectionMm2, a, b) => {
        const near = shortOf({ sectionMm2, lengthM: Math.min(a, b) });
        const far = shortOf({ sectionMm2, lengthM: Math.max(a, b) });
        for (const end of ["currentA", "lo", "hi"] as const)
          expect(far[end]).toBeLessThanOrEqual(near[end] * (1 + 1e-9));
      }),
      OPTIONS,
    );
  });

  it("lies in its own span", () => {
    fc.assert(
      fc.property(section, length, (sectionMm2, lengthM) => {
        const { currentA, lo, hi } = shortOf({ sectionMm2, lengthM });
        expect(lo <= currentA && currentA <= hi).toBe(true);
      }),
      OPTIONS,
    );
  });
});

describe("limits of a conductor", () => {
  const gauge = fc.constantFrom("18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG");
  const klass = fc.constantFrom(75, 80, 90, 105, 125);
  const value = (run: object, ambientC: number): number => {
    const found = ampacityOf(run, { ...DEFAULT_POLICY, ambientC }, "");
    return found.kind === "known" ? found.value.ampacityA : 0;
  };
  it("ampacity never rises with the air or with the bundle", () => {
    const air = fc.integer({ min: 20, max: 90 });
    const bundle = fc.integer({ min: 1, max: 45 });
    fc.assert(
      fc.property(gauge, klass, air, air, bundle, bundle, (size, insulationC, a, b, m, n) => {
        const run = (bundleCount: number) => ({ gauge: size, insulationC, bundleCount });
        expect(value(run(m), Math.max(a, b))).toBeLessThanOrEqual(value(run(m), Math.min(a, b)) + 1e-9);
        expect(value(run(Math.max(m, n)), a)).toBeLessThanOrEqual(value(run(Math.min(m, n)), a) + 1e-9);
      }),
      OPTIONS,
    );
  });
  it("what a conductor stands in a short never falls with its section", () => {
    fc.assert(
      fc.property(section, section, klass, (a, b, insulationC) => {
        const stands = (sectionMm2: number) => {
          const found = withstandOf({ sectionMm2, insulationC }, DEFAULT_POLICY);
          return found.kind === "known" ? found.value.limitA2s : Number.NaN;
        };
        expect(stands(Math.max(a, b))).toBeGreaterThanOrEqual(stands(Math.min(a, b)));
      }),
      OPTIONS,
    );
  });
});
