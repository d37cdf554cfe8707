import { fileNames, renamedLines, shortNames } from "./file-names.js";
import type { Milp, MilpColumn, MilpRow } from "./milp.js";
import { MilpError } from "./milp-error.js";

/**
 * A model as MPS text. `free` (the usual choice) parts fields by blanks and keeps the names; `fixed` puts fields into the standard's columns under names of
 * eight signs, listed as comments. Ends of every column are written out, since readers differ on what an unbounded whole number means.
 *
 * Throws a `MilpError` `number-too-long` where a number does not fit the twelve signs of the fixed form exactly.
 */
export function writeMps(milp: Milp, form: "free" | "fixed" = "free"): string {
  const columnNames = milp.columns.map((column) => column.name);
  const rowNames = milp.rows.map((row) => row.name);
  const columns = form === "free" ? fileNames(columnNames) : shortNames("C", columnNames.length);
  const rows = form === "free" ? fileNames(rowNames) : shortNames("R", rowNames.length);
  const cost = form === "free" ? unusedName("COST", rows) : "COST";
  const field = form === "free" ? freeLine : fixedLine;
  const entries: [row: string, coefficient: number][][] = milp.columns.map((column) => [[cost, column.cost]]);
  milp.rows.forEach((row, at) => {
    for (const [column, coefficient] of row.terms) entries[column]?.push([rows[at] as string, coefficient]);
  });
  const lines: string[] = [
    ...renamedLines("*", columnNames, columns),
    ...renamedLines("*", rowNames, rows),
    form === "free"
      ? `NAME ${fileNames([milp.name])[0]} FREE`
      : `NAME          ${(fileNames([milp.name])[0] as string).slice(0, 8)}`,
    "ROWS",
    ...[["N", cost], ...milp.rows.map((row, at) => [rowType(row), rows[at]])].map(
      (each) => ` ${each.join(form === "free" ? " " : "  ")}`,
    ),
    "COLUMNS",
  ];
  let isInteger = false;
  let markers = 0;
  const mark = (to: boolean) => {
    if (to === isInteger) return;
    isInteger = to;
    markers += 1;
    lines.push(`    ${`M${markers}`.padEnd(8)}  'MARKER'                 '${to ? "INTORG" : "INTEND"}'`);
  };
  milp.columns.forEach((column, at) => {
    mark(column.isInteger);
    for (const [row, value] of entries[at] ?? []) {
      // A zero cost is written only where nothing else would name the column.
      if (value !== 0 || entries[at]?.length === 1) lines.push(field("", columns[at] as string, row, value));
    }
  });
  mark(false);
  lines.push("RHS");
  milp.rows.forEach((row, at) => {
    const side = rowSide(row);
    if (side !== 0) lines.push(field("", "RHS", rows[at] as string, side));
  });
  const ranged = milp.rows.flatMap((row, at) =>
    isRange(row) ? [field("", "RANGE", rows[at] as string, row.upper - row.lower)] : [],
  );
  if (ranged.length > 0) lines.push("RANGES", ...ranged);
  lines.push("BOUNDS");
  milp.columns.forEach((column, at) => {
    for (const [kind, value] of boundsOf(column)) lines.push(field(kind, "BOUND", columns[at] as string, value));
  });
  return [...lines, "ENDATA", ""].join("\n");
}

const isRange = ({ lower, upper }: MilpRow): boolean => lower !== upper && lower !== -Infinity && upper !== Infinity;

function rowType({ lower, upper }: MilpRow): "E" | "L" | "G" | "N" {
  if (lower === upper) return "E";
  if (upper !== Infinity) return "L";
  return lower === -Infinity ? "N" : "G";
}

function rowSide(row: MilpRow): number {
  const type = rowType(row);
  return type === "N" ? 0 : type === "G" ? row.lower : row.upper;
}

function boundsOf({ lower, upper }: MilpColumn): [kind: string, value: number | undefined][] {
  if (lower === upper) return [["FX", lower]];
  if (lower === -Infinity && upper === Infinity) return [["FR", undefined]];
  return [
    lower === -Infinity ? ["MI", undefined] : ["LO", lower],
    upper === Infinity ? ["PL", undefined] : ["UP", upper],
  ];
}

const unusedName = (name: string, taken: readonly string[]): string =>
  taken.includes(name) ? unusedName(`${name}_`, taken) : name;

const freeLine = (kind: string, name: string, of: string, value: number | undefined): string =>
  ` ${[...(kind === "" ? [] : [kind]), name, of, ...(value === undefined ? [] : [value])].join(" ")}`;

const fixedLine = (kind: string, name: string, of: string, value: number | undefined): string =>
  ` ${kind.padEnd(2)} ${name.padEnd(8)}  ${of.padEnd(8)}  ${value === undefined ? "" : fixedNumber(value)}`.trimEnd();

/** A number in twelve signs that reads back as the same number. */
function fixedNumber(value: number): string {
  const short = [String(value), value.toExponential(), value.toExponential().replace("e+", "e")].find(
    (text) => text.length <= 12 && Number(text) === value,
  );
  if (short !== undefined) return short.padStart(12);
  throw new MilpError("number-too-long", `${value} does not fit the 12 signs of fixed MPS: write the free form`);
}
