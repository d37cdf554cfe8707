import type { Span } from "./span.js";

/** `holds` over the whole span, `fails` over the whole span, or `open`: it depends on where in the span the truth lies. */
export type Comparison = "holds" | "fails" | "open";

/** One part in a thousand million: binary rounding of a figure that meets its limit exactly, and far below any instrument. */
const SLACK_RATIO = 1e-9;

/** Does a figure known to lie in this span keep its limit? Meeting the limit exactly keeps it. Span and limit in one unit. */
export const compareSpan = (span: Span, limit: number, sense: "at-most" | "at-least"): Comparison => {
  const slack = Math.abs(limit) * SLACK_RATIO;
  if (sense === "at-most") {
    if (span.hi <= limit + slack) return "holds";
    return span.lo > limit + slack ? "fails" : "open";
  }
  if (span.lo >= limit - slack) return "holds";
  return span.hi < limit - slack ? "fails" : "open";
};
