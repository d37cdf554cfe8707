import type { Span } from "../quantity/index.js";
import type { SpanMethod, Spanned } from "./results.js";

/** Far below any reading, above the rounding of a solve. */
const OUTWARD = 1e-10;
const LEAST_SLACK = 1e-12;
/** Narrower than this, relative, is a point. */
const POINT_RATIO = 1e-8;

/** What the corners say of a result: the ends themselves, or somewhere beyond them. */
export interface Cornered {
  readonly span: Span;
  readonly isExact: boolean;
}

const overlap = (a: Span, b: Span): Span => {
  const lo = Math.max(a.lo, b.lo);
  return { lo, hi: Math.max(lo, Math.min(a.hi, b.hi)) };
};

/** A bound that is not below nothing stays so, however it is widened. */
const notBelow = (bound: number, widened: number): number => (bound >= 0 ? Math.max(0, widened) : widened);

/** A result with its span: the exact one where there is one, else what the enclosure and the corners both allow; widened by what a solve may round. */
export function spanned(value: number, enclosure: Span, corners: Cornered | undefined): Spanned {
  const isExact = corners?.isExact === true;
  const span = corners === undefined ? enclosure : isExact ? corners.span : overlap(enclosure, corners.span);
  const method: SpanMethod =
    span.hi - span.lo <= POINT_RATIO * Math.abs(value) ? "point" : isExact ? "exact-corners" : "enclosure";
  const slack = OUTWARD * Math.max(Math.abs(span.lo), Math.abs(span.hi)) + LEAST_SLACK;
  // The nominal figures are among those allowed.
  return {
    nominal: value,
    span: { lo: notBelow(span.lo, Math.min(span.lo, value) - slack), hi: Math.max(span.hi, value) + slack },
    method,
  };
}
