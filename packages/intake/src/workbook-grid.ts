import type { GridCell, GridWarning } from "@fusebook/core/record";
import { readSheet } from "read-excel-file/universal";
import { columnName } from "./column-name.js";
import { gridOf } from "./grid-of.js";
import { type GridOutcome, refusedGrid } from "./outcome.js";
import { type SheetMarks, sheetMarks, sheetParts } from "./sheet-marks.js";
import { lookIntoZip } from "./zip-look.js";

const textOf = (value: unknown): string => {
  if (value === null || value === undefined) return "";
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  if (typeof value === "number") return String(Math.round(value * 1e10) / 1e10);
  return String(value);
};

const cellCount = (xml: string): number => xml.match(/<c\b/g)?.length ?? 0;

/** The rows of one sheet with their places; merged cells filled and formulas told. */
function rowsOf(data: readonly (readonly unknown[])[], marks: SheetMarks, warnings: GridWarning[]) {
  const cells: GridCell[][] = data.map((row, r) =>
    row.map((value, c) => ({ text: textOf(value), place: `${columnName(c)}${r + 1}` })),
  );
  for (const merge of marks.merged) {
    const first = cells[merge.top - 1]?.[merge.left];
    if (first === undefined || first.text === "") continue;
    for (let r = merge.top - 1; r < merge.bottom; r++)
      for (let c = merge.left; c <= merge.right; c++) {
        const row = cells[r];
        if (row === undefined || (r === merge.top - 1 && c === merge.left)) continue;
        row[c] = { text: first.text, place: `${columnName(c)}${r + 1}` };
      }
    warnings.push({
      place: merge.range,
      code: "merged-cells",
      message: `merged cells: "${first.text}" is taken for each of them; unmerge them if that is wrong`,
    });
  }
  let kept = 0;
  let firstKept = "";
  for (const [place, { formula, hasValue }] of marks.formulas) {
    const match = /^([A-Z]+)(\d+)$/.exec(place);
    const row = cells[Number(match?.[2] ?? 0) - 1];
    const at = row?.findIndex((cell) => cell.place === place) ?? -1;
    const cell = row?.[at];
    if (row === undefined || cell === undefined) continue;
    if (hasValue) {
      row[at] = { ...cell, formula };
      kept += 1;
      firstKept ||= place;
    } else {
      row[at] = {
        text: formula,
        place,
        formula,
        unread:
          "a formula without a kept value: nothing is computed here; type its value, or open and save the file in a spreadsheet program",
      };
      warnings.push({
        place,
        code: "formula-without-value",
        message: `the formula ${formula} has no value kept beside it and is not computed; type its value, or open and save the file in a spreadsheet program`,
      });
    }
  }
  if (kept > 0)
    warnings.push({
      place: firstKept,
      code: "formulas",
      message: `${kept} cells hold formulas; the values kept beside them are used, nothing is computed`,
    });
  return cells.map((row, i) => ({ number: i + 1, cells: row }));
}

/** A table from a workbook (XLSX): the sheet with the most cells, told when there are several. */
export async function workbookGrid(bytes: Uint8Array, name: string): Promise<GridOutcome> {
  const look = lookIntoZip(bytes);
  if (look.kind === "broken")
    return refusedGrid(
      name,
      "workbook-broken",
      `the workbook is cut short or damaged (${look.why}); open it in a spreadsheet program, save it again, or save the sheet as CSV`,
    );
  if (look.kind === "too-big") return refusedGrid(name, "workbook-too-big", look.why);
  const sheets = sheetParts(look.parts);
  const taken = sheets.reduce<(typeof sheets)[number] | undefined>(
    (best, sheet) => (best === undefined || cellCount(sheet.xml) > cellCount(best.xml) ? sheet : best),
    undefined,
  );
  if (taken === undefined)
    return refusedGrid(name, "no-sheet", "this is a zip archive without a worksheet; save the survey as XLSX or CSV");
  const warnings: GridWarning[] = [];
  if (sheets.length > 1)
    warnings.push({
      place: taken.name,
      code: "several-sheets",
      message: `of the sheets ${sheets.map((sheet) => `"${sheet.name}"`).join(", ")} "${taken.name}" is read, the fullest; save another one to a file of its own to read it`,
    });
  let data: readonly (readonly unknown[])[];
  try {
    data = (await readSheet(
      bytes.slice().buffer as ArrayBuffer,
      sheets.indexOf(taken) + 1,
    )) as readonly (readonly unknown[])[];
  } catch (error) {
    return refusedGrid(
      `${name}, sheet ${taken.name}`,
      "workbook-broken",
      `the sheet cannot be read (${(error as Error).message}); open the file in a spreadsheet program, save it again, or save the sheet as CSV`,
    );
  }
  return gridOf({
    name,
    rows: rowsOf(data, sheetMarks(taken.xml), warnings),
    warnings,
    sheets: sheets.map((sheet) => sheet.name),
    sheet: taken.name,
  });
}
