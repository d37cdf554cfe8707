import type { CoachRecord } from "../schema/types.js";
import { type Grid, NO_CELL } from "./grid.js";
import { type ImportOptions, importSurvey } from "./import-survey.js";
import { proposeMapping } from "./propose.js";

/** A grid as it comes from a text file: first line the headings. */
export const gridOf = (lines: readonly (readonly string[])[], more: Partial<Grid> = {}): Grid => ({
  name: "survey.csv",
  headingRow: 1,
  headings: lines[0] ?? [],
  rows: lines
    .slice(1)
    .map((line, i) =>
      line.map((text, j) => (text === "" ? NO_CELL : { text, place: `line ${i + 2}, column ${j + 1}` })),
    ),
  above: [],
  decimalSign: ".",
  warnings: [],
  ...more,
});

export const imported = (
  lines: readonly (readonly string[])[],
  record?: CoachRecord,
  options?: ImportOptions,
  more?: Partial<Grid>,
) => {
  const grid = gridOf(lines, more);
  return importSurvey(record, grid, proposeMapping(grid, record?.survey?.mappings), options);
};

export const fieldsOf = (headings: readonly string[], rows: readonly (readonly string[])[] = []) =>
  proposeMapping(gridOf([headings, ...rows])).map((column) => column.field);

export const HEADINGS = [
  "Mod",
  "Ch",
  "Fuse",
  "Label",
  "What it feeds",
  "Qty",
  "Amps",
  "Wire",
  "Length (ft)",
  "Room",
  "Dim?",
  "Notes",
];
export const ROW = [
  "Mod 3",
  "7",
  "15A blade",
  "GALLEY LTS",
  "galley ceiling halogens",
  "4",
  "0.8 ea",
  "14ga",
  "18",
  "Galley",
  "yes",
  "warm at the fuse",
];
