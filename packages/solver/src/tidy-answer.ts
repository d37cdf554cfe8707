import { type Milp, type MilpRequest, violationsOf } from "@fusebook/core/plan";

/** A tolerance for rows after rounding: the solver's own is 1e-6 absolute. */
const ROW_TOLERANCE_RATIO = 1e-6;

/** Values with whole-number columns rounded (binaries too) and the others held inside their ends; `-0` becomes `0`. */
export function tidyValues(
  milp: Milp,
  values: ArrayLike<number>,
  columnBounds: MilpRequest["columnBounds"] = [],
): number[] {
  const changed = new Map(columnBounds.map((change) => [change.at, change]));
  return milp.columns.map((column, at) => {
    const value = values[at] ?? 0;
    const { lower, upper } = changed.get(at) ?? column;
    return (column.isInteger ? Math.round(value) : Math.min(upper, Math.max(lower, value))) + 0;
  });
}

/** True where tidied values still keep every row and column. */
export const holds = (milp: Milp, values: readonly number[], request: MilpRequest): boolean =>
  values.length === milp.columns.length && violationsOf(milp, values, request, ROW_TOLERANCE_RATIO).length === 0;
