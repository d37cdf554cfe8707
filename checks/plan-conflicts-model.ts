import {
  type BoundChange,
  boundsUnder,
  type ConflictGroup,
  type GroupedMilp,
  type GroupNature,
} from "@fusebook/core/plan";
import type { Chance } from "@fusebook/fixtures";

/** Every whole point of a small model, kept by rows and columns written out here again. */
export function* pointsOf(grouped: GroupedMilp): Generator<number[]> {
  const { columns } = grouped.milp;
  const point = columns.map((column) => column.lower);
  for (;;) {
    yield [...point];
    let at = 0;
    while (at < point.length && point[at] === columns[at]!.upper) {
      point[at] = columns[at]!.lower;
      at++;
    }
    if (at === point.length) return;
    point[at]!++;
  }
}

const activity = (grouped: GroupedMilp, row: number, point: readonly number[]): number =>
  grouped.milp.rows[row]!.terms.reduce((sum, [column, coefficient]) => sum + coefficient * point[column]!, 0);

const within = (value: number, { lower, upper }: { lower: number; upper: number }): boolean =>
  value >= lower && value <= upper;

/** Does this point keep what always holds? */
export const keepsModel = (grouped: GroupedMilp, point: readonly number[]): boolean =>
  grouped.milp.rows.every((row, at) => within(activity(grouped, at, point), row));

/** Does this point keep this group? */
export const keepsGroup = (grouped: GroupedMilp, group: ConflictGroup, point: readonly number[]): boolean =>
  group.rows.every((bound) => within(activity(grouped, bound.at, point), bound)) &&
  group.columns.every((bound) => within(point[bound.at]!, bound));

/** For each point that keeps the model: which groups it keeps, as bits. All sets of groups that can hold are parts of these. */
export function keptSets(grouped: GroupedMilp): { readonly point: number[]; readonly kept: number }[] {
  const found: { point: number[]; kept: number }[] = [];
  for (const point of pointsOf(grouped)) {
    if (!keepsModel(grouped, point)) continue;
    const kept = grouped.groups.reduce((bits, group, g) => bits + (keepsGroup(grouped, group, point) ? 2 ** g : 0), 0);
    found.push({ point, kept });
  }
  return found;
}

/** A small model with groups of rows and columns, wide enough to have an answer while no group holds. */
export function seededModel(chance: Chance, most: { columns: number; upper: number; groups: number }): GroupedMilp {
  const columns = Array.from({ length: chance.whole(3, most.columns) }, (_, at) => ({
    name: `x${at}`,
    cost: chance.whole(-5, 9),
    lower: 0,
    upper: chance.whole(1, most.upper),
    isInteger: true,
  }));
  const anyTerms = (): [number, number][] => {
    const terms = columns.flatMap((_, at): [number, number][] => {
      const coefficient = chance.is(0.5) ? chance.whole(-4, 6) : 0;
      return coefficient === 0 ? [] : [[at, coefficient]];
    });
    return terms.length > 0 ? terms : [[0, 1]];
  };
  const rows: { name: string; lower: number; upper: number; terms: [number, number][] }[] = [];
  const reach = (terms: [number, number][]) => ({
    least: terms.reduce((sum, [at, each]) => sum + Math.min(0, each * columns[at]!.upper), 0),
    most: terms.reduce((sum, [at, each]) => sum + Math.max(0, each * columns[at]!.upper), 0),
  });
  const open = { lower: Number.NEGATIVE_INFINITY, upper: Number.POSITIVE_INFINITY };
  // What always holds leaves the point of all zeros.
  if (chance.is(0.5)) rows.push({ name: "always", ...open, upper: chance.whole(0, 6), terms: anyTerms() });
  const groups: ConflictGroup[] = Array.from({ length: chance.whole(4, most.groups) }, (_, g) => {
    const own: BoundChange[] = [];
    const ends: BoundChange[] = [];
    for (let i = 0; i < chance.whole(1, 2); i++) {
      const terms = anyTerms();
      const { least, most: highest } = reach(terms);
      const middle = chance.whole(least, highest);
      rows.push({ name: `r${g}.${i}`, ...open, terms });
      own.push(
        chance.is(0.5)
          ? { at: rows.length - 1, ...open, lower: middle }
          : chance.is(0.8)
            ? { at: rows.length - 1, ...open, upper: middle }
            : { at: rows.length - 1, lower: middle, upper: Math.min(highest, middle + 1) },
      );
    }
    if (chance.is(0.25)) {
      const at = chance.whole(0, columns.length - 1);
      const end = chance.whole(0, columns[at]!.upper);
      ends.push(chance.is(0.5) ? { at, lower: end, upper: columns[at]!.upper } : { at, lower: 0, upper: end });
    }
    return {
      name: `g${g}`,
      nature: chance.pick<GroupNature>(["wish", "choice", "physical"]),
      rows: own,
      columns: ends,
    };
  });
  return { milp: { name: "seeded", columns, rows }, groups };
}

/** The same set of groups for a second solver: a plain model with their bounds put in. Undefined where two ends cross. */
export function heldModel(grouped: GroupedMilp, groups: readonly ConflictGroup[]): GroupedMilp["milp"] | undefined {
  const { rowBounds, columnBounds, isClash } = boundsUnder(grouped, groups);
  if (isClash) return undefined;
  const rows = [...grouped.milp.rows];
  const columns = [...grouped.milp.columns];
  for (const { at, lower, upper } of rowBounds) rows[at] = { ...rows[at]!, lower, upper };
  for (const { at, lower, upper } of columnBounds) columns[at] = { ...columns[at]!, lower, upper };
  return { ...grouped.milp, rows, columns };
}
