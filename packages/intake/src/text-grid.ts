import type { GridWarning } from "@fusebook/core/record";
import Papa from "papaparse";
import { gridOf } from "./grid-of.js";
import type { GridOutcome } from "./outcome.js";
import { separatorOf } from "./separator.js";

/** A table from text: CSV with any usual separator, or cells pasted from a spreadsheet. Quoted cells may hold line breaks. */
export function textGrid(text: string, name: string, warnings: readonly GridWarning[] = []): GridOutcome {
  const delimiter = separatorOf(text);
  const told = [...warnings];
  const rows: { number: number; cells: { text: string; place: string }[] }[] = [];
  const parsed = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  let line = 1;
  for (const cells of parsed.data) {
    const number = line;
    rows.push({ number, cells: cells.map((cell, i) => ({ text: cell, place: `line ${number}, column ${i + 1}` })) });
    line += 1 + cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
  }
  for (const error of parsed.errors.slice(0, 20)) {
    if (error.code === "UndetectableDelimiter") continue;
    const place = error.row === undefined ? name : `line ${rows[error.row]?.number ?? error.row + 1}`;
    told.push({
      place,
      code: "csv-quotes",
      message:
        "a quote is opened and not closed, or closed too soon; the cells from here may run together: check this line",
    });
  }
  return gridOf({ name, rows, warnings: told });
}
