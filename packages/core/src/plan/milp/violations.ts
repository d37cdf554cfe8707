import type { Milp } from "./milp.js";
import type { MilpRequest } from "./milp-solver.js";

/** One row or column that a set of values breaks, and by how much. */
export interface Violation {
  readonly kind: "column" | "row" | "not-whole";
  readonly name: string;
  readonly by: number;
}

/**
 * Which rows and columns a set of values breaks, one value for each column. A row may be off by `toleranceRatio` of the sum of the sizes of its terms
 * (at least of 1): the rounding of doubles, not a concession.
 */
export function violationsOf(
  milp: Milp,
  values: readonly number[],
  changes: Pick<MilpRequest, "rowBounds" | "columnBounds"> = {},
  toleranceRatio = 1e-7,
): Violation[] {
  const found: Violation[] = [];
  const columnEnds = new Map((changes.columnBounds ?? []).map((change) => [change.at, change]));
  const rowEnds = new Map((changes.rowBounds ?? []).map((change) => [change.at, change]));
  milp.columns.forEach((column, at) => {
    const value = values[at] ?? Number.NaN;
    const { lower, upper } = columnEnds.get(at) ?? column;
    const by = Math.max(lower - value, value - upper);
    if (!(by <= toleranceRatio * Math.max(1, Math.abs(value)))) found.push({ kind: "column", name: column.name, by });
    const off = Math.abs(value - Math.round(value));
    if (column.isInteger && off > 1e-6) found.push({ kind: "not-whole", name: column.name, by: off });
  });
  milp.rows.forEach((row, at) => {
    let activity = 0;
    let size = 1;
    for (const [column, coefficient] of row.terms) {
      const term = coefficient * (values[column] ?? Number.NaN);
      activity += term;
      size += Math.abs(term);
    }
    const { lower, upper } = rowEnds.get(at) ?? row;
    const by = Math.max(lower - activity, activity - upper);
    if (!(by <= toleranceRatio * size)) found.push({ kind: "row", name: row.name, by });
  });
  return found;
}

/** `sum(cost * value)`. Exact where costs and values are whole numbers. */
export const objectiveOf = (milp: Milp, values: readonly number[], costs?: readonly number[]): number =>
  milp.columns.reduce((sum, column, at) => sum + (costs?.[at] ?? column.cost) * (values[at] ?? 0), 0);
