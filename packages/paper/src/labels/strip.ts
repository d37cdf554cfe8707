import type { FittedLabel, StripBlock } from "../document/blocks.js";
import type { Measure } from "../drawings/measure.js";
import { fitLabel, type LabelFit, largestPt } from "./fit-label.js";

/** A row of labels as the module kind's sheet gives it: one label every `pitchMm`. */
export interface LabelStrip {
  /** "Module A, Saloon locker". */
  readonly title: string;
  readonly pitchMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly labels: readonly { readonly head: string; readonly text: string }[];
}

/** A label whose text is not on it, and what to do about it. */
export interface LabelReport {
  readonly strip: string;
  readonly head: string;
  readonly text: string;
}

/** Room for the cut marks on each side of a strip. */
const MARKS_MM = 4;

/**
 * Lays out a strip at true size. A strip longer than the page is cut into pieces of whole labels. A text that fits neither condensed nor wrapped
 * is reported, and its label shows the head alone; nothing is cut off.
 */
export function layStrip(
  strip: LabelStrip,
  bodyWidthMm: number,
  measure: Measure,
): { blocks: StripBlock[]; reports: LabelReport[] } {
  const reports: LabelReport[] = [];
  const size = { widthMm: strip.widthMm, heightMm: strip.heightMm };
  const fitted: FittedLabel[] = fitAlike(strip.labels, size, measure).map((fit, i) => {
    const label = strip.labels[i]!;
    if (!fit.isWhole) reports.push({ strip: strip.title, head: label.head, text: label.text });
    return fit.label;
  });
  const perPiece = Math.max(1, Math.floor((bodyWidthMm - 2 * MARKS_MM - strip.widthMm) / strip.pitchMm) + 1);
  const pieces = Math.max(1, Math.ceil(fitted.length / perPiece));
  const blocks = Array.from({ length: pieces }, (_, i): StripBlock => {
    const labels = fitted.slice(i * perPiece, (i + 1) * perPiece);
    const said = `${strip.labels.length} labels, ${mm(strip.widthMm)} by ${mm(strip.heightMm)} mm, one every ${mm(strip.pitchMm)} mm`;
    const part = pieces > 1 ? `, piece ${i + 1} of ${pieces}` : "";
    return {
      block: "strip",
      caption: `${strip.title}: ${said}${part}`,
      pitchMm: strip.pitchMm,
      widthMm: strip.widthMm,
      heightMm: strip.heightMm,
      labels,
    };
  });
  return { blocks: strip.labels.length === 0 ? [] : blocks, reports };
}

type LabelText = LabelStrip["labels"][number];
type Size = { readonly widthMm: number; readonly heightMm: number };

/**
 * Labels of one strip read as a row: all turned the same way where that holds them, and none larger than the lettering at which three
 * quarters of them stand whole. A label that fits only the other way is turned by itself.
 */
function fitAlike(labels: readonly LabelText[], size: Size, measure: Measure): LabelFit[] {
  const both = [false, true].map((turned) => {
    const sizes = labels.map((label) => largestPt(label, size, turned, measure)).sort((a, b) => a - b);
    return { turned, whole: sizes.filter((pt) => pt > 0).length, capPt: sizes[Math.floor(sizes.length / 4)] ?? 0 };
  });
  const [upright, sideways] = [both[0]!, both[1]!];
  // Upright reads better: turning must hold more labels, or win a fifth in size.
  const isTurned =
    sideways.whole > upright.whole || (sideways.whole === upright.whole && sideways.capPt > 1.2 * upright.capPt);
  const best = isTurned ? sideways : upright;
  return labels.map((label) => {
    const alike = fitLabel(label, size, { turned: best.turned, maxPt: best.capPt }, measure);
    return alike.isWhole ? alike : fitLabel(label, size, { turned: !best.turned, maxPt: best.capPt }, measure);
  });
}

const mm = (value: number): string => String(Number(value.toFixed(2)));
