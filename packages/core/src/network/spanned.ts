import type { Span } from "../quantity/index.js";
import type { SpanMethod, Spanned } from "./results.js";

/** Far below any reading, above the rounding of a solve. */
const OUTWARD = 1e-10;
const LEAST_SLACK = 1e-12;
/** Narrower than this, relative, is a point. */
const POINT_RATIO = 1e-8;

/** A result with its span: the exact one where there is one, else the enclosure; widened by what a solve may round. */
export function spanned(value: number, enclosure: Span, exact: Span | undefined): Spanned {
  const span = exact ?? enclosure;
  const method: SpanMethod =
    span.hi - span.lo <= POINT_RATIO * Math.abs(value) ? "point" : exact ? "exact-corners" : "enclosure";
  const slack = OUTWARD * Math.max(Math.abs(span.lo), Math.abs(span.hi)) + LEAST_SLACK;
  // The nominal figures are among those allowed.
  return {
    nominal: value,
    span: { lo: Math.min(span.lo, value) - slack, hi: Math.max(span.hi, value) + slack },
    method,
  };
}
