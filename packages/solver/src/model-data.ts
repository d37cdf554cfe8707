import type { Milp } from "@fusebook/core/plan";
import type { Highs, ModelData } from "highs";

const whole = (highs: Highs, isInteger: boolean) =>
  isInteger ? highs.constants.variableType.integer : highs.constants.variableType.continuous;

/** A model in the solver's own arrays, rows packed one after the other. Names stay outside: the solver needs none. */
export function modelDataOf(highs: Highs, milp: Milp): ModelData {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of milp.rows) {
    for (const [column, coefficient] of row.terms) {
      if (coefficient === 0) continue;
      indices.push(column);
      values.push(coefficient);
    }
    starts.push(indices.length);
  }
  const numCols = milp.columns.length;
  const numRows = milp.rows.length;
  return {
    numCols,
    numRows,
    colCost: milp.columns.map((column) => column.cost),
    colLower: milp.columns.map((column) => column.lower),
    colUpper: milp.columns.map((column) => column.upper),
    rowLower: milp.rows.map((row) => row.lower),
    rowUpper: milp.rows.map((row) => row.upper),
    integrality: milp.columns.map((column) => whole(highs, column.isInteger)),
    matrix: {
      format: "csr",
      numRows,
      numCols,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(indices),
      values: Float64Array.from(values),
    },
  };
}
