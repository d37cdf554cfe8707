import type { Basis } from "../../quantity/index.js";
import { type ContentSigns, fitOf, signsOf } from "./content-signs.js";
import { isSurveyField, SHARED_FIELDS, type SurveyField } from "./fields.js";
import type { Grid } from "./grid.js";
import { readHeading } from "./heading-words.js";
import { plainWords } from "./words.js";

/** What one column is taken to mean. */
export interface ColumnMapping {
  readonly index: number;
  readonly heading: string;
  readonly field: SurveyField;
  /** 0..1; 1 where a person, or an earlier survey with this heading, said so. */
  readonly confidence: number;
  readonly why: string;
  /** What the heading says of the figures below it. */
  readonly unit?: string;
  readonly basis?: Basis;
  readonly share?: "each" | "total";
}

/** A mapping remembered from an earlier survey: heading as typed -> field. */
export interface RememberedMapping {
  readonly headings: readonly string[];
  readonly columns: Readonly<Record<string, string>>;
}

const SAMPLE_ROWS = 400;
const LEAST_CONFIDENCE = 0.3;

interface Candidate {
  readonly index: number;
  readonly field: SurveyField;
  readonly confidence: number;
  readonly why: string;
}

const remembers = (grid: Grid, remembered: readonly RememberedMapping[]): Map<string, SurveyField> => {
  const fields = new Map<string, SurveyField>();
  const plain = (heading: string) => plainWords(heading);
  const same = (mapping: RememberedMapping) =>
    mapping.headings.length === grid.headings.length &&
    mapping.headings.every((heading, i) => plain(heading) === plain(grid.headings[i] ?? ""));
  // The newest wins, and a table with the very same headings wins over single headings.
  for (const mapping of [...remembered.filter((item) => !same(item)), ...remembered.filter(same)])
    for (const [heading, field] of Object.entries(mapping.columns))
      if (isSurveyField(field)) fields.set(plain(heading), field);
  return fields;
};

/** What a column seems to hold, heading or not. */
function* byContent(index: number, signs: ContentSigns): Generator<Candidate> {
  const { share } = signs;
  if (signs.filled < 1) return;
  const say = (field: SurveyField, confidence: number, why: string): Candidate => ({ index, field, confidence, why });
  if (share("key") > 0.6) yield say("circuit", 0.7, "cells like 3-07");
  if (share("fuseName") > 0.6) yield say("circuit", 0.65, "cells like F12");
  if (share("moduleName") > 0.6) yield say("module", 0.65, "cells like M3");
  if (share("bits") > 0.6 && share("whole") < 0.3) yield say("positions", 0.6, "cells of 1 and 0");
  if (share("gauge") > 0.5) yield say("gauge", 0.7, "cells with a wire gauge");
  if (share("length") > 0.5) yield say("length", 0.65, "cells with feet or metres");
  if (share("watts") > 0.5) yield say("powerW", 0.65, "cells with watts");
  if (share("volts") > 0.5) yield say("ratedV", 0.6, "cells with volts");
  if (share("amps") > 0.5)
    yield share("fuseSize") > 0.8
      ? say("fuseA", 0.6, "amps, all of them fuse sizes")
      : say("currentA", 0.6, "cells with amps");
  if (share("amps") > 0.5 && share("fuseSize") > 0.8) yield say("currentA", 0.4, "cells with amps");
  if (share("whole") > 0.8 && share("bits") < 0.5) {
    if (share("gaugeSize") > 0.9 && signs.distinct <= 6) yield say("gauge", 0.42, "numbers that are wire gauges");
    if (share("fuseSize") > 0.9 && signs.distinct <= 8) yield say("fuseA", 0.45, "numbers that are fuse sizes");
    yield say("channel", signs.distinct > 3 ? 0.4 : 0.31, "small whole numbers");
    yield say("module", 0.35, "small whole numbers");
  }
  if (share("words") > 0.5) {
    yield say("loads", signs.distinct / signs.filled > 0.5 ? 0.5 : 0.35, "words, mostly different");
    yield say("place", signs.distinct / signs.filled <= 0.5 ? 0.45 : 0.3, "words that repeat");
    yield say("notes", 0.32, "words");
  }
}

const unreadColumn = (index: number, heading: string, why: string): ColumnMapping => ({
  index,
  heading,
  field: "unread",
  confidence: 0,
  why,
});

/**
 * Proposes what each column of a survey means: remembered headings first, then the heading's words weighed against what stands below, then
 * the cells alone. A column that nothing tells is `unread`: its cells are kept on the circuit as text.
 */
export function proposeMapping(grid: Grid, remembered: readonly RememberedMapping[] = []): ColumnMapping[] {
  const known = remembers(grid, remembered);
  const candidates: Candidate[] = [];
  grid.headings.forEach((heading, index) => {
    const before = grid.headingRow === undefined ? undefined : known.get(plainWords(heading));
    if (before !== undefined) candidates.push({ index, field: before, confidence: 1, why: "mapped so before" });
    const signs = signsOf(grid.rows.slice(0, SAMPLE_ROWS).map((row) => row[index]?.text ?? ""));
    const said = grid.headingRow === undefined ? [] : readHeading(heading).candidates;
    for (const { field, confidence } of said) {
      const fit = fitOf(field, signs);
      candidates.push({
        index,
        field,
        confidence: Math.round(confidence * (0.4 + 0.6 * fit) * 100) / 100,
        why: `heading "${heading}"${fit < 0.5 ? ", though the cells do not look like it" : ""}`,
      });
    }
    // With headings, a heading that says nothing is not outguessed from words and small numbers alone.
    for (const candidate of byContent(index, signs))
      if (grid.headingRow === undefined) candidates.push(candidate);
      else if (said.length > 0 || candidate.confidence >= 0.6)
        candidates.push({ ...candidate, confidence: Math.round(candidate.confidence * 70) / 100 });
  });
  const mapped = new Map<number, ColumnMapping>();
  const taken = new Set<SurveyField>();
  candidates.sort((a, b) => b.confidence - a.confidence || a.index - b.index);
  for (const candidate of candidates) {
    const { index, field, confidence } = candidate;
    if (mapped.has(index) || confidence < LEAST_CONFIDENCE) continue;
    if (taken.has(field) && !SHARED_FIELDS.has(field)) continue;
    taken.add(field);
    mapped.set(
      index,
      withHeading(grid, { index, heading: grid.headings[index] ?? "", field, confidence, why: candidate.why }),
    );
  }
  if (!taken.has("loads")) {
    const words = wordiest(grid, mapped);
    if (words !== undefined) mapped.set(words.index, words);
  }
  return grid.headings.map(
    (heading, index) =>
      mapped.get(index) ?? unreadColumn(index, heading, "nothing tells what it means; its cells are kept as text"),
  );
}

/** The column of words, mostly different, that no heading tells of: what is fed, where no other column says it. */
const wordiest = (grid: Grid, mapped: ReadonlyMap<number, ColumnMapping>): ColumnMapping | undefined => {
  let best: { readonly index: number; readonly share: number } | undefined;
  grid.headings.forEach((_, index) => {
    if (mapped.has(index)) return;
    const signs = signsOf(grid.rows.slice(0, SAMPLE_ROWS).map((row) => row[index]?.text ?? ""));
    const share = signs.filled === 0 ? 0 : (signs.share("words") * signs.distinct) / signs.filled;
    if (signs.filled >= 2 && share > 0.6 && share > (best?.share ?? 0)) best = { index, share };
  });
  if (best === undefined) return undefined;
  const { index } = best;
  const why = "words, mostly different, and no other column says what is fed";
  return { index, heading: grid.headings[index] ?? "", field: "loads", confidence: 0.4, why };
};

const withHeading = (grid: Grid, column: ColumnMapping): ColumnMapping => {
  if (grid.headingRow === undefined) return column;
  const { unit, basis, share } = readHeading(column.heading);
  return {
    ...column,
    ...(unit === undefined ? {} : { unit }),
    ...(basis === undefined ? {} : { basis }),
    ...(share === undefined ? {} : { share }),
  };
};

/** A mapping with some columns set by hand, by heading as typed. A field taken this way is given up by the column that had it. */
export function overrideMapping(
  mapping: readonly ColumnMapping[],
  fields: Readonly<Record<string, SurveyField>>,
): ColumnMapping[] {
  const byHeading = new Map(Object.entries(fields).map(([heading, field]) => [plainWords(heading), field]));
  const given = new Set(byHeading.values());
  return mapping.map((column) => {
    const field = byHeading.get(plainWords(column.heading));
    if (field !== undefined) return { ...column, field, confidence: 1, why: "set by hand" };
    if (given.has(column.field) && !SHARED_FIELDS.has(column.field))
      return { ...column, field: "unread" as const, confidence: 0, why: "its field was given to another column" };
    return column;
  });
}
