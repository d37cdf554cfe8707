import { known, type Outcome, refused } from "./outcome.js";
import { type Bracket, productBracket, quotientBracket, sumBracket } from "./rounding.js";
import { pointSpan, type Span, span } from "./span.js";

/*
 * Interval arithmetic that is honest about direction: lo may only move down and hi only up, so the result always holds the truth. It is wider
 * than the truth where one figure appears twice (x - x is not 0): solve corners instead where that matters.
 */

export const add = (a: Span, b: Span): Span => span(sumBracket(a.lo, b.lo).down, sumBracket(a.hi, b.hi).up);

export const sub = (a: Span, b: Span): Span => span(sumBracket(a.lo, -b.hi).down, sumBracket(a.hi, -b.lo).up);

const outer = (corners: readonly Bracket[]): Span =>
  span(Math.min(...corners.map((corner) => corner.down)), Math.max(...corners.map((corner) => corner.up)));

export const mul = (a: Span, b: Span): Span =>
  outer([
    productBracket(a.lo, b.lo),
    productBracket(a.lo, b.hi),
    productBracket(a.hi, b.lo),
    productBracket(a.hi, b.hi),
  ]);

/** a over b. Refused where b may be zero: the answer has no bound, and no number is made up for it. */
export const div = (a: Span, b: Span): Outcome<Span> => {
  if (b.lo <= 0 && b.hi >= 0)
    return refused("division-by-zero", `the divisor may be zero: it lies between ${b.lo} and ${b.hi}`);
  return known(
    outer([
      quotientBracket(a.lo, b.lo),
      quotientBracket(a.lo, b.hi),
      quotientBracket(a.hi, b.lo),
      quotientBracket(a.hi, b.hi),
    ]),
  );
};

/** A span times a number known exactly. */
export const scale = (a: Span, factor: number): Span => mul(a, pointSpan(factor));

/** The sum of any number of spans; none is exactly 0. */
export const sum = (spans: readonly Span[]): Span => spans.reduce(add, pointSpan(0));

/** The least span that holds all of these. At least one. */
export const hull = (first: Span, ...others: readonly Span[]): Span =>
  others.reduce((a, b) => span(Math.min(a.lo, b.lo), Math.max(a.hi, b.hi)), first);

/** What both allow. Refused where they contradict each other: one of the two figures is wrong. */
export const intersect = (a: Span, b: Span): Outcome<Span> => {
  const lo = Math.max(a.lo, b.lo);
  const hi = Math.min(a.hi, b.hi);
  return lo <= hi
    ? known(span(lo, hi))
    : refused("spans-apart", `${a.lo} to ${a.hi} and ${b.lo} to ${b.hi} have no value in common`);
};
