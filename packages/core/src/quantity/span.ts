import { type Figure, figureBasis, figureValue } from "./figure.js";
import { Invariant } from "./invariant.js";
import { sumBracket } from "./rounding.js";
import { FIGURE_KINDS, type FigureKind, TOLERANCE, type Tolerance } from "./tolerance.js";

/** The closed interval a figure may lie in, lo <= hi, in the unit of the name that holds it. */
export interface Span {
  readonly lo: number;
  readonly hi: number;
}

/** A span from its two ends. Throws `Invariant` when an end is not a number or they are the wrong way round: that is a fault of our code. */
export const span = (lo: number, hi: number): Span => {
  if (!(lo <= hi)) throw new Invariant("span-inverted", `span from ${lo} to ${hi}`);
  return { lo, hi };
};

/** A figure known exactly. */
export const pointSpan = (value: number): Span => span(value, value);

const NEVER_NEGATIVE: ReadonlySet<FigureKind> = new Set([
  "rating",
  "length",
  "section",
  "resistance",
  "capacity",
  "time",
  "frequency",
  "count",
  "power",
]);

const isKind = (kind: string): kind is FigureKind => (FIGURE_KINDS as readonly string[]).includes(kind);

/** The default tolerance for a figure known this way; the row of kind `any` where the kind is not one of `FIGURE_KINDS`. */
export const toleranceOf = (figure: Figure, kind = "any"): Tolerance =>
  TOLERANCE[isKind(kind) ? kind : "any"][figureBasis(figure)];

/**
 * Between what two values may the truth lie? A stated `plusMinus` wins; else the tolerance table by basis and kind of figure. Never below zero for
 * a quantity that cannot be negative. Unit: the figure's own.
 */
export const spanOf = (figure: Figure, kind = "any"): Span => {
  const value = figureValue(figure);
  const stated = typeof figure === "number" ? undefined : figure.plusMinus;
  const row = toleranceOf(figure, kind);
  const below = stated ?? Math.abs(value) * (value < 0 ? row.aboveRatio : row.belowRatio) + row.plusMinus;
  const above = stated ?? Math.abs(value) * (value < 0 ? row.belowRatio : row.aboveRatio) + row.plusMinus;
  const lo = below === 0 ? value : sumBracket(value, -Math.abs(below)).down;
  const hi = above === 0 ? value : sumBracket(value, Math.abs(above)).up;
  const floor = isKind(kind) && NEVER_NEGATIVE.has(kind) && value >= 0 ? 0 : Number.NEGATIVE_INFINITY;
  return span(Math.max(lo, floor), hi);
};

/** How wide the doubt is, hi less lo. */
export const widthOf = (of: Span): number => sumBracket(of.hi, -of.lo).up;

/** The middle of a span. */
export const midOf = (of: Span): number => of.lo / 2 + of.hi / 2;

/** May the truth be this value? */
export const contains = (of: Span, value: number): boolean => of.lo <= value && value <= of.hi;

/** Does the outer span hold all of the inner one? */
export const containsSpan = (outer: Span, inner: Span): boolean => outer.lo <= inner.lo && inner.hi <= outer.hi;
