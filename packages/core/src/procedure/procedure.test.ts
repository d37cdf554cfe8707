import { demoRecord } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { applyPlan, frontOf, type Plan } from "../plan/index.js";
import { type CoachRecord, indexRecord } from "../record/index.js";
import {
  cautionWords,
  estimateOf,
  isStepCode,
  partsListOf,
  pinMapOf,
  procedureOf,
  rollBackWords,
  STEP_CODES,
  type Step,
  stepWords,
  taxCentsOf,
  toolsOf,
} from "./index.js";

const record = demoRecord();
const before = indexRecord(record);
const front = frontOf(before, record.jobs?.[0], { check: null });
/** The plan that touches the most modules. */
const plan = [...front.plans].sort((a, b) => b.modulesTouched - a.modulesTouched)[0]!;

const made = (of: Plan, from: CoachRecord = record) => {
  const index = indexRecord(from);
  return procedureOf(index, of, indexRecord(applyPlan(from, of)));
};
const procedure = made(plan);
const sectionOf = (code: string, of = procedure): readonly Step[] =>
  of.sections.find((section) => section.code === code)?.steps ?? [];
const stepsOf = (of = procedure): Step[] => of.sections.flatMap((section) => section.steps);
const stepById = (id: string, of = procedure): Step => {
  const found = stepsOf(of).find((step) => step.id === id);
  if (found === undefined) throw new Error(`no step ${id}`);
  return found;
};
const codesAt = (id: string, of = procedure) => stepById(id, of).cautions.map((one) => one.code);
const withSupplies = (change: (supply: Record<string, unknown>) => Record<string, unknown>): CoachRecord =>
  ({ ...record, supplies: (record.supplies ?? []).map((supply) => change({ ...supply })) }) as CoachRecord;
/** A plan as if one module's bank code were not known. */
const withoutBank = (module: string): Plan => ({
  ...plan,
  modules: plan.modules.map((choice) => {
    if (choice.module !== module) return choice;
    return { ...choice, positions: undefined, positionsNeed: ["moduleKinds[1].bank.address"] };
  }),
});

describe("isolation of the demo coach", () => {
  it("opens the charging sources first, the battery last", () => {
    const order = sectionOf("isolate")
      .map((step) => step.parameters.supply)
      .filter((id) => id !== undefined);
    expect(order).toEqual(["s-converter", "s-solar", "s-alternator", "s-house"]);
  });

  it("switches the loads off before the battery is opened", () => {
    const ids = sectionOf("isolate").map((step) => step.id);
    expect(ids.indexOf("loads-off")).toBeLessThan(ids.indexOf("isolate-s-house"));
    expect(ids.indexOf("loads-off")).toBeGreaterThan(ids.indexOf("isolate-s-alternator"));
  });

  it("names what is opened, where and how, in the record's words", () => {
    expect(stepById("isolate-s-solar").parameters).toMatchObject({
      what: "Solar breaker beside the controller",
      place: "p-hall-closet",
    });
    const words = stepWords(stepById("isolate-s-house"), before, before);
    expect(words.text).toContain("House disconnect, red key, in Battery bay");
    expect(words.detail).toContain("Turn a quarter to the left");
  });

  it("stops at a supply whose isolation is not on record", () => {
    const unknown = withSupplies(({ isolation, ...rest }) => (rest.id === "s-solar" ? rest : { ...rest, isolation }));
    const step = stepById("isolate-s-solar", made(plan, unknown));
    expect(step.code).toBe("isolation-unknown");
    expect(stepWords(step, before, before).text).toMatch(/^STOP at Two roof panels/);
  });

  it("stops where no supply is on record at all, and expects no volts that nothing gives", () => {
    const { supplies, ...bare } = record;
    const none = made(plan, bare as CoachRecord);
    expect(stepById("isolate-none", none).code).toBe("no-supply-on-record");
    expect(stepById("prove-meter", none).expect).toEqual([]);
    expect(stepById("feed-m4", none).expect).toEqual([]);
  });

  it("says what current the battery can drive: 12.71 V over 4 milliohm is 3180 A to the ten", () => {
    expect(stepById("isolate-s-house").cautions[0]).toMatchObject({
      code: "burn-and-arc",
      parameters: { prospectiveA: 3180 },
    });
  });

  it("warns of gas at a flooded battery and at one of unknown chemistry, not at a sealed one", () => {
    expect(codesAt("isolate-s-house")).not.toContain("battery-gas");
    for (const chemistry of ["flooded", undefined]) {
      const other = withSupplies((supply) => (supply.kind === "battery" ? { ...supply, chemistry } : supply));
      expect(codesAt("isolate-s-house", made(plan, other))).toContain("battery-gas");
    }
  });

  it("tests dead between two proofs of the meter, each point at 0 V and at most 0.1 V", () => {
    const ids = sectionOf("isolate").map((step) => step.id);
    expect(ids.slice(-3)).toEqual(["prove-meter", "dead-test", "prove-meter-again"]);
    const { expect: readings } = stepById("dead-test");
    expect(readings).toHaveLength(plan.modulesTouched + 2);
    for (const reading of readings) expect(reading).toMatchObject({ nominal: 0, span: { lo: 0, hi: 0.1 }, unit: "V" });
    expect(stepById("prove-meter").expect[0]!.span.lo).toBeGreaterThan(11);
  });

  it("keeps mains in view where a charger sits beside the work", () => {
    expect(codesAt("open-place-p-hall-closet")).toContain("mains-nearby");
    expect(codesAt("isolate-s-converter")).toContain("mains-nearby");
  });
});

describe("exchange and energising of the demo coach", () => {
  it("sets the bank of a replaced module before it is fitted", () => {
    const ids = stepsOf().map((step) => step.id);
    for (const choice of plan.modules.filter((one) => one.isTouched && one.isReplaced)) {
      expect(ids.indexOf(`set-bank-${choice.module}`)).toBeGreaterThan(ids.indexOf(`remove-${choice.module}`));
      expect(ids.indexOf(`set-bank-${choice.module}`)).toBeLessThan(ids.indexOf(`fit-${choice.module}`));
      expect(stepById(`set-bank-${choice.module}`).parameters.positions).toBe(choice.positions);
    }
  });

  it("opens each place once", () => {
    const opened = sectionOf("exchange").filter((step) => step.code === "open-place");
    expect(new Set(opened.map((step) => step.parameters.place)).size).toBe(opened.length);
    expect(opened.length).toBeGreaterThan(0);
  });

  it("gives no power to a module whose switches are not known", () => {
    const held = made(withoutBank("m4"));
    expect(stepById("set-bank-m4", held).code).toBe("set-bank-unknown");
    expect(stepById("energise-m4", held).code).toBe("energise-held");
    const ids = stepsOf(held).map((step) => step.id);
    expect(ids).toContain("hold-feed-m4");
    expect(ids).not.toContain("feed-m4");
    expect(ids).not.toContain("seat-harness-m4");
    expect(stepById("fit-m4", held).parameters.feedNode).toBeUndefined();
    expect(stepWords(stepById("set-bank-m4", held), before, before).detail).toContain("moduleKinds[1].bank.address");
  });

  it("resets a kept module's bank without taking it off its harness", () => {
    const kept: Plan = {
      ...plan,
      modules: plan.modules.map((choice) =>
        choice.module === "m4" ? { ...choice, to: choice.from!, isReplaced: false, positions: "100100" } : choice,
      ),
    };
    const ids = sectionOf("exchange", made(kept))
      .filter((step) => step.module === "m4")
      .map((step) => step.id);
    expect(ids).toEqual(["take-fuses-m4", "set-bank-m4", "sort-fuses-m4", "label-m4", "check-screws-m4"]);
  });

  it("warns of what each load of the wet bay does, at the step that gives it power", () => {
    const at = stepById("energise-m5").cautions;
    expect(at.map((one) => one.code)).toEqual(["something-moves", "water-may-run"]);
    expect(at[0]!.parameters.loads).toBe("Awning motor");
    expect(at[1]!.parameters.loads).toBe("Water pump, Grey tank valve");
    expect(codesAt("energise-m3")).toEqual(["something-moves", "heat-may-start", "life-safety"]);
  });

  it("warns at the battery of the loads that come alive with it: slide, heater, generator start", () => {
    const cautions = stepById("energise-s-house").cautions;
    const named = (code: string) => cautions.find((one) => one.code === code)?.parameters.loads;
    expect(named("something-moves")).toContain("Saloon slide");
    expect(named("heat-may-start")).toContain("Perch heater");
    expect(named("engine-or-generator-may-start")).toContain("Generator start");
  });

  it("announces what a bolted fuse feeds when the feed comes on, since it is fitted dead", () => {
    const bolted = {
      ...record,
      circuits: (record.circuits ?? []).map((one) =>
        one.id === "c5.05" ? { ...one, fuse: { ...one.fuse, type: "bolt-down" as const } } : one,
      ),
      moduleKinds: (record.moduleKinds ?? []).map(({ fuseType, ...kind }) => kind),
    } as CoachRecord;
    const water = (id: string) =>
      stepById(id, made(plan, bolted)).cautions.find((one) => one.code === "water-may-run")?.parameters.loads;
    expect(water("feed-m5")).toBe("Water pump");
    expect(water("energise-s-house")).toContain("Water pump");
    expect(codesAt("feed-m5")).toEqual([]);
  });

  it("brings the supplies back in the reverse order", () => {
    const back = sectionOf("energise")
      .map((step) => step.parameters.supply)
      .filter((id) => id !== undefined);
    expect(back).toEqual(["s-house", "s-alternator", "s-solar", "s-converter"]);
  });

  it("shows the lamps of the kind's own sheet and the volts of the feed before any fuse goes in", () => {
    const feed = stepById("feed-m4");
    expect(feed.expectLamps[0]).toMatch(/^State \(white\): steady/);
    expect(feed.expect[0]!.nominal).toBeCloseTo(12.71, 2);
    const ids = stepsOf().map((step) => step.id);
    expect(ids.indexOf("feed-m4")).toBeLessThan(ids.indexOf("energise-m4"));
  });

  it("tells of every detector of the coach, since the whole coach goes dead", () => {
    expect(stepById("detectors-lose-feed").parameters.detectors).toBe(
      "Gas detector, Smoke detector, Carbon monoxide detector",
    );
    expect(codesAt("detectors-lose-feed")).toEqual(["life-safety"]);
  });

  it("has nothing to do for a plan that touches nothing", () => {
    const idle = front.plans.find((one) => one.modulesTouched === 0)!;
    expect(stepsOf(made(idle))).toEqual([]);
  });
});

describe("words", () => {
  it("are there for every step and caution of the demo, as whole sentences with every name filled in", () => {
    const after = indexRecord(applyPlan(record, plan));
    for (const step of stepsOf()) {
      expect(isStepCode(step.code)).toBe(true);
      const words = stepWords(step, before, after);
      for (const said of [
        words.text,
        words.detail ?? "x.",
        ...step.cautions.map(cautionWords),
        step.rollBack ?? "x.",
      ]) {
        expect(said).not.toMatch(/undefined|NaN|\[object|\.\./);
        expect(said).toMatch(/[.!?]$/);
      }
    }
  });

  it("give a way back from every step that changes something", () => {
    for (const code of [
      "isolate-supply",
      "remove-module",
      "set-bank",
      "fit-module",
      "energise-battery",
      "energise-module",
    ] as const)
      expect(rollBackWords(code)).toBeTruthy();
    expect(new Set(STEP_CODES).size).toBe(STEP_CODES.length);
  });

  it("name a fuse that changes with both sizes", () => {
    const changed: Plan = {
      ...plan,
      fuses: [{ circuit: before.circuits.get("c4.07")!.id, fromA: 15, toA: 10, because: "fuse-over-channel" }],
    };
    const after = indexRecord(applyPlan(record, changed));
    const step = stepById("sort-fuses-m4", procedureOf(before, changed, after));
    expect(stepWords(step, before, after).detail).toContain("channel 7 (Bed lift): 10 A, in place of 15 A");
  });
});

describe("pin map", () => {
  const kind = (id: string) => before.moduleKinds.get(id)!;

  it("is not wanted between like connectors", () => {
    expect(pinMapOf(kind("D8"), kind("D8"))).toBeUndefined();
    expect(pinMapOf(kind("D8"), { ...kind("D8"), id: "D8b" as never })).toBeUndefined();
  });

  it("leads each wire from the old pin to the new one", () => {
    const rows = pinMapOf(kind("R8"), kind("D8"))!;
    expect(rows.find((row) => row.channel === 1)).toEqual({
      channel: 1,
      from: { connector: "A", pin: "1" },
      to: { connector: "X1", pin: "8" },
      unknown: [],
    });
    expect(rows.find((row) => row.is === "network high")).toMatchObject({
      from: { pin: "5" },
      to: { connector: "X2", pin: "2" },
    });
    expect(rows).toHaveLength(12);
  });

  it("flags what a sheet does not show", () => {
    const { connectors, ...bare } = kind("D8");
    const rows = pinMapOf(kind("R8"), bare)!;
    expect(rows.every((row) => row.unknown.includes("to"))).toBe(true);
    expect(pinMapOf(undefined, kind("D8"))!.every((row) => row.unknown.includes("from"))).toBe(true);
  });
});

describe("parts, tools and estimate", () => {
  it("list what is to be bought, those on hand first", () => {
    const replaced = plan.modules.filter(
      (choice) => choice.isTouched && choice.isReplaced && choice.to === "D8",
    ).length;
    expect(replaced).toBeGreaterThan(1);
    const stocked = indexRecord({
      ...record,
      moduleKinds: (record.moduleKinds ?? []).map((kind) => (kind.id === "D8" ? { ...kind, inStock: 1 } : kind)),
    });
    const lines = partsListOf(plan, stocked).filter((line) => line.kind === "D8");
    expect(lines).toMatchObject([
      { quantity: 1, fromStock: true },
      { quantity: replaced - 1, fromStock: false, eachCents: 28900 },
    ]);
  });

  it("add up to the plan's cost and the tax, on every plan of the front", () => {
    for (const one of front.plans) {
      const estimate = estimateOf(one, before);
      expect(estimate.netCents).toBe(one.costCents);
      expect(estimate.totalCents).toBe(one.costCents + estimate.taxCents);
    }
  });

  it("round half a cent of tax up", () => {
    expect(taxCentsOf(50, 0.07)).toBe(4);
    expect(taxCentsOf(49, 0.07)).toBe(3);
    expect(taxCentsOf(150, 0.07)).toBe(11);
    expect(taxCentsOf(100_000, 0.07)).toBe(7000);
    expect(taxCentsOf(1000, 0.0825)).toBe(83);
    expect(taxCentsOf(0, 0.07)).toBe(0);
  });

  it("name the price, rate or tax that is missing instead of hiding it", () => {
    const { policy, ...bare } = record;
    const estimate = estimateOf({ ...plan, costNeeds: ["policy.labourRatePerHour"] }, indexRecord(bare as CoachRecord));
    expect(estimate.needs).toEqual(["policy.labourRatePerHour", "policy.taxRatio"]);
  });

  it("name the tools that these steps call for", () => {
    const tools = toolsOf(procedure);
    expect(tools.some((tool) => tool.startsWith("Voltmeter"))).toBe(true);
    expect(tools).toContain("Bucket and cloths");
    expect(toolsOf({ sections: [] })).toEqual([]);
  });
});
