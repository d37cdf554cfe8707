import type { Evidence, Finding, FindingCode } from "../findings/index.js";
import type { Span } from "../quantity/index.js";
import type { ReadableFigure } from "./reading.js";

/** What one reading would do for one open verdict, with the arithmetic that ranks it. Widths are in the compared quantity's unit. */
export interface ReadingWorth extends ReadableFigure {
  /** Width of the verdict's margin (limit less compared quantity, or the other way) before and, on average over what the figure may turn out to be, after. */
  readonly widthBefore: number;
  readonly widthAfter: number;
  /** `widthBefore - widthAfter`: how much doubt it takes away; below zero where the instrument is coarser than what is known already. */
  readonly shrink: number;
  readonly shrinkPerMin: number;
  /** Share of the values that it may turn out to have which make the verdict hold, and fail, at once. */
  readonly chanceHolds: number;
  readonly chanceFails: number;
  readonly chanceSettles: number;
}

/**
 * How an open verdict may come to be settled. `one-reading`: some single reading may do it; `several`: only several together may; `nothing`: read everything,
 * and it stays open; `unweighed`: the finding asks for a reading that cannot be weighed, because nothing says between what it lies or how finely it is read.
 */
export type Outlook = "one-reading" | "several" | "nothing" | "unweighed";

/** The doubt in an open verdict that compares a quantity with a limit. */
export interface FindingDoubt {
  readonly kind: "compared";
  readonly key: string;
  readonly finding: Finding;
  readonly unit: Evidence["unit"];
  readonly sense: "at-most" | "at-least";
  readonly nominal: number;
  /** Guaranteed to hold the truth, and what the verdict is made from. */
  readonly span: Span;
  readonly limit: { readonly value: number; readonly span: Span };
  /** Share of the sampled coaches in which it fails, 0..1; the samples it was counted over; those without an operating point. */
  readonly failsRatio: number;
  readonly samples: number;
  readonly unsolved: number;
  readonly quantiles: { readonly q05: number; readonly q50: number; readonly q95: number };
  /** The samples as a histogram: from, to, and the share of them. */
  readonly bins: readonly { readonly lo: number; readonly hi: number; readonly ratio: number }[];
  /** Where the samples come from: the network's own sampling, the rule asked again on drawn figures, or even over the exact span (rules that run through time). */
  readonly sampledBy: "network" | "rule" | "span";
  /** Best first, by `shrinkPerMin`. */
  readonly readings: readonly ReadingWorth[];
  /** With every figure that can be read read at its nominal value: the width that is left, and the share of the samples that would then be settled. */
  readonly allRead: { readonly widthAfter: number; readonly chanceSettles: number };
  readonly outlook: Outlook;
}

/** An open finding without a compared quantity: something is not on record, or only a look can tell. */
export interface AskedDoubt {
  readonly kind: "asked";
  readonly key: string;
  readonly finding: Finding;
  /** The finding's own readings, each of which answers it. */
  readonly readings: readonly Pick<ReadableFigure, "path" | "instrument" | "minutes">[];
}

export type Doubt = FindingDoubt | AskedDoubt;

export interface DoubtOptions {
  readonly seed: number;
  /** Drawn coaches for the quantiles; 1,000 where absent. */
  readonly samples?: number;
  /** Ids of circuits, loads, modules, cables, supplies: only findings about them. */
  readonly only?: readonly string[];
  /** Only the findings of these rules; the others are not asked. */
  readonly codes?: readonly FindingCode[];
  /** How many readings of each finding are weighed by asking the rules again; 6 where absent, 2 for a whole coach. */
  readonly weighed?: number;
}

/** One reading over all open verdicts together. */
export interface NextReading extends ReadableFigure {
  /** Sum over the verdicts of the share of its doubt that this reading takes away. */
  readonly shrinkShare: number;
  readonly shrinkSharePerMin: number;
  /** How many verdicts it is expected to settle: the sum of the chances. */
  readonly settles: number;
  readonly verdicts: readonly {
    readonly key: string;
    readonly finding: Finding;
    readonly shrinkShare: number;
    readonly chanceSettles: number;
  }[];
}
