import type { GridWarning } from "@fusebook/core/record";
import { columnName } from "./column-name.js";
import type { RawCell } from "./raw-table.js";
import type { Merge } from "./sheet-cells.js";

const MAX_TOLD = 50;

/**
 * Fills merged cells with the text of their first one, within the table, and tells. Headings are filled to the right and down; rows of the table keep
 * only what is filled down (see grid-of): a word written across three columns is not three figures.
 */
export function fillMerged(
  rows: Map<number, RawCell[]>,
  merges: readonly Merge[],
  lastRow: number,
  lastColumn: number,
): GridWarning[] {
  const warnings: GridWarning[] = [];
  let filled = 0;
  for (const merge of merges) {
    const first = rows.get(merge.top)?.[merge.left];
    if (first === undefined || first.text.trim() === "") continue;
    filled += 1;
    if (filled <= MAX_TOLD)
      warnings.push({
        place: merge.range,
        code: "merged-cells",
        message: `"${first.text}" stands in merged cells and is taken for each of them that needs it; unmerge them if that is wrong`,
      });
    for (let row = merge.top; row <= Math.min(merge.bottom, lastRow); row += 1) {
      const cells = rows.get(row) ?? [];
      rows.set(row, cells);
      for (let column = merge.left; column <= Math.min(merge.right, lastColumn); column += 1)
        if ((cells[column]?.text ?? "") === "" && !(row === merge.top && column === merge.left))
          cells[column] = {
            ...first,
            place: `${columnName(column)}${row}`,
            fill: column > merge.left ? "right" : "down",
          };
    }
  }
  if (filled > MAX_TOLD)
    warnings.push({
      place: "",
      code: "merged-cells",
      message: `${filled - MAX_TOLD} more ranges of merged cells were filled in the same way`,
    });
  return warnings;
}
