import { fileNames, renamedLines } from "./file-names.js";
import type { Milp, MilpColumn } from "./milp.js";

/** One reader breaks lines over 560 characters; every line here stays well below. */
const MOST_SIGNS_IN_LINE = 400;

/**
 * A model as LP text (the common CPLEX form), readable by any general solver. Numbers are written so that they read back exactly. Names that the form
 * cannot carry are changed and listed as comments at the top. A row with two different ends becomes two rows, `NAME.lo` and `NAME.up`, because
 * readers differ on double-sided rows; a row without ends is left out.
 */
export function writeLp(milp: Milp): string {
  const columns = fileNames(milp.columns.map((column) => column.name));
  const names = milp.rows.map((row) => row.name);
  const rows = fileNames(names);
  const used = new Set(rows);
  const part = (row: string, end: string): string => {
    let name = `${row}.${end}`;
    while (used.has(name)) name += "_";
    used.add(name);
    return name;
  };
  const constraints = milp.rows.flatMap(({ lower, upper, terms }, at) => {
    const row = rows[at] as string;
    const one = (name: string, sign: string, end: number) =>
      wrapped(`${name}:`, [...linear(terms, columns), `${sign} ${numeral(end)}`]);
    if (lower === upper) return one(row, "=", lower);
    if (lower === -Infinity) return upper === Infinity ? [] : one(row, "<=", upper);
    if (upper === Infinity) return one(row, ">=", lower);
    return [...one(part(row, "lo"), ">=", lower), ...one(part(row, "up"), "<=", upper)];
  });
  const costs = milp.columns.flatMap((column, at) => (column.cost === 0 ? [] : [[at, column.cost] as const]));
  const isBinary = (column: MilpColumn) => column.isInteger && column.lower === 0 && column.upper === 1;
  const listed = (title: string, holds: (column: MilpColumn) => boolean): string[] => {
    const members = milp.columns.flatMap((column, at) => (holds(column) ? [columns[at] as string] : []));
    return members.length === 0 ? [] : [title, ...wrapped("", members)];
  };
  return [
    `\\ ${milp.name.replace(/\s+/g, " ").slice(0, 300)}`,
    ...renamedLines(
      "\\",
      milp.columns.map((column) => column.name),
      columns,
    ),
    ...renamedLines("\\", names, rows),
    "Minimize",
    ...wrapped("obj:", linear(costs, columns)),
    "Subject To",
    ...(constraints.length > 0 ? constraints : wrapped("none:", [...linear([], columns), "<= 0"])),
    "Bounds",
    ...milp.columns.flatMap((column, at) => (isBinary(column) ? [] : boundLine(columns[at] as string, column))),
    ...listed("General", (column) => column.isInteger && !isBinary(column)),
    ...listed("Binary", isBinary),
    "End",
    "",
  ].join("\n");
}

const numeral = (value: number): string => (Object.is(value, -0) ? "0" : String(value));

function linear(terms: Milp["rows"][number]["terms"], columns: readonly string[]): string[] {
  if (terms.length === 0) return columns.length === 0 ? [] : [`0 ${columns[0]}`];
  return terms.map(([column, coefficient], at) => {
    const sign = coefficient < 0 ? "- " : at === 0 ? "" : "+ ";
    return `${sign}${numeral(Math.abs(coefficient))} ${columns[column]}`;
  });
}

function boundLine(name: string, { lower, upper }: MilpColumn): string {
  if (lower === -Infinity && upper === Infinity) return ` ${name} free`;
  if (lower === upper) return ` ${name} = ${numeral(lower)}`;
  if (upper === Infinity) return ` ${name} >= ${numeral(lower)}`;
  return ` ${lower === -Infinity ? "-inf" : numeral(lower)} <= ${name} <= ${numeral(upper)}`;
}

/** Pieces set into lines that begin with a blank; the first with its head. */
function wrapped(head: string, pieces: readonly string[]): string[] {
  const lines: string[] = [];
  let line = head === "" ? "" : ` ${head}`;
  for (const piece of pieces) {
    if (line.length + piece.length + 1 > MOST_SIGNS_IN_LINE) {
      lines.push(line);
      line = "";
    }
    line += ` ${piece}`;
  }
  return [...lines, line];
}
