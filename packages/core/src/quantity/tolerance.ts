import type { Basis } from "./basis.js";
import { COMMON_PRACTICE, type Source } from "./source.js";

/** What sort of figure it is, for the width of its doubt. `rating` is a printed limit or size: a fuse's amperes, a module's limit, an insulation class. */
export const FIGURE_KINDS = [
  "rating",
  "current",
  "power",
  "voltage",
  "length",
  "section",
  "resistance",
  "temperature",
  "capacity",
  "time",
  "ratio",
  "frequency",
  "count",
  "any",
] as const;
export type FigureKind = (typeof FIGURE_KINDS)[number];

/** How far the truth may lie below and above the figure: a share of it, plus a fixed amount in the field's own unit. */
export interface Tolerance {
  readonly belowRatio: number;
  readonly aboveRatio: number;
  readonly plusMinus: number;
  readonly why: string;
}

/** All of it is common practice: no text that was opened gives these widths. A stated `plusMinus` always wins over them. */
export const TOLERANCE_SOURCE: Source = COMMON_PRACTICE;

const even = (ratio: number, plusMinus: number, why: string): Tolerance => ({
  belowRatio: ratio,
  aboveRatio: ratio,
  plusMinus,
  why,
});
const skew = (belowRatio: number, aboveRatio: number, plusMinus: number, why: string): Tolerance => ({
  belowRatio,
  aboveRatio,
  plusMinus,
  why,
});

/** The width of doubt by kind of figure and by how it is known. Fixed amounts are in A, W, V, m, ohm, K or 1. */
export const TOLERANCE: Readonly<Record<FigureKind, Readonly<Record<Basis, Tolerance>>>> = {
  rating: {
    measured: even(0, 0, "a printed size or limit is what it says"),
    marked: even(0, 0, "a printed size or limit is what it says"),
    typical: even(0.3, 0, "the next standard size up or down is about a third away"),
    assumed: even(0.5, 0, "nobody read the print: two standard sizes either way"),
  },
  current: {
    measured: even(0.02, 0.05, "direct-current clamp meter: 2 % and a few counts of 10 mA; the zero drifts"),
    marked: even(0.1, 0, "a plate gives one voltage and one piece; alike parts differ by a tenth"),
    typical: even(0.3, 0, "parts of one class differ by about a third"),
    assumed: even(0.5, 0, "nobody looked: half or half again"),
  },
  power: {
    measured: even(0.03, 1, "from a voltage and a current reading together"),
    marked: even(0.1, 0, "a plate gives one voltage and one piece; alike parts differ by a tenth"),
    typical: even(0.3, 0, "parts of one class differ by about a third"),
    assumed: even(0.5, 0, "nobody looked: half or half again"),
  },
  voltage: {
    measured: even(0.005, 0.01, "hand-held meter on a 20 V or 60 V range: half a percent and a count of 10 mV"),
    marked: even(0.01, 0, "regulated outputs keep within about 1 % of their mark"),
    typical: even(0.03, 0, "published resting and charging voltages differ by about 3 %"),
    assumed: even(0.05, 0, "nobody looked: a system that works is within 5 % or so"),
  },
  length: {
    measured: even(0.02, 0.1, "tape along a loom: slack, bends and both ends"),
    marked: even(0.05, 0.1, "a drawing or tag gives the cut, not the run as laid"),
    typical: even(0.2, 0, "paced or judged from the coach's length"),
    assumed: even(0.4, 0, "nobody looked: a wire goes round things, not across"),
  },
  section: {
    measured: even(0.1, 0, "5 % on a diameter by caliper over strands is 10 % on the area"),
    marked: even(0.02, 0, "1 % on the diameter of a drawn wire is 2 % on its area"),
    typical: skew(0.21, 0.26, 0, "one gauge number either way"),
    assumed: skew(0.37, 0.59, 0, "two gauge numbers either way"),
  },
  resistance: {
    measured: even(
      0.05,
      0.001,
      "drop at a known current, or four wires; a two-wire reading under 1 ohm needs its own plus-or-minus",
    ),
    marked: even(0.1, 0, "a data sheet's figure at another temperature and current"),
    typical: even(0.5, 0, "contacts, connectors and fuses of one kind differ by half"),
    assumed: skew(0.7, 2, 0, "nobody looked: a poor joint is three times a good one"),
  },
  temperature: {
    measured: even(0, 2, "hand-held thermometer or infra-red, 2 K"),
    marked: even(0, 1, "read off a display"),
    typical: even(0, 5, "one season's day to another, 5 K"),
    assumed: even(0, 15, "nobody looked: summer and winter, 15 K"),
  },
  capacity: {
    measured: even(0.05, 0, "discharge test with a counted current"),
    marked: skew(0.3, 0.05, 0, "the mark is for a new battery at rated hours; one in service holds less"),
    typical: skew(0.4, 0.2, 0, "by case size; one in service holds less"),
    assumed: even(0.5, 0, "nobody looked: half or half again"),
  },
  time: {
    measured: even(0.05, 0, "by a clock, start and stop by hand"),
    marked: even(0.1, 0, "stated times are rounded"),
    typical: even(0.5, 0, "the same work in another coach"),
    assumed: even(1, 0, "nobody timed it: nothing to twice"),
  },
  ratio: {
    measured: even(0, 0.02, "worked out from two readings: two points of a hundred"),
    marked: even(0, 0.05, "read off a gauge: five points of a hundred"),
    typical: even(0, 0.1, "ten points of a hundred"),
    assumed: even(0, 0.25, "nobody looked: a quarter either way"),
  },
  frequency: {
    measured: even(0.01, 0, "hand-held counter on a square wave"),
    marked: even(0.05, 0, "a data sheet's clock without a crystal"),
    typical: even(0.3, 0, "parts of one class differ by about a third"),
    assumed: even(0.5, 0, "nobody looked: half or half again"),
  },
  count: {
    measured: even(0, 0, "counted"),
    marked: even(0, 0, "counted"),
    typical: even(0.3, 0, "about so many"),
    assumed: even(0.5, 0, "nobody counted"),
  },
  any: {
    measured: even(0.05, 0, "an instrument whose class is not known"),
    marked: even(0.1, 0, "a printed figure whose conditions are not known"),
    typical: even(0.3, 0, "parts of one class differ by about a third"),
    assumed: even(0.5, 0, "nobody looked: half or half again"),
  },
};
