import type { Grid, GridCell } from "@fusebook/core/record";
import { MAX_COLUMNS, MAX_ROWS } from "./bounds.js";
import { columnName } from "./column-name.js";
import { type HeadingRows, headingRowsOf } from "./heading-row.js";
import { type GridOutcome, refusedGrid } from "./outcome.js";
import type { RawCell, RawRow, RawTable } from "./raw-table.js";
import { decimalSignOf } from "./separator.js";

const SAMPLE_ROWS = 2000;
const NO_CELL: GridCell = { text: "", place: "" };

const tidy = (text: string | undefined): string => (text ?? "").trim().replace(/\s+/g, " ");

/** One heading for each column, each its own: a second `Amps` is `Amps (2)`. */
const headingsOf = (rows: readonly RawRow[], at: HeadingRows | undefined, width: number): string[] => {
  const used = new Set<string>();
  return Array.from({ length: width }, (_, i) => {
    const own = at === undefined ? "" : tidy(rows[at.headings]?.cells[i]?.text);
    const group = at?.groups === undefined ? "" : tidy(rows[at.groups]?.cells[i]?.text);
    const heading =
      [group === own ? "" : group, own].filter((part) => part !== "").join(" ") || `column ${columnName(i)}`;
    let free = heading;
    for (let n = 2; used.has(free.toLowerCase()); n += 1) free = `${heading} (${n})`;
    used.add(free.toLowerCase());
    return free;
  });
};

/** A cell of the table's body: what was only filled from the left is not its own. */
const bodyCell = (cell: RawCell | undefined): GridCell => {
  if (cell === undefined || cell.fill === "right") return NO_CELL;
  if (cell.fill === undefined) return cell;
  const { fill: _, ...own } = cell;
  return own;
};

/** A raw table as a grid: empty rows and columns at the right left out, headings found, bounds kept. */
export function gridOf(table: RawTable): GridOutcome {
  const rows = table.rows.filter((row) => row.cells.some((cell) => cell.text.trim() !== ""));
  const place = table.sheet === undefined ? table.name : `${table.name}, sheet ${table.sheet}`;
  if (rows.length === 0)
    return refusedGrid(
      place,
      "no-rows",
      "wanted a table with a row for each circuit, got an empty one; check that the right file was saved",
    );
  if (rows.length > MAX_ROWS)
    return refusedGrid(
      place,
      "too-many-rows",
      `wanted at most ${MAX_ROWS} rows, got ${rows.length}; keep one coach to a file`,
    );
  let width = 0;
  for (const row of rows)
    for (let i = row.cells.length; i > width; i -= 1) if ((row.cells[i - 1]?.text.trim() ?? "") !== "") width = i;
  if (width > MAX_COLUMNS)
    return refusedGrid(
      place,
      "too-many-columns",
      `wanted at most ${MAX_COLUMNS} columns, got ${width}; one row a circuit, one column a figure`,
    );
  const at = headingRowsOf(rows);
  const bodyFrom = at === undefined ? 0 : at.headings + 1;
  const body = rows.slice(bodyFrom);
  const warnings = [...table.warnings];
  if (at === undefined)
    warnings.push({
      place,
      code: "no-headings",
      message:
        "no row of headings was found: the columns are judged by their cells; put names above the columns, or say what each column is",
    });
  else if (body.length === 0)
    warnings.push({
      place,
      code: "no-rows",
      message: "there are headings and no rows under them; add a row for each circuit",
    });
  const grid: Grid = {
    name: table.name,
    ...(table.sheets === undefined ? {} : { sheets: table.sheets }),
    ...(table.sheet === undefined ? {} : { sheet: table.sheet }),
    headingRow: at === undefined ? undefined : rows[at.headings]?.number,
    headings: headingsOf(rows, at, width),
    rows: body.map((row) => Array.from({ length: width }, (_, i) => bodyCell(row.cells[i]))),
    above: rows
      .slice(0, at?.groups ?? at?.headings ?? 0)
      .flatMap((row) => row.cells.filter((cell) => cell.text.trim() !== "" && cell.fill === undefined)),
    decimalSign: decimalSignOf(body.slice(0, SAMPLE_ROWS).flatMap((row) => row.cells.map((cell) => cell.text))),
    warnings,
  };
  return { kind: "grid", grid };
}
