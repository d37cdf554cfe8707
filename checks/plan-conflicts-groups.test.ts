import {
  cheapestRelease,
  type GroupedMilp,
  groupedByRows,
  groupTester,
  type Milp,
  type MilpSolver,
  smallestConflict,
} from "@fusebook/core/plan";
import { chanceOf } from "@fusebook/fixtures";
import { highsSolver } from "@fusebook/solver";
import GLPK, { type LP } from "glpk.js/node";
import { afterAll, describe, expect, it } from "vitest";
import { heldModel, keptSets, seededModel } from "./plan-conflicts-model.js";

/** Conflicts and releases of seeded models against every set of groups there is, and against a second solver. */

const solver: MilpSolver = highsSolver();
afterAll(() => solver.close());

async function conflictOf(grouped: GroupedMilp) {
  const session = await solver.open(grouped.milp);
  try {
    return await smallestConflict(groupTester(grouped, session), grouped.groups);
  } finally {
    session.close();
  }
}

const OPEN = Number.POSITIVE_INFINITY;
const whole = (name: string) => ({ name, cost: 0, lower: 0, upper: 10, isInteger: true });

/** "iis-small": whole x, y from 0 to 10; x+y>=8, x<=3, y<=4, x>=y, y>=5. Its smallest conflicts were found by trying all 32 sets. */
const iisSmall: Milp = {
  name: "iis-small",
  columns: [whole("x"), whole("y")],
  rows: [
    {
      name: "c1",
      group: "c1",
      lower: 8,
      upper: OPEN,
      terms: [
        [0, 1],
        [1, 1],
      ],
    },
    { name: "c2", group: "c2", lower: -OPEN, upper: 3, terms: [[0, 1]] },
    { name: "c3", group: "c3", lower: -OPEN, upper: 4, terms: [[1, 1]] },
    {
      name: "c4",
      group: "c4",
      lower: 0,
      upper: OPEN,
      terms: [
        [0, 1],
        [1, -1],
      ],
    },
    { name: "c5", group: "c5", lower: 5, upper: OPEN, terms: [[1, 1]] },
  ],
};
const ALL_SMALLEST = ["c3 c5", "c1 c2 c3", "c1 c2 c4", "c2 c4 c5"];

describe("a conflict in a small model that is known in full", () => {
  it("is one of its four smallest conflicts, whatever order the rows come in", async () => {
    for (const order of [
      [0, 1, 2, 3, 4],
      [4, 3, 2, 1, 0],
      [2, 0, 4, 1, 3],
    ]) {
      const conflict = await conflictOf(
        groupedByRows({ ...iisSmall, rows: order.map((at) => iisSmall.rows[at]!) }, () => "choice"),
      );
      const names = conflict.kind === "conflict" ? conflict.groups.map((group) => group.name) : [];
      expect(ALL_SMALLEST).toContain([...names].sort().join(" "));
    }
  });

  it("names what may be chosen where that alone is a conflict", async () => {
    const physical = new Set(["c2", "c4"]);
    const conflict = await conflictOf(
      groupedByRows(iisSmall, (group) => (physical.has(group) ? "physical" : "choice")),
    );
    expect(conflict.kind === "conflict" && conflict.groups.map((group) => group.name)).toEqual(["c3", "c5"]);
  });

  it("is released by the two rows that leave the largest set that can hold", async () => {
    // Source as above: the largest sets that can hold have three members.
    const release = await cheapestRelease(
      groupedByRows(iisSmall, () => "choice"),
      solver,
      [],
    );
    expect(release.kind === "released" && release.groups.length).toBe(2);
  });
});

const glpk = await GLPK();
const BOUND = (lower: number, upper: number) =>
  upper === OPEN ? { type: glpk.GLP_LO, lb: lower, ub: 0 } : { type: glpk.GLP_UP, lb: 0, ub: upper };

/** Whether a second solver finds any answer. */
function secondOpinion(milp: Milp): boolean {
  const lp: LP = {
    name: milp.name,
    objective: { direction: glpk.GLP_MIN, name: "none", vars: milp.columns.map(({ name }) => ({ name, coef: 0 })) },
    // A row with two ends is given as two: with both on a row of one column this solver's presolve answered with a point that breaks it.
    subjectTo: milp.rows.flatMap((row) =>
      [
        { name: `${row.name} least`, lower: row.lower, upper: OPEN },
        { name: `${row.name} most`, lower: -OPEN, upper: row.upper },
      ]
        .filter(({ lower, upper }) => lower !== -OPEN || upper !== OPEN)
        .map(({ name, lower, upper }) => ({
          name,
          vars: row.terms.map(([at, coef]) => ({ name: milp.columns[at]!.name, coef })),
          bnds: BOUND(lower, upper),
        })),
    ),
    bounds: milp.columns.map(({ name, lower, upper }) => ({
      name,
      ...(lower === upper ? { type: glpk.GLP_FX, lb: lower, ub: upper } : { type: glpk.GLP_DB, lb: lower, ub: upper }),
    })),
    generals: milp.columns.map(({ name }) => name),
  };
  const { status } = glpk.solve(lp, { msglev: glpk.GLP_MSG_OFF }).result;
  return status === glpk.GLP_OPT || status === glpk.GLP_FEAS;
}

const TINY = 150;
const LARGER = 40;

describe("conflicts of seeded models", () => {
  it(`cannot hold, and can without any one group, on ${TINY} models searched point by point`, async () => {
    const tally = { infeasible: 0, withPhysical: 0, sizes: new Map<number, number>() };
    for (let seed = 1; tally.infeasible < TINY; seed++) {
      const grouped = seededModel(chanceOf(seed), { columns: 5, upper: 3, groups: 9 });
      const kept = keptSets(grouped).map((each) => each.kept);
      const canHold = (bits: number) => kept.some((set) => (set & bits) === bits);
      const bitsOf = (takes: (g: number) => boolean) =>
        grouped.groups.reduce((bits, _, g) => bits + (takes(g) ? 2 ** g : 0), 0);
      const conflict = await conflictOf(grouped);
      if (canHold(bitsOf(() => true))) {
        expect(conflict.kind, `seed ${seed}`).toBe("none");
        continue;
      }
      tally.infeasible++;
      if (conflict.kind !== "conflict") throw new Error(`seed ${seed}: ${conflict.kind}`);
      const named = new Set(conflict.groups);
      const bits = bitsOf((g) => named.has(grouped.groups[g]!));
      expect(canHold(bits), `seed ${seed}: the set named`).toBe(false);
      for (const left of named)
        expect(
          canHold(bitsOf((g) => named.has(grouped.groups[g]!) && grouped.groups[g] !== left)),
          `seed ${seed} without ${left.name}`,
        ).toBe(true);
      const chosenAlone = canHold(bitsOf((g) => grouped.groups[g]!.nature !== "physical"));
      const namesPhysical = conflict.groups.some((group) => group.nature === "physical");
      // Physical groups are named only where nothing else explains it.
      expect(namesPhysical, `seed ${seed}`).toBe(chosenAlone);
      if (namesPhysical) tally.withPhysical++;
      tally.sizes.set(named.size, (tally.sizes.get(named.size) ?? 0) + 1);
    }
    expect(tally.withPhysical).toBeGreaterThan(10);
    expect(tally.withPhysical).toBeLessThan(TINY - 10);
    expect(tally.sizes.size).toBeGreaterThan(2);
  });

  it(`are judged alike by a second solver on ${LARGER} larger models`, async () => {
    for (let seed = 1001, infeasible = 0; infeasible < LARGER; seed++) {
      const grouped = seededModel(chanceOf(seed), { columns: 14, upper: 4, groups: 20 });
      const canHold = (groups: GroupedMilp["groups"]): boolean => {
        const milp = heldModel(grouped, groups);
        return milp !== undefined && secondOpinion(milp);
      };
      const conflict = await conflictOf(grouped);
      expect(conflict.kind, `seed ${seed}`).toBe(canHold(grouped.groups) ? "none" : "conflict");
      if (conflict.kind !== "conflict") continue;
      infeasible++;
      expect(canHold(conflict.groups), `seed ${seed}`).toBe(false);
      for (const left of conflict.groups)
        expect(canHold(conflict.groups.filter((group) => group !== left)), `seed ${seed} without ${left.name}`).toBe(
          true,
        );
    }
  });
});

describe("the cheapest release of seeded models", () => {
  it("gives an answer at the price stated, and nothing cheaper does, on 100 models searched point by point", async () => {
    const tally = { released: 0, impossible: 0 };
    for (let seed = 5001; tally.released < 100; seed++) {
      const chance = chanceOf(seed);
      const grouped = seededModel(chance, { columns: 5, upper: 3, groups: 8 });
      const points = keptSets(grouped);
      const all = 2 ** grouped.groups.length - 1;
      if (points.some((each) => each.kept === all)) continue;
      const prices = grouped.groups.map(() => chance.whole(0, 6));
      const costs = grouped.milp.columns.map((column) => column.cost);
      const priceOf = (name: string) => prices[grouped.groups.findIndex((group) => group.name === name)]!;
      const release = await cheapestRelease(grouped, solver, [
        { group: (group) => (group.nature === "wish" ? priceOf(group.name) : 0) },
        { columns: costs, group: (group) => (group.nature === "choice" ? priceOf(group.name) : 0) },
      ]);
      // Every point that keeps what is physical, with what it gives up: the groups it does not keep, and no more.
      const ways = points
        .filter(({ kept }) =>
          grouped.groups.every((group, g) => group.nature !== "physical" || (kept & (2 ** g)) !== 0),
        )
        .map(({ point, kept }) => {
          const given = grouped.groups.filter((_, g) => (kept & (2 ** g)) === 0);
          const priced = (nature: string) =>
            given.reduce((sum, group) => sum + (group.nature === nature ? priceOf(group.name) : 0), 0);
          const money = point.reduce((sum, value, at) => sum + value * costs[at]!, 0);
          return [priced("wish"), money + priced("choice"), given.length];
        })
        .sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]! || a[2]! - b[2]!);
      if (ways.length === 0) {
        tally.impossible++;
        expect(release.kind, `seed ${seed}`).toBe("impossible");
        continue;
      }
      if (release.kind !== "released") throw new Error(`seed ${seed}: ${release.kind}`);
      tally.released++;
      expect(release.tiers, `seed ${seed}`).toEqual(ways[0]);
      const answer = points.find(({ point }) => point.every((value, at) => value === release.values[at]));
      const notKept = grouped.groups.filter((_, g) => ((answer?.kept ?? 0) & (2 ** g)) === 0);
      expect(answer, `seed ${seed}: the answer keeps what always holds`).toBeDefined();
      expect(
        notKept.every((group) => release.groups.includes(group)),
        `seed ${seed}: what the answer breaks is released`,
      ).toBe(true);
      expect(release.groups.every((group) => group.nature !== "physical")).toBe(true);
    }
    expect(tally.impossible).toBeGreaterThan(5);
  });
});
