import { type Milp, type MilpColumn, MilpError, type MilpRow } from "../milp/index.js";
import { boundsUnder, type ConflictGroup, type GroupedMilp } from "./conflict-group.js";

/** A model in which groups may be released: the model's columns come first, in their order. */
export interface ElasticMilp {
  readonly milp: Milp;
  /** Groups that may be released, each with the column that is 1 where it is. */
  readonly released: readonly { readonly group: ConflictGroup; readonly column: number }[];
}

const OPEN = Number.POSITIVE_INFINITY;

/** The least and the most that a row can come to, from the ends of its columns. */
function reachOf(milp: Milp, row: MilpRow): { readonly least: number; readonly most: number } {
  let least = 0;
  let most = 0;
  for (const [column, coefficient] of row.terms) {
    const { lower = 0, upper = 0 } = milp.columns[column] ?? {};
    least += coefficient > 0 ? coefficient * lower : coefficient * upper;
    most += coefficient > 0 ? coefficient * upper : coefficient * lower;
  }
  return { least, most };
}

/**
 * The model with every group holding, but that each group in `mayRelease` gives way as a whole where its release column is 1. What a released row may then come to is
 * what the ends of its columns allow: no figure is invented. Undefined where what is held leaves no room between its own ends. Refuses (`model-not-readable`) a group whose columns have no ends.
 */
export function elasticOf(
  grouped: GroupedMilp,
  mayRelease: (group: ConflictGroup) => boolean,
): ElasticMilp | undefined {
  const held = boundsUnder(
    grouped,
    grouped.groups.filter((group) => !mayRelease(group)),
  );
  const columns: MilpColumn[] = grouped.milp.columns.map((column) => ({ ...column, cost: 0 }));
  const rows: MilpRow[] = [...grouped.milp.rows];
  if (held.isClash) return undefined;
  for (const { at, lower, upper } of held.columnBounds) columns[at] = { ...(columns[at] as MilpColumn), lower, upper };
  for (const { at, lower, upper } of held.rowBounds) rows[at] = { ...(rows[at] as MilpRow), lower, upper };
  const bounded: Milp = { ...grouped.milp, columns: [...columns], rows: [...rows] };
  const released: { group: ConflictGroup; column: number }[] = [];
  grouped.groups.filter(mayRelease).forEach((group, g) => {
    const column = columns.length;
    columns.push({ name: `release ${g}`, group: group.name, cost: 0, lower: 0, upper: 1, isInteger: true });
    released.push({ group, column });
    const giving = (row: MilpRow, lower: number, upper: number, name: string): void => {
      const { least, most } = reachOf(bounded, row);
      if (upper < most) rows.push(gives(group, `${name} at most`, row, -OPEN, upper, [column, upper - most]));
      if (lower > least) rows.push(gives(group, `${name} at least`, row, lower, OPEN, [column, lower - least]));
    };
    group.rows.forEach(({ at, lower, upper }, i) => {
      giving(bounded.rows[at] as MilpRow, lower, upper, `give ${g} row ${i}`);
    });
    group.columns.forEach(({ at, lower, upper }, i) => {
      giving({ name: "", lower: -OPEN, upper: OPEN, terms: [[at, 1]] }, lower, upper, `give ${g} column ${i}`);
    });
  });
  return { milp: { name: `${grouped.milp.name} released`, columns, rows }, released };
}

function gives(
  group: ConflictGroup,
  name: string,
  row: MilpRow,
  lower: number,
  upper: number,
  release: readonly [number, number],
): MilpRow {
  if (!Number.isFinite(release[1]))
    throw new MilpError(
      "model-not-readable",
      `${group.name}: a column of ${row.name || name} has no end, so its release has no size; give it one`,
    );
  return { name, group: group.name, lower, upper, terms: [...row.terms, release] };
}
