import type { Grid, GridCell, GridWarning } from "@fusebook/core/record";
import { MAX_COLUMNS, MAX_ROWS } from "./bounds.js";
import { columnName } from "./column-name.js";
import { headingRowOf } from "./heading-row.js";
import { type GridOutcome, refusedGrid } from "./outcome.js";
import { decimalSignOf } from "./separator.js";

const SAMPLE_ROWS = 2000;

export interface RawTable {
  readonly name: string;
  readonly rows: readonly { readonly number: number; readonly cells: readonly GridCell[] }[];
  readonly warnings: readonly GridWarning[];
  readonly sheets?: readonly string[];
  readonly sheet?: string;
}

/** A raw table as a grid: empty rows and columns at the right left out, headings found, bounds kept. */
export function gridOf(table: RawTable): GridOutcome {
  const rows = table.rows.filter((row) =>
    row.cells.some((cell) => cell.text.trim() !== "" || cell.unread !== undefined),
  );
  if (rows.length === 0)
    return refusedGrid(
      table.name,
      "no-rows",
      "wanted a table with a row for each circuit, got an empty one; check that the right file was saved",
    );
  if (rows.length > MAX_ROWS)
    return refusedGrid(
      table.name,
      "too-many-rows",
      `wanted at most ${MAX_ROWS} rows, got ${rows.length}; keep one coach to a file`,
    );
  let width = 0;
  for (const row of rows)
    for (let i = row.cells.length; i > width; i--) if ((row.cells[i - 1]?.text.trim() ?? "") !== "") width = i;
  if (width > MAX_COLUMNS)
    return refusedGrid(
      table.name,
      "too-many-columns",
      `wanted at most ${MAX_COLUMNS} columns, got ${width}; one row a circuit, one column a figure`,
    );
  const at = headingRowOf(rows.map((row) => row.cells));
  const headingCells = at === undefined ? [] : (rows[at]?.cells ?? []);
  const body = rows.slice(at === undefined ? 0 : at + 1);
  const warnings = [...table.warnings];
  if (at !== undefined && body.length === 0)
    warnings.push({ place: table.name, code: "no-rows", message: "there are headings and no rows under them" });
  const grid: Grid = {
    name: table.name,
    ...(table.sheets === undefined ? {} : { sheets: table.sheets }),
    ...(table.sheet === undefined ? {} : { sheet: table.sheet }),
    headingRow: at === undefined ? undefined : rows[at]?.number,
    headings: Array.from(
      { length: width },
      (_, i) => headingCells[i]?.text.trim().replace(/\s+/g, " ") || `column ${columnName(i)}`,
    ),
    rows: body.map((row) => Array.from({ length: width }, (_, i) => row.cells[i] ?? { text: "", place: "" })),
    above: (at === undefined ? [] : rows.slice(0, at)).flatMap((row) =>
      row.cells.filter((cell, i) => cell.text.trim() !== "" && cell.text !== row.cells[i - 1]?.text),
    ),
    decimalSign: decimalSignOf(body.slice(0, SAMPLE_ROWS).flatMap((row) => row.cells.map((cell) => cell.text))),
    warnings,
  };
  return { kind: "grid", grid };
}
