import { type BoundChange, type Milp, type MilpSolver, objectiveOf } from "../milp/index.js";
import type { ConflictGroup, GroupedMilp } from "./conflict-group.js";
import { elasticOf } from "./elastic.js";
import type { StopRule } from "./group-tester.js";

/** One thing to be least: so much for each unit of the model's own columns, so much for each group released. Whole numbers. */
export interface ReleaseTier {
  readonly columns?: readonly number[];
  readonly group?: (group: ConflictGroup) => number;
}

/**
 * `released`: with these groups given up there is an answer, and none is cheaper. `impossible`: what may not be released already leaves no answer.
 * `values` are those of the model's own columns; `tiers` what each tier came to.
 */
export type Release =
  | {
      readonly kind: "released";
      readonly groups: readonly ConflictGroup[];
      readonly values: readonly number[];
      readonly tiers: readonly number[];
      readonly solves: number;
    }
  | { readonly kind: "impossible"; readonly solves: number }
  | { readonly kind: "stopped"; readonly solves: number };

/**
 * What is the cheapest way out? Every group that `mayRelease` names may give way; the first tier is made least, then the second without giving up
 * the first, and so on. Last, always, the fewest groups are released. What is physical is never released, whatever `mayRelease` says.
 */
export async function cheapestRelease(
  grouped: GroupedMilp,
  solver: MilpSolver,
  tiers: readonly ReleaseTier[],
  mayRelease: (group: ConflictGroup) => boolean = () => true,
  stop: StopRule = {},
): Promise<Release> {
  const elastic = elasticOf(grouped, (group) => group.nature !== "physical" && mayRelease(group));
  if (elastic === undefined) return { kind: "impossible", solves: 0 };
  const { milp, released } = elastic;
  const costsOf = (tier: ReleaseTier): number[] => {
    const costs = milp.columns.map((_, at) => tier.columns?.[at] ?? 0);
    for (const { group, column } of released) costs[column] = tier.group?.(group) ?? 0;
    return costs;
  };
  const costs = [...tiers, { group: () => 1 }].map(costsOf);
  const withTiers: Milp = {
    ...milp,
    rows: [
      ...milp.rows,
      ...costs.map((cost, t) => ({
        name: `tier ${t}`,
        lower: Number.NEGATIVE_INFINITY,
        upper: Number.POSITIVE_INFINITY,
        terms: cost.flatMap((each, at) => (each === 0 ? [] : [[at, each] as const])),
      })),
    ],
  };
  const session = await solver.open(withTiers);
  const rowBounds: BoundChange[] = [];
  const reached: number[] = [];
  let values: readonly number[] | undefined;
  let solves = 0;
  try {
    for (const [t, cost] of costs.entries()) {
      solves++;
      const answer = await session.solve({
        ...stop,
        costs: cost,
        rowBounds,
        ...(values === undefined ? {} : { start: values }),
      });
      if (answer.status === "infeasible") return { kind: "impossible", solves };
      if (answer.status === "stopped" || answer.values === undefined) return { kind: "stopped", solves };
      values = answer.values;
      const least = objectiveOf(withTiers, values, cost);
      reached.push(least);
      rowBounds.push({ at: milp.rows.length + t, lower: Number.NEGATIVE_INFINITY, upper: least });
    }
  } finally {
    session.close();
  }
  const found = values ?? [];
  return {
    kind: "released",
    groups: released.flatMap(({ group, column }) => ((found[column] ?? 0) > 0.5 ? [group] : [])),
    values: found.slice(0, grouped.milp.columns.length),
    tiers: reached,
    solves,
  };
}
