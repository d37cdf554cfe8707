import { applyPlan, type Plan, planFront } from "@fusebook/core/plan";
import { cautionWords, estimateOf, procedureOf, reusesOf, stepWords } from "@fusebook/core/procedure";
import { movedByPlan, testsOf } from "@fusebook/core/proof";
import { type CoachIndex, indexRecord } from "@fusebook/core/record";
import { highsSolver } from "@fusebook/solver";
import { beforeAll, describe, expect, it } from "vitest";
import { MOVE_FAMILIES, tinyMoves } from "./plan-tiny-coach-moves.js";

/*
 * Every plan of the fronts of seeded tiny coaches, with wires that move, feeds of their own, thicker wires, stock and modules used again: its papers hold what the plan
 * says, in an order that hurts nobody. What must hold is written here by hand.
 */

interface Case {
  readonly name: string;
  readonly before: CoachIndex;
  readonly plan: Plan;
}

const HAZARD: Readonly<Record<string, string>> = {
  fan: "something-moves",
  motor: "something-moves",
  pump: "water-may-run",
  "resistive-heater": "heat-may-start",
};

describe("the papers of every plan with moved wires", () => {
  const cases: Case[] = [];
  beforeAll(async () => {
    const solver = highsSolver();
    for (const family of MOVE_FAMILIES)
      for (let seed = 1; seed <= 12; seed++) {
        const { record, job } = tinyMoves(seed, family);
        const before = indexRecord({ ...record, jobs: [job] });
        const front = await planFront(before, job, { solver, check: null });
        for (const plan of front.plans) cases.push({ name: `${family} ${seed} ${plan.id}`, before, plan });
      }
    solver.close();
  }, 180_000);

  const each = (check: (one: Case) => void) => {
    for (const one of cases) {
      try {
        check(one);
      } catch (error) {
        throw new Error(`${one.name}: ${(error as Error).message}`, { cause: error });
      }
    }
  };
  const made = ({ before, plan }: Case) => {
    const after = indexRecord(applyPlan(before.record, plan));
    const sections = procedureOf(before, plan, after).sections;
    const steps = sections.flatMap((section) => section.steps);
    const at = new Map(steps.map((step, i) => [step.id, i]));
    const place = (id: string): number => {
      const found = at.get(id);
      if (found === undefined) throw new Error(`no step ${id}`);
      return found;
    };
    return { after, steps, at, place };
  };

  it("there are plans of every sort among them", () => {
    const with_ = (has: (plan: Plan) => boolean) => cases.filter(({ plan }) => has(plan)).length;
    expect(with_((plan) => plan.moves.length > 0)).toBeGreaterThan(20);
    expect(with_((plan) => plan.steadyFeeds.length > 0)).toBeGreaterThan(2);
    expect(with_((plan) => plan.rewires.length > 0)).toBeGreaterThan(2);
    expect(cases.filter(({ plan, before }) => reusesOf(plan, before).length > 0).length).toBeGreaterThan(2);
  });

  it("the estimate is the plan's cost to the cent", () => {
    each(({ before, plan }) => expect(estimateOf(plan, before).netCents).toBe(plan.costCents));
  });

  it("each wire is labelled, unplugged, moved, in that order, dead; its program and its fuse come with the power", () => {
    each((one) => {
      const { place, at, steps, after } = made(one);
      for (const move of one.plan.moves) {
        const fitted = at.has(`rewire-${move.circuit}`) ? `rewire-${move.circuit}` : `move-wire-${move.circuit}`;
        const order = [
          place("dead-test"),
          place(`label-wire-${move.circuit}`),
          place(`unplug-wire-${move.circuit}`),
          place(fitted),
          place("clear-away"),
        ];
        expect([...order].sort((a, b) => a - b)).toEqual(order);
        const power = at.get(`energise-${move.to.module}`) ?? at.get(`energise-circuit-${move.circuit}`);
        expect(power, `power for ${move.circuit}`).toBeGreaterThan(place("clear-away"));
        const rated = after.circuits.get(move.circuit)?.fuse?.ratedA;
        const size = rated === undefined ? undefined : typeof rated === "number" ? rated : rated.value;
        expect(steps[place(fitted)]?.parameters.fuseA).toBe(size);
      }
      for (const feed of one.plan.steadyFeeds) {
        expect(place(`label-wire-${feed.load}`)).toBeLessThan(place(`steady-feed-${feed.load}`));
        expect(place(`energise-feed-${feed.load}`)).toBeGreaterThan(place("clear-away"));
        expect(steps[place(`steady-feed-${feed.load}`)]?.parameters.fuseA).toBe(feed.fuseA);
      }
      for (const rewire of one.plan.rewires)
        expect(place(`rewire-${rewire.circuit}`)).toBeGreaterThan(place(`unplug-wire-${rewire.circuit}`));
    });
  });

  it("no detector is moved, and every load that may move, spray or heat is named where its fuse goes in", () => {
    each((one) => {
      const { steps, after } = made(one);
      expect(steps.filter((step) => step.code === "leave-detector")).toEqual([]);
      for (const move of one.plan.moves) {
        const loads = (after.circuits.get(move.circuit)?.loads ?? []).flatMap((id) => after.loads.get(id) ?? []);
        const step =
          steps.find((each_) => each_.id === `energise-circuit-${move.circuit}`) ??
          steps.find((each_) => each_.id === `energise-${move.to.module}`);
        for (const load of loads) {
          expect(load.class).not.toBe("detector");
          const wanted = load.class === undefined ? "something-moves" : HAZARD[load.class];
          if (wanted === undefined) continue;
          const said = step?.cautions.find((caution) => caution.code === wanted);
          expect(String(said?.parameters.loads), `${load.id} at ${step?.id}`).toContain(load.name);
        }
      }
    });
  });

  it("each moved circuit is tested where it sits now, each channel left without a wire is tested dead and labelled spare", () => {
    each((one) => {
      const { after, steps } = made(one);
      const tests = new Set(testsOf(after, movedByPlan(one.plan)).map((test) => test.id));
      const taken = new Set(
        [...after.circuits.values()].flatMap((circuit) =>
          circuit.module === undefined || circuit.isSpare === true ? [] : [`${circuit.module}.${circuit.channel}`],
        ),
      );
      for (const move of one.plan.moves) {
        expect(tests).toContain(`t-${move.circuit}-answers`);
        const old = `${move.from.module}.${move.from.channel}`;
        const spare = steps.find((step) => step.id === `label-channels-${move.from.module}`)?.parameters.spare;
        const labelled = String(spare ?? "").split(", ");
        expect(labelled.includes(String(move.from.channel))).toBe(!taken.has(old));
        expect(tests.has(`t-${old}-channel-dead`)).toBe(!taken.has(old));
      }
      for (const feed of one.plan.steadyFeeds)
        expect(tests).toContain(`t-${after.circuitOfLoad.get(feed.load)?.id}-always-fed`);
    });
  });

  it("ids are unique, and every sentence has its names", () => {
    each((one) => {
      const { at, steps, after } = made(one);
      expect(at.size).toBe(steps.length);
      for (const step of steps) {
        const words = stepWords(step, one.before, after);
        for (const said of [words.text, words.detail ?? "x.", ...step.cautions.map(cautionWords)])
          expect(said).not.toMatch(/undefined|NaN|\[object/);
      }
    });
  });
});
