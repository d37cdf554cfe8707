import type { Effort, HeldColumn } from "./columns.js";
import type { Prepared } from "./prepared.js";

const TOLERANCE = 1e-7;

/** Between two modules: which circuits of the one before the next must still take, and which of its own the one before has taken. */
export interface Border {
  readonly uncovered: number;
  readonly covered: number;
}

export interface Ending extends Border {
  /** Least slack with which the rest of the row can be completed. */
  slack: number;
  /** Least cost (places not counted), highest value and fewest wires of any completion, each by itself. */
  cost: number;
  value: number;
  wires: number;
}

export const grouped = (
  columns: readonly HeldColumn[],
  maskOf: (column: HeldColumn) => number,
): Map<number, HeldColumn[]> => {
  const groups = new Map<number, HeldColumn[]>();
  for (const column of columns) {
    const mask = maskOf(column);
    const list = groups.get(mask);
    if (list === undefined) groups.set(mask, [column]);
    else list.push(column);
  }
  return groups;
};

/**
 * From the far end back: for each border (by `uncovered * 2^size + covered`) how the rest of the row can best be completed. Borders that cannot be completed within
 * `gap` are not in the map; `endings[m]` stands before module `m`. Undefined where the effort runs out.
 */
export function endingsOf(
  prepared: Prepared,
  columns: readonly (readonly HeldColumn[])[],
  gap: number,
  effort: Effort,
): Map<number, Ending>[] | undefined {
  const count = columns.length;
  const endings: Map<number, Ending>[] = Array.from({ length: count + 1 }, () => new Map());
  endings[count]?.set(0, { uncovered: 0, covered: 0, slack: 0, cost: 0, value: 0, wires: 0 });
  for (let m = count - 1; m >= 0; m--) {
    const whole = prepared.whole[m] ?? 0;
    const scale = 2 ** (prepared.size[m] ?? 0);
    const byRight = grouped(columns[m] ?? [], (column) => column.right);
    const here = endings[m] as Map<number, Ending>;
    for (const after of (endings[m + 1] as Map<number, Ending>).values())
      for (const column of byRight.get(after.covered) ?? []) {
        const slack = after.slack + column.slack;
        if (slack > gap + TOLERANCE) break;
        if ((column.own & after.uncovered) !== 0) continue;
        if (--effort.left <= 0) return undefined;
        const covered = whole & ~column.own & ~after.uncovered;
        const key = column.left * scale + covered;
        const known = here.get(key);
        const cost = after.cost + column.cost;
        const value = after.value + column.value;
        const wires = after.wires + column.wires;
        if (known === undefined) here.set(key, { uncovered: column.left, covered, slack, cost, value, wires });
        else {
          known.slack = Math.min(known.slack, slack);
          known.cost = Math.min(known.cost, cost);
          known.value = Math.max(known.value, value);
          known.wires = Math.min(known.wires, wires);
        }
      }
  }
  return endings;
}
