import { generateCoach } from "@fusebook/fixtures";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyPlan, frontOf, type Plan } from "../plan/index.js";
import { type CoachIndex, indexRecord } from "../record/index.js";
import { cautionWords, estimateOf, procedureOf, type Step, stepWords } from "./index.js";

/** What each class must be announced by, written down here by hand and not taken from the code. */
const WANTED: Readonly<Record<string, string>> = {
  actuator: "something-moves",
  motor: "something-moves",
  fan: "something-moves",
  pump: "water-may-run",
  valve: "water-may-run",
  "resistive-heater": "heat-may-start",
  "heater-control": "heat-may-start",
  "inverter-remote": "engine-or-generator-may-start",
  detector: "life-safety",
};

/** Whatever the front says, every module changed at once: worse than any real plan. */
function touchAll(plan: Plan): Plan {
  return {
    ...plan,
    modules: plan.modules.map((choice, i) => {
      const isReplaced = i % 3 !== 0;
      return { ...choice, isTouched: true, isReplaced, positions: i % 4 === 3 ? undefined : (choice.positions ?? "0") };
    }),
  };
}

interface Case {
  readonly before: CoachIndex;
  readonly after: CoachIndex;
  readonly plan: Plan;
  readonly steps: readonly Step[];
  readonly at: ReadonlyMap<string, number>;
  readonly sectionAt: ReadonlyMap<string, string>;
}

function caseOf(seed: number, circuits: number, missingRatio: number): Case[] {
  const { record } = generateCoach({ seed, circuits, missingRatio });
  const before = indexRecord(record);
  const { plans } = frontOf(before, undefined, { check: null });
  const last = plans.at(-1);
  if (last === undefined) return [];
  return [last, touchAll(last)].map((plan) => {
    const after = indexRecord(applyPlan(record, plan));
    const procedure = procedureOf(before, plan, after);
    const steps = procedure.sections.flatMap((section) => section.steps);
    return {
      before,
      after,
      plan,
      steps,
      at: new Map(steps.map((step, i) => [step.id, i])),
      sectionAt: new Map(procedure.sections.flatMap((section) => section.steps.map((step) => [step.id, section.code]))),
    };
  });
}

const forAll = (check: (one: Case) => void) =>
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 400 }),
      fc.integer({ min: 1, max: 70 }),
      fc.constantFrom(0, 0.3),
      (seed, circuits, missingRatio) => {
        for (const one of caseOf(seed, circuits, missingRatio)) check(one);
      },
    ),
    { seed: 2026, numRuns: 12 },
  );

const touchedOf = (plan: Plan) => plan.modules.filter((choice) => choice.isTouched);

describe("any coach, any plan", () => {
  it("every supply is isolated, and before the exchange begins", () => {
    forAll(({ before, steps, at, sectionAt }) => {
      if (steps.length === 0) return;
      const firstExchange = steps.findIndex((step) => sectionAt.get(step.id) === "exchange");
      for (const supply of before.supplies.values()) {
        expect(sectionAt.get(`isolate-${supply.id}`)).toBe("isolate");
        expect(at.get(`isolate-${supply.id}`)!).toBeLessThan(firstExchange);
        for (const other of before.supplies.values())
          if (supply.kind !== "battery" && other.kind === "battery")
            expect(at.get(`isolate-${supply.id}`)!).toBeLessThan(at.get(`isolate-${other.id}`)!);
      }
      expect(at.get("dead-test")!).toBeLessThan(firstExchange);
    });
  });

  it("a module's bank is set before it gets power, and one that cannot be set gets none", () => {
    forAll(({ plan, steps, at, before }) => {
      for (const choice of touchedOf(plan)) {
        const bank = at.get(`set-bank-${choice.module}`)!;
        const battery = steps.findIndex((step) => step.code === "energise-battery");
        if ([...before.supplies.values()].some((supply) => supply.kind === "battery"))
          expect(bank).toBeLessThan(battery);
        expect(bank).toBeLessThan(at.get(`energise-${choice.module}`)!);
        const isHeld = choice.positions === undefined;
        expect(at.has(`feed-${choice.module}`)).toBe(!isHeld);
        expect(at.has(`hold-feed-${choice.module}`)).toBe(isHeld);
      }
    });
  });

  it("every load that moves, runs, heats, starts or warns is announced by name where its module gets power", () => {
    forAll(({ plan, steps, at, after }) => {
      for (const choice of touchedOf(plan)) {
        const step = steps[at.get(`energise-${choice.module}`)!]!;
        for (const circuit of after.circuitsOfModule.get(choice.module) ?? [])
          for (const id of circuit.loads ?? []) {
            const load = after.loads.get(id);
            const wanted = WANTED[load?.class ?? ""];
            if (load === undefined || wanted === undefined) continue;
            const said = step.cautions.find((one) => one.code === wanted);
            expect(said, `${load.class} on ${choice.module}`).toBeDefined();
            expect(String(said?.parameters.loads)).toContain(load.name);
          }
      }
    });
  });

  it("ids are unique, words are whole, and the same input gives the same steps", () => {
    forAll(({ before, after, plan, steps, at }) => {
      expect(at.size).toBe(steps.length);
      for (const step of steps) {
        const words = stepWords(step, before, after);
        for (const said of [words.text, words.detail ?? "x.", ...step.cautions.map(cautionWords)])
          expect(said).not.toMatch(/undefined|NaN|\[object/);
      }
      expect(procedureOf(before, plan, after).sections.flatMap((section) => section.steps)).toEqual(steps);
    });
  });

  it("the estimate is the plan's cost and the tax", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 70 }), (seed, circuits) => {
        const { record } = generateCoach({ seed, circuits });
        const index = indexRecord({ ...record, policy: { ...record.policy, taxRatio: 0.0825 } });
        for (const plan of frontOf(index, undefined, { check: null }).plans) {
          const estimate = estimateOf(plan, index);
          expect(estimate.totalCents).toBe(plan.costCents + estimate.taxCents);
          // What rounding added, in ten-thousandths of a cent: less than half a cent taken off, at most half a cent put on.
          const off = estimate.taxCents * 10_000 - plan.costCents * 825;
          expect(off).toBeGreaterThan(-5_000);
          expect(off).toBeLessThanOrEqual(5_000);
        }
      }),
      { seed: 7, numRuns: 20 },
    );
  });
});
