import type { AskedDoubt, Doubt, FindingDoubt, NextReading, Outlook, ReadingWorth } from "@fusebook/core/doubt";
import { findingWords, settledByWords } from "@fusebook/core/findings";
import { showQuantity } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";
import { columns, wrap } from "./columns.js";
import { CAUTION_WORDS, placeWords, readingWords, spanText } from "./doubt-names.js";
import type { Units } from "./records.js";

const percent = (ratio: number): string =>
  ratio > 0 && ratio < 0.001 ? "<0.1 %" : `${Number((100 * ratio).toFixed(ratio < 0.1 ? 1 : 0))} %`;

const OUTLOOK: Readonly<Record<Outlook, string>> = {
  "one-reading": "One reading may settle it.",
  several: "No single reading settles it; several together may.",
  unweighed: "What the finding asks for cannot be weighed here; read it and see.",
  nothing:
    "Nothing that can be read here settles it: with every figure read it would still lie across its limit. Treat it as one that fails, or move it away from the limit.",
};

const DIMENSION = { A: "current", V: "voltage", W: "power", ohm: "resistance", m: "length", mm2: "section" } as const;

/** A value in the unit of what is compared. */
export const inUnit = (value: number, unit: string, units: Units): string =>
  unit in DIMENSION
    ? showQuantity(value, DIMENSION[unit as keyof typeof DIMENSION], units)
    : `${Number(value.toPrecision(3))}${unit === "count" || unit === "text" ? "" : ` ${unit}`}`;

/** Readings of the whole coach, ranked, one line each. */
export function nextTable(index: CoachIndex, next: readonly NextReading[], width: number): string {
  const rows = next.map((reading, i) => [
    `${i + 1}`,
    `${Math.round(reading.minutes)} min`,
    reading.instrument,
    percent(reading.shrinkSharePerMin),
    reading.settles < 0.05 ? "-" : reading.settles.toFixed(1),
    [
      readingWords(index, reading.path),
      placeWords(index, reading.place),
      ...(CAUTION_WORDS[reading.caution] === "" ? [] : [CAUTION_WORDS[reading.caution]]),
      ...(reading.verdicts[0] !== undefined && reading.verdicts[0].chanceSettles >= 0.05
        ? [
            `may settle ${reading.verdicts
              .filter(({ chanceSettles }) => chanceSettles >= 0.05)
              .slice(0, 3)
              .map(
                ({ finding, chanceSettles }) =>
                  `${finding.subject.name}: ${finding.code.replaceAll("-", " ")} (${percent(chanceSettles)})`,
              )
              .join(", ")}`,
          ]
        : []),
    ].join("; "),
  ]);
  return columns([["", "time", "with", "a minute", "settles", "what, where"], ...rows], width, [0, 1, 3, 4]);
}

function arithmetic(index: CoachIndex, reading: ReadingWorth, unit: string, units: Units): string[] {
  const at = (value: number) => inUnit(value, unit, units);
  const caution = CAUTION_WORDS[reading.caution];
  return [
    `${readingWords(index, reading.path)} [${reading.path}]`,
    `  ${reading.instrument}, ${placeWords(index, reading.place)}: ${Math.round(reading.accessMin)} min to open + ${Math.round(reading.readMin)} min to read = ${Math.round(reading.minutes)} min${caution === "" ? "" : ` (${caution})`}`,
    `  now ${spanText(reading, "now", units)}${reading.basis === undefined ? " (not on record)" : ` (${reading.basis})`}; the instrument leaves ${spanText(reading, "left", units)}`,
    `  width of the margin ${at(reading.widthBefore)} - ${at(reading.widthAfter)} after = ${at(reading.shrink)} less; over ${Math.round(reading.minutes)} min: ${at(reading.shrinkPerMin)} a minute`,
    `  chance that it settles it: ${percent(reading.chanceSettles)} (holds ${percent(reading.chanceHolds)}, fails ${percent(reading.chanceFails)})`,
  ];
}

/** One open verdict with everything that ranks its readings. */
export function doubtText(index: CoachIndex, doubt: FindingDoubt, units: Units, width: number, most: number): string {
  const at = (value: number) => inUnit(value, doubt.unit, units);
  const { q05, q50, q95 } = doubt.quantiles;
  const { lo, hi } = doubt.limit.span;
  const words = findingWords(doubt.finding, units);
  const lines = [
    `${words.title} [${doubt.finding.code}]`,
    ...wrap(words.statement, width - 2).map((line) => `  ${line}`),
    `  limit ${doubt.sense === "at-most" ? "at most" : "at least"} ${at(doubt.limit.value)}${lo === hi ? "" : ` (${at(lo)} to ${at(hi)})`}; exact span ${at(doubt.span.lo)} to ${at(doubt.span.hi)}; of ${doubt.samples} drawn coaches 5 % / half / 95 % below ${at(q05)} / ${at(q50)} / ${at(q95)}`,
    `  fails in ${percent(doubt.failsRatio)} of them${doubt.unsolved > 0 ? `; ${doubt.unsolved} more have no operating point` : ""}. ${OUTLOOK[doubt.outlook]}`,
    `  With everything read: width ${at(doubt.allRead.widthAfter)}, settled in ${percent(doubt.allRead.chanceSettles)} of them.`,
    ...doubt.readings
      .slice(0, most)
      .flatMap((reading, i) =>
        arithmetic(index, reading, doubt.unit, units).map((line, k) => `  ${k === 0 ? `${i + 1}.` : "  "} ${line}`),
      ),
  ];
  return lines.join("\n");
}

/** A finding that only a look or a word answers. */
export const askedText = (doubt: AskedDoubt, units: Units): string => {
  const { title, statement } = findingWords(doubt.finding, units);
  const reading = doubt.finding.settledBy[0];
  return `${title}: ${statement}${reading === undefined ? "" : `. ${settledByWords(reading)}`} [${doubt.finding.code}]`;
};

export const isCompared = (doubt: Doubt): doubt is FindingDoubt => doubt.kind === "compared";
