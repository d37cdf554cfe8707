/** One cell of a survey, as text, with the place a person finds it at. */
export interface Cell {
  readonly text: string;
  /** `B7` in a workbook, `line 12, column 3` in a text; empty for a cell that is not there. */
  readonly place: string;
  /** The formula it holds; its text is the value kept beside the formula. Never computed. */
  readonly formula?: string;
  /** Why its text could not be got out of the file; such a cell is told and kept as unread. */
  readonly unread?: string;
}

/** Something about the file that a person should know, with its place and what was done. */
export interface GridWarning {
  readonly place: string;
  readonly code: string;
  readonly message: string;
}

/** A table as it came out of a file, before anything in it is understood. Rows that are wholly empty are left out. */
export interface Grid {
  /** Name of the file, without its folder. */
  readonly name: string;
  /** Sheets of the workbook, and the one taken. */
  readonly sheets?: readonly string[];
  readonly sheet?: string;
  /** Line or row number of the headings, from 1; undefined where the table has none. */
  readonly headingRow: number | undefined;
  /** One for each column; `column C` where it has no heading of its own. */
  readonly headings: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** What stood above the headings, in reading order. */
  readonly above: readonly Cell[];
  /** The sign between whole and fraction, as the file uses it. */
  readonly decimalSign: "." | ",";
  readonly warnings: readonly GridWarning[];
}

export const NO_CELL: Cell = { text: "", place: "" };
