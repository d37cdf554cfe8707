import { fieldWords } from "@fusebook/core/findings";
import { type Outcome, type Span, showQuantity } from "@fusebook/core/quantity";
import type { Units } from "./records.js";

/** A share as people read it: 3 %, 0.61 %. */
export const percent = (ratio: number): string => {
  const value = ratio * 100;
  return `${value < 1 ? value.toFixed(2) : value < 10 ? value.toFixed(1).replace(/\.0$/, "") : value.toFixed(0)} %`;
};
/** A span of shares. */
export const percents = ({ lo, hi }: Span): string =>
  percent(lo) === percent(hi) ? percent(lo) : `${percent(lo)} to ${percent(hi)}`;
export const amps = (value: number, units: Units): string => showQuantity(value, "current", units);
/** A span of currents. */
export const ampsOf = (span: Span, units: Units): string => `${amps(span.lo, units)} to ${amps(span.hi, units)}`;

/** Why an answer is not there: what is wanted, in the trade's words. */
export const lacking = (outcome: Exclude<Outcome<unknown>, { kind: "known" }>): string =>
  outcome.kind === "missing"
    ? `not known: wants ${[...new Set(outcome.needs.map(fieldWords))].join("; ")}`
    : outcome.because;
