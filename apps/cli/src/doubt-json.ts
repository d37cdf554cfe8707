import type { Doubt, NextReading } from "@fusebook/core/doubt";
import { findingWords } from "@fusebook/core/findings";
import type { Units } from "./records.js";

const about = ({ finding, key }: Doubt | NextReading["verdicts"][number], units: Units) => ({
  key,
  code: finding.code,
  severity: finding.severity,
  subject: finding.subject,
  words: findingWords(finding, units),
});

/** A doubt as `--json` gives it: the finding by code, subject and words, then all the arithmetic. */
export function doubtJson(doubt: Doubt, units: Units) {
  const { finding: _, ...rest } = doubt;
  return { ...about(doubt, units), ...rest };
}

export function nextJson(reading: NextReading, units: Units) {
  return {
    ...reading,
    verdicts: reading.verdicts.map((verdict) => ({
      ...about(verdict, units),
      shrinkShare: verdict.shrinkShare,
      chanceSettles: verdict.chanceSettles,
    })),
  };
}
