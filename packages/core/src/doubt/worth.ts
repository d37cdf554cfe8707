import type { Finding } from "../findings/index.js";
import type { Span } from "../quantity/index.js";
import { type CoachIndex, indexRecord } from "../record/index.js";
import type { ReadingWorth } from "./doubt.js";
import { withField } from "./field-path.js";
import { comparedOf, marginOf } from "./margin.js";
import { readAs } from "./readable.js";
import type { ReadableFigure } from "./reading.js";

/** How a figure's span is cut to see what a reading would do at each of its values. */
const CUTS = 1;

/** The margin of a finding once a figure is read to be this. */
interface AtValue {
  readonly margin: Span;
  readonly isOpen: boolean;
}

const valuesOf = ({ printed, now }: ReadableFigure): readonly (number | string)[] =>
  printed ?? Array.from({ length: CUTS + 1 }, (_, i) => now.lo + (i / CUTS) * (now.hi - now.lo));

/** Of the way from `a` to `b` along a straight line, which share lies at zero or above? */
function shareNotBelow(a: number, b: number): number {
  if (a >= 0 && b >= 0) return 1;
  if (a < 0 && b < 0) return 0;
  return Math.max(a, b) / Math.abs(a - b);
}

interface Chances {
  readonly widthAfter: number;
  readonly chanceHolds: number;
  readonly chanceFails: number;
}

/** Printed values count alike; between the cut values of a figure the ends of the margin are taken to run straight. */
function chancesOf(figure: ReadableFigure, at: readonly AtValue[]): Chances {
  const width = ({ margin }: AtValue) => margin.hi - margin.lo;
  const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / Math.max(1, values.length);
  if (figure.printed !== undefined || at.length < 2)
    return {
      widthAfter: mean(at.map(width)),
      chanceHolds: mean(at.map((one) => (!one.isOpen && one.margin.lo >= 0 ? 1 : 0))),
      chanceFails: mean(at.map((one) => (!one.isOpen && one.margin.lo < 0 ? 1 : 0))),
    };
  const pieces = at.slice(1).map((to, i) => {
    const from = at[i]!;
    return {
      width: (width(from) + width(to)) / 2,
      holds: shareNotBelow(from.margin.lo, to.margin.lo),
      fails: 1 - shareNotBelow(from.margin.hi, to.margin.hi),
    };
  });
  return {
    widthAfter: mean(pieces.map((piece) => piece.width)),
    chanceHolds: mean(pieces.map((piece) => piece.holds)),
    chanceFails: mean(pieces.map((piece) => piece.fails)),
  };
}

/**
 * What would reading this figure do for each of these open findings? The reading is entered in a copy of the record, as it would be entered for good, at the
 * low end and the high end of what the figure may be (or at each printed size), and the rules are asked again: the widths and verdicts are
 * those that `checkRecord` would give.
 */
export function worthOf(
  index: CoachIndex,
  figure: ReadableFigure,
  open: ReadonlyMap<string, Finding>,
  ask: (index: CoachIndex) => ReadonlyMap<string, Finding>,
): Map<string, ReadingWorth> {
  const told = valuesOf(figure).map((value) => {
    const record = withField(index.record, figure.path, readAs(figure.instrument, value));
    return ask(indexRecord(record));
  });
  const worth = new Map<string, ReadingWorth>();
  for (const [key, finding] of open) {
    const before = comparedOf(finding);
    if (before === undefined) continue;
    const { lo, hi } = marginOf(before);
    const widthBefore = hi - lo;
    const at = told.map((findings): AtValue => {
      const after = findings.get(key);
      const compared = after === undefined ? undefined : comparedOf(after);
      if (compared !== undefined) return { margin: marginOf(compared), isOpen: after?.verdict === "open" };
      // The rule has nothing more to say of it: settled. Open without a comparison: nothing gained.
      return after?.verdict === "open"
        ? { margin: { lo, hi }, isOpen: true }
        : { margin: { lo: 0, hi: 0 }, isOpen: false };
    });
    const chances = chancesOf(figure, at);
    const shrink = widthBefore - chances.widthAfter;
    worth.set(key, {
      ...figure,
      widthBefore,
      ...chances,
      shrink,
      shrinkPerMin: shrink / Math.max(1, figure.minutes),
      chanceSettles: Math.min(1, chances.chanceHolds + chances.chanceFails),
    });
  }
  return worth;
}
