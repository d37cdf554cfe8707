import type { FittedLabel, LabelLine } from "../document/blocks.js";
import type { Measure } from "../drawings/measure.js";
import { MIN_CONDENSED, wrapText } from "../drawings/svg.js";

const MM_PER_PT = 25.4 / 72;
/** Clear of the cut on every side. */
const PADDING_MM = 0.7;
/** Type sizes tried, largest first. Below the last, print does not hold (common practice, no source). */
const MAX_PT = 13;
const MIN_PT = 5;
const STEP_PT = 0.5;
/** Room over the measured width, for rounding in the setter. */
const SLACK = 1.02;
/** Line height over type size. */
const LEADING = 1.16;

export interface LabelFit {
  readonly label: FittedLabel;
  /** False where nothing fits: then the head stands alone. */
  readonly isWhole: boolean;
}

type LabelText = { readonly head: string; readonly text: string };
type Size = { readonly widthMm: number; readonly heightMm: number };

const sizesFrom = (maxPt: number): number[] => {
  const count = Math.floor((Math.min(MAX_PT, maxPt) - MIN_PT) / STEP_PT + 1e-9) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => Math.min(MAX_PT, maxPt) - i * STEP_PT);
};

const linesIn = (
  label: LabelText,
  sizePt: number,
  size: Size,
  turned: boolean,
  measure: Measure,
): LabelLine[] | undefined => {
  const across = size.widthMm - 2 * PADDING_MM;
  const up = size.heightMm - 2 * PADDING_MM;
  return turned ? linesAt(label, sizePt, up, across, measure) : linesAt(label, sizePt, across, up, measure);
};

/** The largest type size in points at which head and text stand whole, 0 where none does. */
export const largestPt = (label: LabelText, size: Size, turned: boolean, measure: Measure): number =>
  sizesFrom(MAX_PT).find((sizePt) => linesIn(label, sizePt, size, turned, measure) !== undefined) ?? 0;

/**
 * Head and text in a label, upright or turned along its height, at the largest lettering up to `maxPt`: each size is tried as it is, condensed, then
 * wrapped, then with the text running on in the head's line.
 */
export function fitLabel(
  label: LabelText,
  size: Size,
  how: { readonly turned: boolean; readonly maxPt: number },
  measure: Measure,
): LabelFit {
  for (const sizePt of sizesFrom(how.maxPt === 0 ? MAX_PT : how.maxPt)) {
    const lines = linesIn(label, sizePt, size, how.turned, measure);
    if (lines !== undefined) return { label: { lines, turned: how.turned }, isWhole: true };
  }
  const alone = headAlone(label.head, size.widthMm - 2 * PADDING_MM, size.heightMm - 2 * PADDING_MM, measure);
  return { label: alone, isWhole: false };
}

function linesAt(
  label: { head: string; text: string },
  sizePt: number,
  widthMm: number,
  heightMm: number,
  measure: Measure,
): LabelLine[] | undefined {
  const sizeMm = sizePt * MM_PER_PT;
  const lineMm = sizeMm * LEADING;
  const widthEm = widthMm / sizeMm;
  const room = Math.floor(heightMm / lineMm + 1e-9) - 1;
  if (room < 0 || (room === 0 && label.text !== "")) return undefined;
  const head = lineOf(label.head, true, widthEm, sizePt, lineMm, measure);
  if (head === undefined) return undefined;
  if (label.text === "") return [head];
  const whole = lineOf(label.text, false, widthEm, sizePt, lineMm, measure);
  if (whole !== undefined) return [head, whole];
  const wrapped = wrapOrCondense(label.text, widthEm, room, measure);
  if (wrapped !== undefined)
    return [head, ...wrapped.map((part) => lineOf(part, false, widthEm, sizePt, lineMm, measure)!)];
  // Last resort of a size: the text runs on in the head's own line.
  const runIn = wrapOrCondense(`${label.head} ${label.text}`, widthEm, room + 1, measure);
  return runIn?.map((part) => lineOf(part, false, widthEm, sizePt, lineMm, measure)!);
}

/** Wrapped as it is, else wrapped and condensed. */
const wrapOrCondense = (text: string, widthEm: number, maxLines: number, measure: Measure): string[] | undefined =>
  wrapText(text, widthEm / SLACK, maxLines, false, measure) ??
  wrapText(text, widthEm / SLACK / MIN_CONDENSED, maxLines, false, measure);

/** One line, as it is or condensed; undefined where it would have to be narrower than still reads well. */
function lineOf(
  text: string,
  strong: boolean,
  widthEm: number,
  sizePt: number,
  heightMm: number,
  measure: Measure,
): LabelLine | undefined {
  const naturalEm = measure(text, strong) * SLACK;
  const ratio = Math.min(1, widthEm / Math.max(naturalEm, 1e-6));
  if (ratio < MIN_CONDENSED - 1e-9) return undefined;
  return { text, sizePt, heightMm, naturalMm: naturalEm * sizePt * MM_PER_PT, ratio, strong };
}

/** The head at whatever condensing it takes: it is the number by which the report names the label. */
function headAlone(head: string, widthMm: number, heightMm: number, measure: Measure): FittedLabel {
  const turned = heightMm > widthMm;
  const sizePt = Math.min(MIN_PT, Math.min(widthMm, heightMm) / LEADING / MM_PER_PT);
  const along = turned ? heightMm : widthMm;
  const naturalMm = measure(head, true) * SLACK * sizePt * MM_PER_PT;
  const ratio = Math.min(1, along / Math.max(naturalMm, 1e-6));
  return {
    lines: [{ text: head, sizePt, heightMm: sizePt * MM_PER_PT * LEADING, naturalMm, ratio, strong: true }],
    turned,
  };
}
