import { planFront } from "@fusebook/core/plan";
import { type CoachRecord, indexRecord, type Job } from "@fusebook/core/record";
import { chanceOf } from "@fusebook/fixtures";
import { highsSolver } from "@fusebook/solver";
import { afterAll, describe, expect, it } from "vitest";
import { MOVE_FAMILIES, tinyMoves } from "./plan-tiny-coach-moves.js";

/** The order of a record's lists says nothing: the same coach written down in another order has the same plans. */
const solver = highsSolver();
afterAll(() => solver.close());

const LISTS = ["modules", "circuits", "loads", "moduleKinds", "nodes", "cables", "places", "controls"] as const;
type List = (typeof LISTS)[number];

function shuffled(record: CoachRecord, seed: number, lists: readonly List[]): CoachRecord {
  const chance = chanceOf(seed);
  const mixed = <T>(items: readonly T[]): T[] =>
    items
      .map((item) => ({ item, at: chance.next() }))
      .sort((a, b) => a.at - b.at)
      .map(({ item }) => item);
  return {
    ...record,
    ...Object.fromEntries(
      lists.flatMap((list) => (record[list] === undefined ? [] : [[list, mixed<unknown>(record[list])]])),
    ),
  } as CoachRecord;
}

async function plansOf(record: CoachRecord, job: Job): Promise<{ figures: string[]; ids: string[] }> {
  const { plans, isComplete } = await planFront(indexRecord(record), job, { solver, check: null });
  expect(isComplete).toBe(true);
  return {
    figures: plans.map((plan) => `${plan.costCents} ${plan.wishValue} ${plan.wiresMoved}`).sort(),
    ids: plans.map((plan) => plan.id).sort(),
  };
}

const asWritten = new Map<string, ReturnType<typeof plansOf>>();
const coaches = MOVE_FAMILIES.flatMap((family) => [3].map((seed) => ({ family, seed, ...tinyMoves(seed, family) })));

describe("plans do not depend on", () => {
  it("when they were asked for: the same record gives the same plans again", async () => {
    for (const { record, job, family, seed } of coaches.slice(0, 8))
      expect(await plansOf(record, job), `${family} ${seed}`).toEqual(await plansOf(record, job));
  }, 300_000);
  for (const list of LISTS)
    it(`the order of the record's ${list}: same figures, same ids`, async () => {
      for (const { record, job, family, seed } of coaches) {
        const other = await plansOf(shuffled(record, seed, [list]), job);
        const known = asWritten.get(`${family} ${seed}`) ?? plansOf(record, job);
        asWritten.set(`${family} ${seed}`, known);
        expect(other, `${family} ${seed}`).toEqual(await known);
      }
    }, 300_000);
});
