import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { add, containsSpan, div, hull, intersect, mul, pointSpan, type Span, scale, span, sub, sum } from "./index.js";

const SETTINGS = { seed: 20260502, numRuns: 2000 } as const;

const finite = fc.double({ noNaN: true, noDefaultInfinity: true });
const spans = fc.tuple(finite, finite).map(([a, b]) => span(Math.min(a, b), Math.max(a, b)));
const within = (of: Span, share: number): number =>
  Math.min(of.hi, Math.max(of.lo, of.lo * (1 - share) + of.hi * share));
const share = fc.double({ min: 0, max: 1, noNaN: true });

/** A double is an integer over a power of two: its exact value as [numerator, exponent of two]. */
const exact = (x: number): readonly [bigint, number] => {
  let numerator = x;
  let exponent = 0;
  while (!Number.isInteger(numerator)) {
    numerator *= 2;
    exponent -= 1;
  }
  return [BigInt(numerator), exponent];
};
const align = ([n, e]: readonly [bigint, number], to: number): bigint => n << BigInt(e - to);
const sumOf = (a: number, b: number): readonly [bigint, number] => {
  const [x, y] = [exact(a), exact(b)];
  const to = Math.min(x[1], y[1]);
  return [align(x, to) + align(y, to), to];
};
const productOf = (a: number, b: number): readonly [bigint, number] => {
  const [x, y] = [exact(a), exact(b)];
  return [x[0] * y[0], x[1] + y[1]];
};
const isAtMost = (a: readonly [bigint, number], b: readonly [bigint, number]): boolean => {
  const to = Math.min(a[1], b[1]);
  return align(a, to) <= align(b, to);
};
const holdsExactly = (of: Span, truth: readonly [bigint, number]): boolean =>
  (of.lo === Number.NEGATIVE_INFINITY || isAtMost(exact(of.lo), truth)) &&
  (of.hi === Number.POSITIVE_INFINITY || isAtMost(truth, exact(of.hi)));

describe("interval arithmetic, judged by exact rational arithmetic", () => {
  it("the sum and the difference hold the exact sum and difference of any two values inside", () => {
    fc.assert(
      fc.property(spans, spans, share, share, (a, b, p, q) => {
        const [x, y] = [within(a, p), within(b, q)];
        expect(holdsExactly(add(a, b), sumOf(x, y))).toBe(true);
        expect(holdsExactly(sub(a, b), sumOf(x, -y))).toBe(true);
      }),
      SETTINGS,
    );
  });

  it("the product holds the exact product of any two values inside", () => {
    fc.assert(
      fc.property(spans, spans, share, share, (a, b, p, q) => {
        expect(holdsExactly(mul(a, b), productOf(within(a, p), within(b, q)))).toBe(true);
      }),
      SETTINGS,
    );
  });

  it("the quotient times the divisor holds the dividend exactly, or the division is refused because the divisor may be zero", () => {
    fc.assert(
      fc.property(finite, finite, (a, b) => {
        const quotient = div(pointSpan(a), pointSpan(b));
        if (b === 0) {
          expect(quotient).toMatchObject({ kind: "refused", code: "division-by-zero" });
          return;
        }
        expect(quotient.kind).toBe("known");
        if (quotient.kind !== "known") return;
        const [low, high] = b > 0 ? [quotient.value.lo, quotient.value.hi] : [quotient.value.hi, quotient.value.lo];
        if (Number.isFinite(low)) expect(isAtMost(productOf(low, b), exact(a))).toBe(true);
        if (Number.isFinite(high)) expect(isAtMost(exact(a), productOf(high, b))).toBe(true);
      }),
      SETTINGS,
    );
  });

  it("widening an operand never narrows a result", () => {
    fc.assert(
      fc.property(spans, spans, spans, (a, b, more) => {
        const wide = hull(a, more);
        expect(containsSpan(add(wide, b), add(a, b))).toBe(true);
        expect(containsSpan(sub(wide, b), sub(a, b))).toBe(true);
        expect(containsSpan(mul(wide, b), mul(a, b))).toBe(true);
        const [narrowQuotient, wideQuotient] = [div(b, a), div(b, wide)];
        if (wideQuotient.kind === "known") {
          expect(narrowQuotient.kind).toBe("known");
          if (narrowQuotient.kind === "known")
            expect(containsSpan(wideQuotient.value, narrowQuotient.value)).toBe(true);
        }
      }),
      SETTINGS,
    );
  });

  it("what both of two spans allow lies in each, and their hull holds both", () => {
    fc.assert(
      fc.property(spans, spans, (a, b) => {
        const both = intersect(a, b);
        if (both.kind === "known") {
          expect(containsSpan(a, both.value) && containsSpan(b, both.value)).toBe(true);
        } else expect(a.hi < b.lo || b.hi < a.lo).toBe(true);
        expect(containsSpan(hull(a, b), a) && containsSpan(hull(a, b), b)).toBe(true);
      }),
      SETTINGS,
    );
  });
});

describe("interval arithmetic, by hand", () => {
  it("exact figures stay exact where binary arithmetic is exact, and widen by one step where it is not", () => {
    expect(add(pointSpan(1), pointSpan(2))).toEqual({ lo: 3, hi: 3 });
    expect(scale(pointSpan(15), 1)).toEqual({ lo: 15, hi: 15 });
    const tenths = add(pointSpan(0.1), pointSpan(0.2));
    expect(tenths.lo).toBe(0.3);
    expect(tenths.hi).toBe(0.30000000000000004);
  });

  it("counterexamples kept: a quotient whose check overflows, a product that underflows, still hold the truth", () => {
    const quotient = div(pointSpan(1.7976931049772526e308), pointSpan(-8.840971130803972e226));
    expect(quotient.kind === "known" && quotient.value.lo < quotient.value.hi).toBe(true);
    expect(mul(span(0, 5e-324), span(-3.36e-279, 0)).hi).toBe(0);
    expect(mul(span(0, 5e-324), span(-3.36e-279, 0)).lo).toBeLessThan(0);
  });

  it("a negative factor turns the ends round", () => {
    expect(scale(span(1, 2), -3)).toEqual({ lo: -6, hi: -3 });
    expect(sub(span(1, 2), span(10, 20))).toEqual({ lo: -19, hi: -8 });
    expect(mul(span(-2, 3), span(-5, 7))).toEqual({ lo: -15, hi: 21 });
  });

  it("refuses to divide by a span that holds zero, at either end or inside", () => {
    for (const divisor of [span(-1, 1), span(0, 1), span(-1, 0), span(0, 0)])
      expect(div(span(1, 2), divisor)).toMatchObject({ kind: "refused", code: "division-by-zero" });
    expect(div(span(1, 2), span(4, 8))).toEqual({ kind: "known", value: { lo: 0.125, hi: 0.5 } });
  });

  it("sums nothing to nothing, and refuses what two figures that contradict each other have in common", () => {
    expect(sum([])).toEqual({ lo: 0, hi: 0 });
    expect(intersect(span(1, 2), span(3, 4))).toMatchObject({ kind: "refused", code: "spans-apart" });
  });

  it("a span the wrong way round, or of no number, is a fault of our code", () => {
    expect(() => span(2, 1)).toThrow(/span-inverted/);
    expect(() => span(Number.NaN, 1)).toThrow(/span-inverted/);
  });
});
