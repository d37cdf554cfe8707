import type { GridCell, GridWarning } from "@fusebook/core/record";

/** A cell as it came out of the file. `fill`: its text is that of a merged cell to its left, or above. */
export interface RawCell extends GridCell {
  readonly fill?: "right" | "down";
}

export interface RawRow {
  readonly number: number;
  readonly cells: readonly RawCell[];
}

/** A table before its headings are found. */
export interface RawTable {
  readonly name: string;
  readonly rows: readonly RawRow[];
  readonly warnings: readonly GridWarning[];
  readonly sheets?: readonly string[];
  readonly sheet?: string;
}
