import { type PlanGroup, supposeWithout, type WhyNot, whyNot, whyNotWords } from "@fusebook/core/plan";
import { indexRecord, type LoadId } from "@fusebook/core/record";
import { highsSolver } from "@fusebook/solver";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  cents,
  cheapestByListing,
  cheapestBySecond,
  holdingOnly,
  type Question,
  wishesOf,
} from "./plan-conflicts-coach.js";
import { secondOpinion } from "./plan-solver-second.js";
import { MOVE_FAMILIES, tinyMoves } from "./plan-tiny-coach-moves.js";

/**
 * Why wishes of seeded tiny coaches are not met: every conflict named is solved again by another solver on records changed accordingly, whole and with each member left
 * out, and every way out is taken and priced by listing all plans.
 */

const solver = highsSolver();
afterAll(() => solver.close());
const second = await secondOpinion();

interface Asked {
  readonly name: string;
  readonly question: Question;
  readonly why: WhyNot;
}

type Named = Asked & { readonly outcome: Extract<WhyNot["outcome"], { kind: "conflict" | "physical" }> };

const SEEDS = 6;
const asked: Asked[] = [];
const named: Named[] = [];
beforeAll(async () => {
  for (const family of MOVE_FAMILIES)
    for (let seed = 1; seed <= SEEDS; seed++) {
      const question = tinyMoves(seed, family);
      const index = indexRecord({ ...question.record, jobs: [question.job] });
      for (const [load, wish] of wishesOf(question)) {
        if (wish === "none") continue;
        const name = `${family} ${seed} ${load}`;
        const why = await whyNot(index, question.job, load, solver);
        const { outcome } = why;
        asked.push({ name, question, why });
        if (outcome.kind === "conflict" || outcome.kind === "physical") named.push({ name, question, why, outcome });
      }
    }
}, 600_000);
const priced = (question: Question, wishes: readonly LoadId[]) => cheapestBySecond(second, question, wishes);

describe("why a wish of a tiny coach is not met", () => {
  it("is asked of at least a hundred wishes that cannot be met, of every kind", () => {
    expect(named.length).toBeGreaterThanOrEqual(100);
    const codes = new Set(named.flatMap(({ outcome }) => outcome.groups.map((group) => group.code)));
    for (const code of ["wish", "budget", "module-locked", "move-not-said", "load-must-not-dim", "dimmed-rating"])
      expect([...codes]).toContain(code);
    expect(asked.every(({ why }) => why.outcome.kind !== "stopped")).toBe(true);
  }, 300_000);

  it("names sets that cannot hold even with all else supposed otherwise, and can without any one of them", () => {
    for (const { name, question, why, outcome } of named) {
      const { groups } = outcome;
      const holds = (held: readonly PlanGroup[]): boolean => {
        const so = holdingOnly(question, why, held, false);
        return priced(so.question, so.wishes) !== "none";
      };
      expect(holds(groups), `${name}: ${groups.map((group) => group.name).join(", ")}`).toBe(false);
      for (const left of groups)
        expect(holds(groups.filter((group) => group !== left)), `${name} without ${left.name}`).toBe(true);
    }
  }, 300_000);

  it("names no more of anybody's choosing than stands against the facts", () => {
    for (const { name, question, why, outcome } of named) {
      const { groups } = outcome;
      const chosen = groups.filter((group) => group.nature !== "physical");
      const holds = (held: readonly PlanGroup[]): boolean => {
        const so = holdingOnly(question, why, held, true);
        return priced(so.question, so.wishes) !== "none";
      };
      expect(holds(chosen), name).toBe(false);
      for (const left of chosen)
        expect(holds(chosen.filter((group) => group !== left)), `${name} without ${left.name}`).toBe(true);
    }
  }, 300_000);

  it("says that no change of plan can where none of the choices would help", () => {
    for (const { name, question, why, outcome } of named) {
      const own = why.weighed.filter((group) => group.name === `wish ${why.load}`);
      const so = holdingOnly(question, why, own, true);
      expect(outcome.kind === "physical", name).toBe(priced(so.question, so.wishes) === "none");
    }
  }, 300_000);

  it("says of a wish that can be met what the cheapest plan costs, as listing all plans finds it", () => {
    let count = 0;
    for (const { name, question, why } of asked) {
      if (why.outcome.kind !== "can-be") continue;
      count++;
      expect(cheapestByListing(question, [why.load, ...why.kept]), name).toBe(why.outcome.plan.costCents);
    }
    expect(count).toBeGreaterThan(50);
  }, 300_000);

  it("puts what it found into sentences", () => {
    for (const { name, question, why } of asked) {
      const words = whyNotWords(why, indexRecord({ ...question.record, jobs: [question.job] })).join("\n");
      expect(words, name).not.toMatch(/undefined|NaN|cannot be given up/);
    }
  }, 300_000);
});

/** The question with these given up, and the wishes that are still to be met. */
function givenUp(
  question: Question,
  why: WhyNot,
  groups: readonly PlanGroup[],
): { question: Question; wishes: LoadId[] } {
  const index = indexRecord({ ...question.record, jobs: [question.job] });
  const isRow = (group: PlanGroup): boolean => group.code === "wish" && group.parameters.mayDim !== 1;
  const lifted = groups.filter((group) => !isRow(group)).map((group) => group.name);
  const gone = new Set(groups.flatMap((group) => (group.code === "wish" ? [String(group.parameters.load)] : [])));
  const so = supposeWithout(index, question.job, why.load, new Set(lifted));
  if (so === undefined) throw new Error(`${why.load} hangs on no module`);
  return { question: so, wishes: [why.load, ...why.kept].filter((load) => !gone.has(load)) };
}

describe("the ways out", () => {
  const withWays = () =>
    named.flatMap(({ name, question, why, outcome }) =>
      outcome.kind === "conflict" ? [{ name, question, why, waysOut: outcome.waysOut }] : [],
    );

  it("meet the wish at the cost stated, as listing all plans of the record without what is given up finds it", () => {
    let count = 0;
    for (const { name, question, why, waysOut } of withWays())
      for (const way of waysOut) {
        const so = givenUp(question, why, way.groups);
        const what = `${name}: ${way.groups.map((group) => group.name).join(", ")}`;
        expect(cheapestByListing(so.question, so.wishes), what).toBe(way.plan.costCents);
        expect(cents(priced(so.question, so.wishes)), what).toBe(way.plan.costCents);
        count++;
      }
    expect(count).toBeGreaterThan(30);
  }, 300_000);

  it("are led by the cheapest of all: least wish value, then least cost, then fewest given up, by trying every set", () => {
    let count = 0;
    for (const { name, question, why, waysOut } of withWays()) {
      const may = why.weighed.filter((group) => group.name !== `wish ${why.load}`);
      const first = waysOut[0];
      if (may.length > 6 || first === undefined) continue;
      const worth = (groups: readonly PlanGroup[]): number =>
        groups.reduce((sum, group) => sum + (group.nature === "wish" ? Number(group.parameters.value) : 0), 0);
      const ways: [number, number, number][] = [];
      for (let bits = 0; bits < 2 ** may.length; bits++) {
        const groups = may.filter((_, i) => (bits >> i) % 2 === 1);
        const so = givenUp(question, why, groups);
        const cost = priced(so.question, so.wishes);
        if (cost !== "none") ways.push([worth(groups), cost, groups.length]);
      }
      ways.sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
      const [value, cost, given] = ways[0]!;
      expect([worth(first.groups), first.plan.costCents, first.groups.length], name).toEqual([
        value,
        cents(cost),
        given,
      ]);
      count++;
    }
    expect(count).toBeGreaterThan(10);
  }, 300_000);

  it("never give up what is physical", () => {
    expect(
      withWays()
        .flatMap(({ waysOut }) => waysOut.flatMap((way) => way.groups))
        .filter((group) => group.nature === "physical"),
    ).toEqual([]);
  }, 300_000);
});
