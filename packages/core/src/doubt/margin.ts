import type { Evidence, Finding } from "../findings/index.js";
import type { Span } from "../quantity/index.js";

/** What a finding compares: a quantity with its span, a limit with its own, and which side is safe. */
export interface Compared {
  readonly unit: Evidence["unit"];
  readonly sense: "at-most" | "at-least";
  readonly nominal: number;
  readonly span: Span;
  readonly limit: { readonly value: number; readonly span: Span };
}

/** What this finding compares; undefined for one that compares nothing. */
export function comparedOf({ parameters, limit }: Finding): Compared | undefined {
  const { got, gotLo, gotHi, limitLo, limitHi } = parameters;
  if (limit === undefined) return undefined;
  for (const each of [got, gotLo, gotHi, limitLo, limitHi]) if (typeof each !== "number") return undefined;
  return {
    unit: limit.unit,
    sense: limit.sense,
    nominal: got as number,
    span: { lo: gotLo as number, hi: gotHi as number },
    limit: { value: limit.value, span: { lo: limitLo as number, hi: limitHi as number } },
  };
}

/** How far the quantity keeps its limit, at the worst and at the best of both spans: below zero it is passed. Unit: the quantity's own. */
export const marginOf = ({ sense, span, limit }: Pick<Compared, "sense" | "span" | "limit">): Span =>
  sense === "at-most"
    ? { lo: limit.span.lo - span.hi, hi: limit.span.hi - span.lo }
    : { lo: span.lo - limit.span.hi, hi: span.hi - limit.span.lo };

/** The margin of one value against one limit. */
export const marginAt = (sense: Compared["sense"], value: number, limit: number): number =>
  sense === "at-most" ? limit - value : value - limit;
