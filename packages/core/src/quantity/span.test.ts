import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareSpan, contains, FIGURE_KINDS, kindOfField, span, spanOf, TOLERANCE, widthOf } from "./index.js";

const SETTINGS = { seed: 20260502, numRuns: 2000 } as const;

describe("the span of a figure", () => {
  it("a bare number was read off a label: its basis is marked", () => {
    expect(spanOf(10, "current")).toEqual(spanOf({ value: 10, basis: "marked" }, "current"));
    expect(spanOf(10, "current").lo).toBeCloseTo(9, 12);
    expect(spanOf(10, "current").hi).toBeCloseTo(11, 12);
  });

  it("a marked fuse is exactly what it says", () => {
    expect(spanOf(15, "rating")).toEqual({ lo: 15, hi: 15 });
  });

  it("a stated plus-or-minus wins over the table, a wide one as much as a narrow one", () => {
    expect(spanOf({ value: 3, basis: "assumed", plusMinus: 0 }, "current")).toEqual({ lo: 3, hi: 3 });
    expect(spanOf({ value: 15, basis: "marked", plusMinus: 5 }, "rating")).toEqual({ lo: 10, hi: 20 });
  });

  it("a clamp meter's zero counts: 0.1 A measured lies between 0.048 A and 0.152 A", () => {
    const read = spanOf({ value: 0.1, basis: "measured" }, "current");
    expect(read.lo).toBeCloseTo(0.048, 12);
    expect(read.hi).toBeCloseTo(0.152, 12);
  });

  it("a resistance, a length and a section are never below zero", () => {
    expect(spanOf({ value: 0.01, basis: "measured", plusMinus: 0.05 }, "resistance").lo).toBe(0);
    expect(spanOf({ value: 0.05, basis: "measured" }, "length").lo).toBe(0);
    expect(spanOf({ value: 0.01, basis: "measured", plusMinus: 0.05 }, "voltage").lo).toBeLessThan(0);
  });

  it("an aged battery holds less than its mark: the span reaches further down than up", () => {
    const bank = spanOf(440, "capacity");
    expect(440 - bank.lo).toBeGreaterThan(bank.hi - 440);
    expect(bank.lo).toBeCloseTo(308, 9);
  });

  it("a kind that nobody named gets the widths of `any`", () => {
    expect(spanOf(10, "wavelength")).toEqual(spanOf(10));
  });

  it("holds its own figure, and a larger plus-or-minus holds the smaller one's span", () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }),
        fc.constantFrom(...FIGURE_KINDS),
        fc.constantFrom("measured", "marked", "typical", "assumed"),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        (value, kind, basis, plusMinus) => {
          const own = spanOf({ value, basis }, kind);
          expect(contains(own, value)).toBe(true);
          const narrow = spanOf({ value, basis, plusMinus }, kind);
          const wide = spanOf({ value, basis, plusMinus: plusMinus * 2 }, kind);
          expect(wide.lo <= narrow.lo && narrow.hi <= wide.hi).toBe(true);
        },
      ),
      SETTINGS,
    );
  });
});

describe("the tolerance table", () => {
  it("says why in every row", () => {
    for (const kind of FIGURE_KINDS)
      for (const row of Object.values(TOLERANCE[kind])) expect(row.why.length).toBeGreaterThan(5);
  });

  it("a figure that nobody looked at is never surer than a class figure", () => {
    for (const kind of FIGURE_KINDS)
      for (const value of [0.01, 1, 100]) {
        const typical = spanOf({ value, basis: "typical" }, kind);
        const assumed = spanOf({ value, basis: "assumed" }, kind);
        expect(assumed.lo <= typical.lo && typical.hi <= assumed.hi).toBe(true);
      }
  });
});

describe("the kind of a field, from its name", () => {
  it.each([
    ["lengthM", "length"],
    ["distanceFromSourceM", "length"],
    ["sectionMm2", "section"],
    ["currentA", "current"],
    ["stallA", "current"],
    ["quiescentA", "current"],
    ["ratedA", "rating"],
    ["maxFuseA", "rating"],
    ["ratedV", "rating"],
    ["minV", "rating"],
    ["insulationC", "rating"],
    ["openCircuitV", "voltage"],
    ["powerW", "power"],
    ["internalResistanceOhm", "resistance"],
    ["betweenWiresOhm", "resistance"],
    ["capacityAh", "capacity"],
    ["accessMin", "time"],
    ["pwmHz", "frequency"],
    ["chargeRatio", "ratio"],
    ["bundleCount", "count"],
    ["circuits[3].fuse.ratedA", "rating"],
    ["labelPitchMm", "any"],
    ["name", "any"],
  ])("%s holds a %s", (field, kind) => {
    expect(kindOfField(field)).toBe(kind);
  });
});

describe("a span against its limit", () => {
  it("holds over the whole span, fails over the whole span, else it is open", () => {
    expect(compareSpan(span(1, 2), 3, "at-most")).toBe("holds");
    expect(compareSpan(span(4, 5), 3, "at-most")).toBe("fails");
    expect(compareSpan(span(2, 4), 3, "at-most")).toBe("open");
    expect(compareSpan(span(4, 5), 3, "at-least")).toBe("holds");
    expect(compareSpan(span(1, 2), 3, "at-least")).toBe("fails");
    expect(compareSpan(span(2, 4), 3, "at-least")).toBe("open");
  });

  it("a limit met exactly is kept, and rounding of the last binary digit does not undo that", () => {
    expect(compareSpan(span(15, 15), 15, "at-most")).toBe("holds");
    expect(compareSpan(span(0.1 + 0.2, 0.1 + 0.2), 0.3, "at-most")).toBe("holds");
    expect(compareSpan(span(15.001, 15.001), 15, "at-most")).toBe("fails");
  });

  it("wider doubt never turns open into holds or fails", () => {
    const number = fc.double({ noNaN: true, min: -1e6, max: 1e6 });
    fc.assert(
      fc.property(number, number, number, number, number, fc.constantFrom("at-most", "at-least"), (...drawn) => {
        const [a, b, c, d, limit, sense] = drawn;
        const narrow = span(Math.min(a, b), Math.max(a, b));
        const wide = span(Math.min(narrow.lo, c, d), Math.max(narrow.hi, c, d));
        const before = compareSpan(narrow, limit, sense);
        const after = compareSpan(wide, limit, sense);
        expect(after === before || after === "open").toBe(true);
      }),
      SETTINGS,
    );
  });

  it("the width of a span is its two ends apart", () => {
    expect(widthOf(span(2, 5))).toBe(3);
  });
});
