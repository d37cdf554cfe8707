import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { linearAxis, logAxis, roundOut } from "./axis.js";

describe("a linear axis", () => {
  it("has even ticks that read differently, covers what it was asked and begins and ends on a tick", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.integer({ min: 3, max: 12 }),
        (lo, reach, atMost) => {
          const axis = linearAxis(lo, lo + reach, atMost);
          const values = axis.ticks.map((tick) => tick.value);
          const steps = values.slice(1).map((value, i) => value - values[i]!);
          for (const step of steps) expect(step).toBeCloseTo(steps[0]!, 6);
          expect(new Set(axis.ticks.map((tick) => tick.text)).size).toBe(values.length);
          for (const tick of axis.ticks) expect(Number(tick.text)).toBeCloseTo(tick.value, 9);
          expect(axis.lo).toBeLessThanOrEqual(lo + 1e-6 * Math.max(1, Math.abs(lo)));
          expect(axis.hi).toBeGreaterThanOrEqual(lo + reach - 1e-6 * Math.max(1, Math.abs(lo + reach)));
          expect(axis.ratioOf(axis.lo)).toBe(0);
          expect(axis.ratioOf(axis.hi)).toBe(1);
        },
      ),
      { seed: 7 },
    );
  });

  it("takes the steps of a clock where it is given them", () => {
    const axis = linearAxis(0, 17, 7, { steps: [1, 2, 3, 6, 12], isOpenAbove: true });
    expect(axis.ticks.map((tick) => tick.text)).toEqual(["0", "3", "6", "9", "12", "15"]);
    expect(axis.hi).toBe(17);
  });
});

describe("a logarithmic axis", () => {
  it("gives every decade the same length and every line its own place", () => {
    const axis = logAxis(1, 1000);
    expect(axis.ratioOf(1)).toBe(0);
    expect(axis.ratioOf(10)).toBeCloseTo(1 / 3, 12);
    expect(axis.ratioOf(100)).toBeCloseTo(2 / 3, 12);
    expect(axis.ratioOf(1000)).toBeCloseTo(1, 12);
    // log10 2 = 0.30103 (any table of logarithms).
    expect(axis.ratioOf(2)).toBeCloseTo(0.30103 / 3, 5);
  });

  it("labels whole decades always, 2 and 5 only where there is room, and keeps the fine lines", () => {
    const long = logAxis(0.001, 1000);
    expect(long.ticks.filter((tick) => tick.text).map((tick) => tick.text)).toEqual([
      "0.001",
      "0.01",
      "0.1",
      "1",
      "10",
      "100",
      "1000",
    ]);
    expect(long.ticks).toHaveLength(6 * 9 + 1);
    expect(
      logAxis(10, 100)
        .ticks.filter((tick) => tick.text)
        .map((tick) => tick.text),
    ).toEqual(["10", "20", "50", "100"]);
  });

  it("ends at 1, 2 or 5 times a power of ten outside the values", () => {
    expect([0.9, 1, 1.1, 37, 99].map((value) => roundOut(value, "down"))).toEqual([0.5, 1, 1, 20, 50]);
    expect([0.9, 1, 1.1, 37, 99].map((value) => roundOut(value, "up"))).toEqual([1, 1, 2, 50, 100]);
  });
});
