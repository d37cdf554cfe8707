import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readRecord } from "../read.js";
import type { CoachRecord } from "../schema/types.js";
import { SURVEY_FIELDS, type SurveyField } from "./fields.js";
import { type Grid, NO_CELL } from "./grid.js";
import { importSurvey } from "./import-survey.js";
import { type ColumnMapping, proposeMapping } from "./propose.js";

const SEED = 1_880_512;

/** Cells as people write them, by what the column is for. */
const WRITTEN: Partial<Record<SurveyField, readonly string[]>> = {
  circuit: ["3-07", "M3.8", "3/9", "F12", "12", "2026-03-07", "mod 4 ch 2", "?"],
  module: ["3", "Mod 3", "M04", "Left rear", "Fuse block", "", "", "-"],
  channel: ["1", "7", "Ch 12", "F3", "70", "spare", ""],
  moduleKind: ["R8", "no such kind"],
  modulePlace: ["Bay 2", "under the bed", "-"],
  address: ["5", "#7", "five"],
  positions: ["0101", "ON OFF ON ON", "up down"],
  fuseA: ["15", "15A", "7.5 A blade", "20 red, corroded", "ten", "15 breaker", "~10", "?"],
  fuseType: ["blade", "glass", "slow blade"],
  label: ["GALLEY LTS", "none", "", "pump?"],
  loads: ["galley lamps", "4x puck lights", "reading lamp (2)", "pump; fan", "spare", "hood fan & light", ""],
  class: ["fan", "LED", "thing", "pump?"],
  quantity: ["4", "x2", "0", "lots"],
  currentA: ["0.8", "3.2 total", ".35 amps", "350 mA", "2-3 A", "1; 2", "3.1 (clamp)", "big"],
  powerW: ["20 W", "5W each", "1,000", "bright"],
  ratedV: ["12", "13.8 V"],
  gauge: ["14", "14ga", "#16 AWG", "2.5 mm²", "thin", "14/2"],
  length: ["18", "18 ft", "5'6\"", "4 m", "far"],
  loopLength: ["36 ft", "?"],
  insulation: ["105", "105C", "old"],
  bundle: ["3", "many"],
  zone: ["Bay", "cabin"],
  return: ["chassis", "G3"],
  returnLength: ["4", "short"],
  place: ["Galley", "saloon", "…"],
  wish: ["yes", "must", "nice", "if cheap and quick", "no", "steady", "blue"],
  verified: ["yes", "no", "pulled the fuse 2026-05-02", "?"],
  notes: ["warm at the fuse", "see photo 12", "n/a"],
  unread: ["ochre", "17"],
};

/** Words whose meaning, not spelling, is kept; and the units that are converted. */
const MEANING = new Set(
  "a amp amps ma w watt watts v volt volts ft feet in m mm awg ga gauge sae c mod module ch chan channel fuse each ea total clamp measured on off yes y no n must nice none spare blank label x q to the and".split(
    " ",
  ),
);

const flatten = (value: unknown, strings: string[], numbers: number[]): void => {
  if (typeof value === "string") strings.push(value.toLowerCase());
  else if (typeof value === "number") numbers.push(value);
  else if (typeof value === "boolean") strings.push(String(value));
  else if (Array.isArray(value)) for (const item of value) flatten(item, strings, numbers);
  else if (typeof value === "object" && value !== null)
    for (const [name, item] of Object.entries(value)) {
      strings.push(name.toLowerCase());
      flatten(item, strings, numbers);
    }
};

const SCALES = [1, 0.001, 0.3048, 0.0254, 0.3048 / 2, 1 / 12, 0.5, 5 / 9];

/** Every word of a cell is found in the record as a word, and every number as a number, as it is or converted. */
const traceOf = (text: string, strings: readonly string[], numbers: readonly number[]): string | undefined => {
  const whole = text.trim().toLowerCase();
  if (strings.some((item) => item.includes(whole) || item.split(" | ").includes(whole))) return undefined;
  const isThere = (token: string): boolean => {
    if (MEANING.has(token) || strings.some((item) => item.includes(token))) return true;
    const number = Number(token.replace(",", "."));
    return (
      Number.isFinite(number) && numbers.some((item) => SCALES.some((scale) => Math.abs(item - number * scale) < 1e-9))
    );
  };
  for (const token of whole.match(/\p{L}+|\d*[.,]?\d+/gu) ?? []) {
    // M3.8 is module 3, channel 8: two numbers, not one.
    if (isThere(token) || token.split(/[.,]/).every(isThere)) continue;
    // 2-3 is kept as 2.5 with 0.5 either way; 5'6" as one length.
    if (/^\d/.test(token) && /^\d\s*-\s*\d|'\d/.test(whole)) continue;
    return token;
  }
  return undefined;
};

const cellFor = (field: SurveyField): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...(WRITTEN[field] ?? ["x"])) },
    { weight: 1, arbitrary: fc.constantFrom("", '"', "-", "?", "=A1+B2") },
    { weight: 1, arbitrary: fc.string({ maxLength: 8, unit: fc.constantFrom(..."abz é;&+(/)'#@=|\n") }) },
  );

interface Survey {
  readonly grid: Grid;
  readonly mapping: readonly ColumnMapping[];
}

const heading = fc.oneof(
  fc.constantFrom("Amps", "Wire", "Length (ft)", "Load", "__proto__", "Notes", "Dim?"),
  fc.string({ minLength: 1, maxLength: 6 }),
);

const survey: fc.Arbitrary<Survey> = fc
  .tuple(fc.shuffledSubarray([...SURVEY_FIELDS], { minLength: 3, maxLength: 12 }), fc.boolean(), fc.boolean())
  .chain(([some, hasKey, isComma]) => {
    const fields: SurveyField[] = hasKey && !some.includes("circuit") ? ["circuit", ...some] : some;
    return fc
      .tuple(
        fc.array(heading, { minLength: fields.length, maxLength: fields.length }),
        fc.array(fc.tuple(...fields.map(cellFor)), { minLength: 1, maxLength: 6 }),
        fc.array(fc.constantFrom("My coach", "May 2026", ""), { maxLength: 2 }),
      )
      .map(([headings, rows, above]) => ({
        grid: {
          name: "survey.csv",
          headingRow: 1,
          headings,
          rows: rows.map((cells, i) =>
            cells.map((text, j) => (text === "" ? NO_CELL : { text, place: `line ${i + 2}, column ${j + 1}` })),
          ),
          above: above.map((text) => ({ text, place: "line 1, column 1" })),
          decimalSign: isComma ? ("," as const) : ("." as const),
          warnings: [],
        },
        mapping: headings.map((name, index) => ({
          index,
          heading: name,
          field: fields[index] ?? "unread",
          confidence: 1,
          why: "set",
        })),
      }));
  });

const unknownFields = { curtains: "ochre", deep: { er: [1, { still: true }] } };
const base = (): CoachRecord =>
  ({
    format: "fusebook/1",
    id: "x",
    coach: { name: "x", ...unknownFields },
    nodes: [{ id: "G3", kind: "ground", name: "G3" }],
    moduleKinds: [{ id: "R8", name: "R8", channels: 8, bank: { switches: 4 } }],
    modules: [{ id: "m3", ...unknownFields }],
    circuits: [
      {
        id: "c3.07",
        module: "m3",
        channel: 7,
        loads: ["l-old"],
        fuse: { ratedA: { value: 12, basis: "measured", ...unknownFields } },
        ...unknownFields,
      },
    ],
    loads: [
      { id: "l-old", name: "old lamp", currentA: { value: 2, basis: "measured", by: "clamp" }, ...unknownFields },
    ],
    survey: { unread: [{ row: "9.99", column: "Odd", text: "kept" }], ...unknownFields },
    ...unknownFields,
  }) as unknown as CoachRecord;

const countUnknown = (value: unknown): number => JSON.stringify(value).split('"curtains":"ochre"').length - 1;

const assertAll = (check: (it: Survey) => void, numRuns: number): void => {
  fc.assert(fc.property(survey, check), { seed: SEED, numRuns });
};

describe("importing any survey", () => {
  it("drops nothing: every cell that is not empty is found in a field, in notes or as unread text", () => {
    assertAll(({ grid, mapping }) => {
      const { record } = importSurvey(base(), grid, mapping);
      const strings: string[] = [];
      const numbers: number[] = [];
      flatten(record, strings, numbers);
      // A ditto mark stands for the cell above.
      const texts = [...grid.rows.flat(), ...grid.above]
        .map((cell) => cell.text)
        .filter((text) => text.trim() !== "" && !/^(?:"|'')$/.test(text.trim()));
      for (const text of texts) {
        const lost = traceOf(text, strings, numbers);
        if (lost !== undefined) throw new Error(`"${text}": "${lost}" is nowhere in ${JSON.stringify(record)}`);
      }
    }, 1_500);
  });

  it("imported again, changes nothing", () => {
    assertAll(({ grid, mapping }) => {
      const once = importSurvey(base(), grid, mapping).record;
      const twice = importSurvey(once, grid, mapping);
      expect(twice.record).toEqual(once);
      expect(twice.report.changes).toEqual([]);
    }, 1_000);
  });

  it("keeps every unknown field of the record, and gives a record that fits the schema", () => {
    assertAll(({ grid, mapping }) => {
      const { record } = importSurvey(base(), grid, mapping);
      expect(countUnknown(record)).toBe(countUnknown(base()));
      const outcome = readRecord(record);
      expect(outcome.kind === "refused" ? outcome.faults : []).toEqual([]);
    }, 1_000);
  });

  it("gives the same circuits whatever the order of the columns", () => {
    assertAll(({ grid, mapping }) => {
      // Columns that share a field are kept in their order: notes are lines, and lines have one.
      const distinct = new Set(mapping.map((column) => column.heading)).size === mapping.length;
      if (!distinct || mapping.filter((column) => column.field === "notes").length > 1) return;
      const plain = (record: CoachRecord) =>
        [...(record.circuits ?? [])].map((circuit) => [
          circuit.id,
          circuit.module,
          circuit.label,
          circuit.out,
          circuit.loads,
        ]);
      const mirrored: Grid = {
        ...grid,
        headings: grid.headings.toReversed(),
        rows: grid.rows.map((row) => row.toReversed()),
      };
      const mirroredMapping = mapping.toReversed().map((column, index) => ({ ...column, index }));
      expect(plain(importSurvey(base(), mirrored, mirroredMapping).record)).toEqual(
        plain(importSurvey(base(), grid, mapping).record),
      );
    }, 500);
  });

  it("proposes a field for every column of any table, never the same one twice, and remembers it", () => {
    assertAll(({ grid }) => {
      const proposal = proposeMapping(grid);
      expect(proposal.map((column) => column.index)).toEqual(grid.headings.map((_, i) => i));
      const own = proposal.map((column) => column.field).filter((field) => field !== "notes" && field !== "unread");
      expect(new Set(own).size).toBe(own.length);
      for (const { confidence } of proposal) expect(confidence >= 0 && confidence <= 1).toBe(true);
    }, 500);
  });
});
