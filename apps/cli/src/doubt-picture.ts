import type { FindingDoubt, NextReading } from "@fusebook/core/doubt";
import { findingWords } from "@fusebook/core/findings";
import type { Outcome } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";
import { type ChartLook, doubtChart } from "@fusebook/paper/charts";
import { readingWords, spanText } from "./doubt-names.js";
import type { Units } from "./records.js";

const READINGS_SHOWN = 6;

const QUANTITY: Readonly<Partial<Record<FindingDoubt["unit"], string>>> = {
  A: "current",
  V: "voltage",
  W: "power",
  ohm: "resistance",
  m: "length",
};

/** One open verdict as a picture: where its quantity lies against its limit, and the readings that narrow it. */
export function doubtPicture(index: CoachIndex, doubt: FindingDoubt, units: Units, look: ChartLook): Outcome<string> {
  const { unit, span, limit, sense, failsRatio, quantiles, bins, finding } = doubt;
  const isFromMemory = finding.source.how === "memory";
  return doubtChart(
    {
      title: finding.subject.name,
      subtitle: findingWords(finding, units).title,
      caption: [
        `${doubt.samples} coaches drawn from the record's tolerances; the exact span is what the verdict is made from.`,
      ],
      quantity: {
        label: QUANTITY[unit] ?? "what is compared",
        unit: unit === "count" || unit === "text" ? "" : unit,
        exact: span,
        quantiles: [
          { ratio: 0.05, value: quantiles.q05 },
          { ratio: 0.5, value: quantiles.q50 },
          { ratio: 0.95, value: quantiles.q95 },
        ],
        ...(bins.length > 0 ? { bins } : {}),
        limit: {
          label: "limit",
          value: limit.value,
          sense: sense === "at-most" ? "at most" : "at least",
          ...(isFromMemory ? { isFromMemory } : {}),
        },
        failsRatio,
      },
      readings: doubt.readings.slice(0, READINGS_SHOWN).map((reading) => ({
        label: readingWords(index, reading.path),
        note: `${reading.instrument}; now ${spanText(reading, "now", units)}, then ${spanText(reading, "left", units)}`,
        minutes: reading.minutes,
        shrinkRatio: reading.shrink / reading.widthBefore,
        shrinkPerMinute: reading.shrinkPerMin / reading.widthBefore,
        settlesRatio: reading.chanceSettles,
      })),
    },
    look,
  );
}

/** The reading list of a whole coach as a picture. */
export const nextPicture = (
  index: CoachIndex,
  next: readonly NextReading[],
  openCount: number,
  look: ChartLook,
): Outcome<string> =>
  doubtChart(
    {
      title: index.record.coach.name,
      subtitle: `What to read next: ${openCount} open verdicts together`,
      caption: ["A share is of the doubt of one verdict; readings that serve several verdicts have the sum."],
      readings: next.slice(0, READINGS_SHOWN * 2).map((reading) => ({
        label: readingWords(index, reading.path),
        note: `${reading.instrument}; serves ${reading.verdicts.length} verdicts`,
        minutes: reading.minutes,
        shrinkRatio: reading.shrinkShare,
        shrinkPerMinute: reading.shrinkSharePerMin,
      })),
    },
    look,
  );
