import type { BoundChange, Milp } from "../milp/index.js";

/**
 * What a group of bounds is to the people it is told to. `wish`: something asked of the plan. `choice`: budget, minutes, a lock, a kind ruled out, a wire left where
 * it is: somebody may choose otherwise. `physical`: ratings, blocks, fuses, detectors, the harness; never released.
 */
export type GroupNature = "wish" | "choice" | "physical";

/** Bounds of a model that stand or fall together, under one name. */
export interface ConflictGroup {
  readonly name: string;
  readonly nature: GroupNature;
  /** Bounds on rows while the group holds; each at least as tight as the model's own. */
  readonly rows: readonly BoundChange[];
  /** Bounds on columns while the group holds; each at least as tight as the model's own. */
  readonly columns: readonly BoundChange[];
}

/** A model with none of its groups holding, and the groups. What is in no group always holds. */
export interface GroupedMilp {
  readonly milp: Milp;
  readonly groups: readonly ConflictGroup[];
}

const OPEN = Number.POSITIVE_INFINITY;

/**
 * The model with every row that carries a group taken as that group's bound, in the order the groups first appear.
 * Rows whose group `natureOf` does not know, and all columns, stay as they are.
 */
export function groupedByRows(milp: Milp, natureOf: (group: string) => GroupNature | undefined): GroupedMilp {
  const rows = new Map<string, BoundChange[]>();
  const open = milp.rows.map((row, at) => {
    if (row.group === undefined || natureOf(row.group) === undefined) return row;
    const bounds = rows.get(row.group) ?? [];
    bounds.push({ at, lower: row.lower, upper: row.upper });
    rows.set(row.group, bounds);
    return { ...row, lower: -OPEN, upper: OPEN };
  });
  return {
    milp: { ...milp, rows: open },
    groups: [...rows].map(([name, bounds]) => ({
      name,
      nature: natureOf(name) ?? "physical",
      rows: bounds,
      columns: [],
    })),
  };
}

/** Several bounds on one place at once: the tightest of them and the model's own. */
function together(
  own: readonly { readonly lower: number; readonly upper: number }[],
  bounds: readonly BoundChange[],
): BoundChange[] {
  const joined = new Map<number, BoundChange>();
  for (const { at, lower, upper } of bounds) {
    const before = joined.get(at) ?? own[at] ?? { lower: -OPEN, upper: OPEN };
    joined.set(at, { at, lower: Math.max(before.lower, lower), upper: Math.min(before.upper, upper) });
  }
  return [...joined.values()];
}

/** What the model is asked when these groups hold; `isClash`: two of them leave no room between their ends, so there is no answer to ask for. */
export function boundsUnder(
  grouped: GroupedMilp,
  groups: readonly ConflictGroup[],
): { readonly rowBounds: BoundChange[]; readonly columnBounds: BoundChange[]; readonly isClash: boolean } {
  const rowBounds = together(
    grouped.milp.rows,
    groups.flatMap((group) => group.rows),
  );
  const columnBounds = together(
    grouped.milp.columns,
    groups.flatMap((group) => group.columns),
  );
  return {
    rowBounds,
    columnBounds,
    isClash: [...rowBounds, ...columnBounds].some(({ lower, upper }) => lower > upper),
  };
}
