import { planFront } from "@fusebook/core/plan";
import { indexRecord } from "@fusebook/core/record";
import { highsSolver } from "@fusebook/solver";
import { afterAll, describe, expect, it } from "vitest";
import { Lister } from "./plan-moves-every-plan.js";
import { Points } from "./plan-moves-points.js";
import { SLIPS } from "./plan-moves-words.js";
import { MOVE_FAMILIES, tinyMoves } from "./plan-tiny-coach-moves.js";
import { temptingCoach } from "./plan-tiny-coach-tempting.js";

/**
 * Slips planted in a copy of the rules: a list that can be wrong without the comparison noticing would prove nothing. What the front would be without each rule stands in the
 * table of the comparison itself.
 */
const solver = highsSolver();
afterAll(() => solver.close());

const coaches = Array.from({ length: 40 }, (_, i) => i + 1).flatMap((seed) => [
  ...MOVE_FAMILIES.map((family) => () => tinyMoves(seed, family)),
  () => temptingCoach(seed),
]);
const rights = new Map<number, string>();
function rightOf(at: number): string {
  const { record, job } = coaches[at]!();
  const right = rights.get(at) ?? new Lister(record, job).every(false).front.text().join("; ");
  rights.set(at, right);
  return right;
}
const fronts = new Map<number, Promise<string>>();
function frontOf(at: number): Promise<string> {
  const known = fronts.get(at);
  if (known !== undefined) return known;
  const { record, job } = coaches[at]!();
  const made = planFront(indexRecord(record), job, { solver, check: null }).then(({ plans }) => {
    const points = new Points();
    points.addAll(plans.map((plan) => [plan.costCents, plan.wishValue, plan.wiresMoved]));
    return points.text().join("; ");
  });
  fronts.set(at, made);
  return made;
}

describe("the comparison with every plan notices", () => {
  for (const slip of SLIPS)
    it(`the slip: ${slip}`, async () => {
      for (const [at, coach] of coaches.entries()) {
        const { record, job } = coach();
        const right = rightOf(at);
        const wrong = new Lister(record, job, new Set([slip])).every(false).front.text().join("; ");
        if (wrong === right) continue;
        // Another list than the right one: the planner's front must side with the right one.
        expect(await frontOf(at)).toBe(right);
        return;
      }
      expect.fail(`no coach tells: ${slip}`);
    }, 30_000);
});
