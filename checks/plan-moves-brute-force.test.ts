import { applyPlan, planFront } from "@fusebook/core/plan";
import { indexRecord } from "@fusebook/core/record";
import { highsSolver } from "@fusebook/solver";
import { afterAll, describe, expect, it } from "vitest";
import { Lister } from "./plan-moves-every-plan.js";
import { MEANS, Points, pointText } from "./plan-moves-points.js";
import { RULES } from "./plan-moves-words.js";
import type { TinyMoves } from "./plan-tiny-coach-draw.js";
import { MOVE_FAMILIES, tinyMoves } from "./plan-tiny-coach-moves.js";
import { temptingCoach } from "./plan-tiny-coach-tempting.js";

/**
 * The front with moves against every plan there is, on coaches of up to three modules and twelve loads: all kinds and settings, all channels, feeds and wires, listed
 * and judged by rules written again from the method page. Each offered plan is applied to its record, and that record judged on its own.
 */
const COACHES = 40;
const TEMPTING = 216;
const FAMILIES: readonly [name: string, count: number, coach: (seed: number) => TinyMoves][] = [
  ...MOVE_FAMILIES.map((family): [string, number, (seed: number) => TinyMoves] => [
    family,
    COACHES,
    (seed) => tinyMoves(seed, family),
  ]),
  ["tempting", TEMPTING, temptingCoach],
];
/** Each rule must decide the front, and each means be wanted for it, on at least so many coaches. */
const LEAST = 10;

const solver = highsSolver();
afterAll(() => solver.close());
const matters = new Map<string, number>();
const count = (name: string): void => void matters.set(name, (matters.get(name) ?? 0) + 1);

describe("the front with moves against every plan there is", () => {
  for (const [family, coaches, coachOf] of FAMILIES)
    it(`is exactly the set of unbeaten plans, and so are the records after them, on ${coaches} seeded coaches: ${family}`, async () => {
      let plans = 0;
      let points = 0;
      for (let seed = 1; seed <= coaches; seed++) {
        const { record, job } = coachOf(seed);
        const lister = new Lister(record, job);
        const { front: byHand, without, wanted, plans: listed } = lister.every();
        const front = await planFront(indexRecord(record), job, { solver, check: null });
        expect(front.isComplete, `${family}, seed ${seed}`).toBe(true);
        // Where nothing can move, the front also lists plans that only touch fewer modules.
        const got = new Points();
        got.addAll(front.plans.map((plan) => [plan.costCents, plan.wishValue, plan.wiresMoved]));
        expect(got.text(), `${family}, seed ${seed}`).toEqual(byHand.text());
        for (const plan of front.plans) {
          const judged = lister.pointOf(applyPlan(record, plan), plan.modules);
          expect(typeof judged === "string" ? judged : pointText(judged), `${family}, seed ${seed}, ${plan.id}`).toBe(
            pointText([plan.costCents, plan.wishValue, plan.wiresMoved]),
          );
        }
        for (const name of [...without.keys(), ...wanted]) count(name);
        plans += listed;
        points += byHand.kept.length;
      }
      expect(plans).toBeGreaterThan(coaches * 4);
      expect(points).toBeGreaterThan(coaches * 1.1);
    }, 300_000);
  it(`each rule decides the front, and each means is wanted for it, on at least ${LEAST} of the coaches`, () => {
    const rows = [...RULES, ...MEANS].map((name) => `${String(matters.get(name) ?? 0).padStart(5)}  ${name}`);
    console.log(
      [
        `coaches (of ${MOVE_FAMILIES.length * COACHES + TEMPTING}) whose front would be another without it`,
        ...rows,
      ].join("\n"),
    );
    for (const name of [...RULES, ...MEANS]) expect(matters.get(name) ?? 0, name).toBeGreaterThanOrEqual(LEAST);
  });
});
