import { compareSpan, type Span } from "../quantity/index.js";
import type { Said } from "./define-rule.js";
import type { Evidence } from "./finding.js";

/** A value with the span it may lie in. */
export interface Got {
  readonly value: number;
  readonly span: Span;
}

/** A limit; its own span where it is not known exactly. */
export interface Limit {
  readonly value: number;
  readonly span?: Span;
  readonly unit: Evidence["unit"];
  readonly sense: "at-most" | "at-least";
}

/**
 * Does the value keep the limit, whatever both may be within their spans? `holds` where it does at the worst of both, `fails` where it does not at
 * the best of both, `open` between. Widening either span can only lead to `open`.
 */
export function against(
  got: Got,
  limit: Limit,
): Pick<Said, "verdict" | "limit"> & { parameters: Record<string, number> } {
  const span = limit.span ?? { lo: limit.value, hi: limit.value };
  const [strict, lenient] = limit.sense === "at-most" ? [span.lo, span.hi] : [span.hi, span.lo];
  const verdict =
    compareSpan(got.span, strict, limit.sense) === "holds"
      ? "holds"
      : compareSpan(got.span, lenient, limit.sense) === "fails"
        ? "fails"
        : "open";
  return {
    verdict,
    limit: { value: limit.value, unit: limit.unit, sense: limit.sense },
    parameters: {
      got: got.value,
      gotLo: got.span.lo,
      gotHi: got.span.hi,
      limit: limit.value,
      limitLo: span.lo,
      limitHi: span.hi,
    },
  };
}
