import type { Finding } from "../findings/index.js";
import { type CoachIndex, type CoachRecord, indexRecord } from "../record/index.js";
import { askRules } from "./ask-again.js";
import { placeWithin } from "./chance.js";
import { withField } from "./field-path.js";
import { comparedOf, marginAt } from "./margin.js";
import { narrowedFor } from "./narrowed.js";
import type { ReadableFigure } from "./reading.js";
import { type SampledFinding, slopeOf } from "./sampled-finding.js";

/** A figure known exactly. */
const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** One value of a figure: as printed where only some exist, else any within its span. */
function drawnValue(figure: ReadableFigure, place: number): number | string {
  const { printed, now } = figure;
  if (printed !== undefined) return printed[Math.min(printed.length - 1, Math.floor(place * printed.length))]!;
  return now.lo + place * (now.hi - now.lo);
}

/**
 * Draws the figures that a finding leans on, asks its rule again, and takes what it compares. What the rule still leaves as a span (figures that nobody can
 * read) is drawn evenly.
 */
export function sampleByRule(
  index: CoachIndex,
  key: string,
  finding: Finding,
  figures: readonly ReadableFigure[],
  { seed, samples }: { readonly seed: number; readonly samples: number },
): SampledFinding | undefined {
  const codes = new Set([finding.code]);
  const seenBy = narrowedFor([finding]);
  const got: number[] = [];
  const margin: number[] = [];
  const drawn = figures.map((): number[] => []);
  let unsolved = 0;
  for (let k = 0; k < samples; k++) {
    const values = figures.map((figure) => drawnValue(figure, placeWithin(seed, k, figure.path)));
    const record = figures.reduce<CoachRecord>((changed, figure, i) => {
      const value = values[i]!;
      return withField(changed, figure.path, typeof value === "number" ? exact(value) : value);
    }, index.record);
    const told = askRules(indexRecord(record), codes, seenBy).findings.get(key);
    const compared = told === undefined ? undefined : comparedOf(told);
    if (compared === undefined) {
      unsolved++;
      continue;
    }
    const between = ({ lo, hi }: { lo: number; hi: number }, what: string) =>
      lo + placeWithin(seed, k, `${key} ${what}`) * (hi - lo);
    const value = between(compared.span, "quantity");
    got.push(value);
    margin.push(marginAt(compared.sense, value, between(compared.limit.span, "limit")));
    values.forEach((each, i) => void drawn[i]!.push(typeof each === "number" ? each : 0));
  }
  if (got.length === 0) return undefined;
  const margins = Float64Array.from(margin);
  return {
    got: Float64Array.from(got),
    margin: margins,
    unsolved,
    by: "rule",
    slopes: figures.map((figure, i) => ({
      path: figure.path,
      slope: slopeOf(margins, Float64Array.from(drawn[i]!)),
      nominal: figure.nominal,
      span: figure.now,
    })),
  };
}
