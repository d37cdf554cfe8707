import { type How, Invariant, type Source } from "../quantity/index.js";

/** One cell of a published table; null where the table leaves it empty. */
export type Cell = string | number | null;

/** Where a table comes from, and through what it was read. */
export interface TableSource {
  readonly name: string;
  readonly edition?: string;
  readonly clause?: string;
  readonly how: How;
  /** What was opened to read it, or that nothing was. */
  readonly where: string;
}

/** A published table as data. A column named `how` says for each row how that row is known; it wins over the table's own `how`. */
export interface PublishedTable {
  readonly id: string;
  readonly title: string;
  readonly source: TableSource;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  readonly notes: readonly string[];
}

/** Something published, with its source beside it. */
export interface Sourced<T> {
  readonly value: T;
  readonly source: Source;
}

/** A published figure looked up: an `Outcome` whose known side also says where the figure comes from. */
export type Published<T> =
  | ({ readonly kind: "known" } & Sourced<T>)
  | { readonly kind: "refused"; readonly code: string; readonly because: string };

export const published = <T>(value: T, source: Source): Published<T> => ({ kind: "known", value, source });
export const notPublished = (code: string, because: string): Published<never> => ({ kind: "refused", code, because });

/** The place of a column. Throws `Invariant` where the table has none of that name: that is a fault of our code. */
export const columnOf = (table: PublishedTable, name: string): number => {
  const at = table.columns.indexOf(name);
  if (at < 0) throw new Invariant("table-column", `table ${table.id} has no column ${name}`);
  return at;
};

/** The number in a cell; undefined where the cell is empty or holds words. */
export const numberAt = (table: PublishedTable, row: readonly Cell[], column: string): number | undefined => {
  const cell = row[columnOf(table, column)];
  return typeof cell === "number" ? cell : undefined;
};

/** The weakest claim in a `how` cell: one that says memory anywhere is memory. */
const howOfCell = (cell: string): How => {
  if (cell.includes("memory")) return "memory";
  return cell.includes("computed") ? "computed" : "seen";
};

/** How one row is known: its own `how` where the table has such a column, else the table's. */
export const howOfRow = (table: PublishedTable, row: readonly Cell[]): How => {
  const at = table.columns.indexOf("how");
  const cell = at < 0 ? undefined : row[at];
  return typeof cell === "string" ? howOfCell(cell) : table.source.how;
};

/** The source to name beside a figure of this table, or of one of its rows. */
export const sourceFor = (table: PublishedTable, row?: readonly Cell[], clause?: string): Source => {
  const named = clause ?? table.source.clause;
  return {
    id: table.id,
    name: table.source.name,
    ...(table.source.edition === undefined ? {} : { edition: table.source.edition }),
    ...(named === undefined ? {} : { clause: named }),
    how: row === undefined ? table.source.how : howOfRow(table, row),
  };
};

/** Is the number in the band a cell prints: "4-6", "41+", "3"? A number between two whole bands belongs to the upper one. */
export const isInBand = (cell: Cell | undefined, value: number): boolean => {
  if (typeof cell === "number") return cell === value;
  const open = /^(\d+)\+$/.exec(cell ?? "");
  if (open) return value > Number(open[1]) - 1;
  const closed = /^(\d+)-(\d+)$/.exec(cell ?? "");
  if (closed) return value > Number(closed[1]) - 1 && value <= Number(closed[2]);
  return cell === String(value);
};
