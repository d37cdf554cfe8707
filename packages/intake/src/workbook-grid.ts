import { type Grid, type GridWarning, proposeMapping } from "@fusebook/core/record";
import { MAX_COLUMNS, MAX_ROWS } from "./bounds.js";
import { columnName } from "./column-name.js";
import { gridOf } from "./grid-of.js";
import { fillMerged } from "./merged-cells.js";
import { type GridOutcome, refusedGrid } from "./outcome.js";
import type { RawCell, RawTable } from "./raw-table.js";
import { type SheetCells, sheetCellsOf } from "./sheet-cells.js";
import { workbookOf } from "./workbook-parts.js";
import { lookIntoZip } from "./zip-look.js";

const SAVE_AGAIN = "open it in a spreadsheet program and save it again, or save the sheet as CSV";
const NO_CELL: RawCell = { text: "", place: "" };

const formulaWarnings = (cells: SheetCells["cells"]): GridWarning[] => {
  const kept = cells.filter((cell) => cell.formula !== undefined && cell.unread === undefined);
  const first = kept[0];
  const warnings: GridWarning[] = cells
    .filter((cell) => cell.unread !== undefined)
    .slice(0, 50)
    .map((cell) => ({
      place: `${columnName(cell.column)}${cell.row}`,
      code: cell.text.startsWith("=") ? "formula-without-value" : "formula-error",
      message: `${cell.text}: ${cell.unread}`,
    }));
  if (first !== undefined)
    warnings.push({
      place: `${columnName(first.column)}${first.row}`,
      code: "formulas",
      message: `${kept.length} cells hold formulas (the first is here); the values kept beside them are used, nothing is computed`,
    });
  return warnings;
};

const tableOf = (name: string, sheet: string, sheets: readonly string[], read: SheetCells): RawTable => {
  const rows = new Map<number, RawCell[]>();
  let lastRow = 0;
  let lastColumn = 0;
  for (const { row, column, ...cell } of read.cells) {
    const cells = rows.get(row) ?? [];
    rows.set(row, cells);
    cells[column] = { ...cell, place: `${columnName(column)}${row}` };
    if (row > lastRow) lastRow = row;
    if (column > lastColumn) lastColumn = column;
  }
  const merged = fillMerged(rows, read.merges, lastRow, lastColumn);
  return {
    name,
    sheet,
    sheets,
    warnings: [...merged, ...formulaWarnings(read.cells)],
    rows: [...rows]
      .sort(([a], [b]) => a - b)
      .map(([number, cells]) => ({ number, cells: Array.from(cells, (cell) => cell ?? NO_CELL) })),
  };
};

/** How much a sheet looks like a survey: its rows, weighed by how many of its headings say something. */
const likeness = (grid: Grid): number => {
  const rows = grid.rows.filter((row) => row.filter((cell) => cell.text !== "").length >= 2).length;
  if (grid.headingRow === undefined) return Math.log1p(rows);
  const sample = { ...grid, rows: grid.rows.slice(0, 40) };
  const told = proposeMapping(sample).filter((column) => column.field !== "unread" && column.confidence >= 0.5).length;
  return Math.log1p(rows) * (1 + told) ** 2;
};

const refusal = (name: string, names: readonly string[]): GridOutcome => {
  if (names.some((part) => /^xl\/workbook\.bin$/i.test(part)))
    return refusedGrid(
      name,
      "binary-workbook",
      "this is a binary workbook (XLSB); open it in a spreadsheet program and save it as XLSX or CSV",
    );
  if (names.some((part) => /^content\.xml$/i.test(part)))
    return refusedGrid(
      name,
      "other-workbook",
      "this is an open-document file; open it and save the sheet as XLSX or CSV",
    );
  return refusedGrid(name, "no-sheet", "this is a zip archive without a worksheet; save the survey as XLSX or CSV");
};

/** A table from a workbook (XLSX): the sheet most like a survey, told when there are several. Nothing is computed; bounds are kept. */
export function workbookGrid(bytes: Uint8Array, name: string): GridOutcome {
  const look = lookIntoZip(bytes);
  if (look.kind === "broken")
    return refusedGrid(
      name,
      "workbook-broken",
      `wanted a whole workbook, got one that is cut short or damaged (${look.why}); copy it again, or ${SAVE_AGAIN}`,
    );
  if (look.kind === "too-big") return refusedGrid(name, "workbook-too-big", look.why);
  let best: { grid: Grid; likeness: number } | undefined;
  let firstRefusal: GridOutcome | undefined;
  let names: string[] = [];
  try {
    const workbook = workbookOf(look.parts);
    const sheets = workbook.sheets.filter((sheet) => sheet.xml !== undefined);
    names = sheets.map((sheet) => sheet.name);
    const shown = sheets.some((sheet) => !sheet.isHidden) ? sheets.filter((sheet) => !sheet.isHidden) : sheets;
    for (const sheet of shown) {
      const read = sheetCellsOf(sheet.xml ?? "", workbook);
      const outcome =
        read.tooFar === undefined
          ? gridOf(tableOf(name, sheet.name, names, read))
          : refusedGrid(
              `${name}, sheet ${sheet.name}, cell ${read.tooFar}`,
              "too-far",
              `wanted at most ${MAX_ROWS} rows and ${MAX_COLUMNS} columns, got a filled cell beyond; clear the cells past the table, or save the table alone as CSV`,
            );
      if (outcome.kind === "refused") {
        firstRefusal ??= outcome;
        continue;
      }
      const found = likeness(outcome.grid);
      if (best === undefined || found > best.likeness) best = { grid: outcome.grid, likeness: found };
    }
  } catch (error) {
    return refusedGrid(
      name,
      "workbook-broken",
      `wanted a whole workbook, got one with a damaged part (${(error as Error).message}); ${SAVE_AGAIN}`,
    );
  }
  if (best === undefined) return firstRefusal ?? refusal(name, look.names);
  const { grid } = best;
  if (names.length < 2) return { kind: "grid", grid };
  const told = {
    place: grid.sheet ?? name,
    code: "several-sheets",
    message: `of the sheets ${names.map((sheet) => `"${sheet}"`).join(", ")} "${grid.sheet}" is read, the one most like a survey; save another one to a file of its own to read it`,
  };
  return { kind: "grid", grid: { ...grid, warnings: [told, ...grid.warnings] } };
}
