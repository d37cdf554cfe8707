import { frontOf } from "@fusebook/core/plan";
import { type CoachIndex, indexRecord } from "@fusebook/core/record";
import { demoRecord } from "@fusebook/fixtures";
import { beforeAll, describe, expect, it } from "vitest";
import type { PacketView } from "../packet/packet-view.js";
import { packetInputsOf } from "./packet-inputs-of.js";
import { packetViewOf } from "./packet-view-of.js";

describe("the packet of the demo coach's brightest plan, in words", () => {
  let before: CoachIndex;
  let view: PacketView;
  let replaced: readonly string[];
  beforeAll(() => {
    before = indexRecord(demoRecord());
    const job = before.record.jobs?.[0];
    const front = frontOf(before, job);
    const pick = front.picks.find((one) => one.name === "most-light");
    const plan = front.plans.find((one) => one.id === pick?.plan);
    if (plan === undefined) throw new Error("the demo has no plan");
    replaced = plan.modules.filter((choice) => choice.isReplaced).map((choice) => choice.module);
    view = packetViewOf(packetInputsOf({ before, plan, job, date: "2026-05-02", id: "p-1" }));
  }, 180_000);

  it("opens every supply of the coach, the battery last", () => {
    const names = view.isolation.map((supply) => supply.supply);
    expect([...names].sort()).toEqual((before.record.supplies ?? []).map((supply) => supply.name).sort());
    expect(names.at(-1)).toBe(before.supplies.get("s-house")?.name);
  });

  it("has a dead test before anything is exchanged, with a reading to write down", () => {
    const isolate = view.sections.find((section) => section.code === "isolate")!;
    const codes = view.sections.map((section) => section.code);
    expect(codes.indexOf("isolate")).toBeLessThan(codes.indexOf("exchange"));
    expect(isolate.steps.flatMap((step) => step.expect).filter((line) => line.value === "0 V").length).toBeGreaterThan(
      0,
    );
  });

  it("has a switch card, a pin map and a label strip for every replaced module, and shows the card at the step that sets it", () => {
    expect(replaced.length).toBeGreaterThan(0);
    expect(view.switchCards).toHaveLength(replaced.length);
    expect(view.pinMaps).toHaveLength(replaced.length);
    expect(view.strips.length + view.labelWants.length).toBe(replaced.length);
    const shown = view.sections
      .flatMap((section) => section.steps)
      .flatMap((step) => (step.card === undefined ? [] : [step.card]));
    expect([...new Set(shown)].sort()).toEqual(view.switchCards.map((_, i) => i));
  });

  it("repeats the owner's words as they were said", () => {
    expect(view.job.ownerWords).toBe(before.record.coach.ownerWords);
  });

  it("tests every circuit that it touches that has a load on record", () => {
    const numbers = new Set(view.tests.map((group) => group.number));
    for (const circuit of before.record.circuits ?? [])
      if (circuit.module !== undefined && replaced.includes(circuit.module) && (circuit.loads ?? []).length > 0)
        expect(numbers).toContain(`${circuit.module}.${circuit.channel}`);
  });

  it("names every source with how it is known", () => {
    for (const source of view.sources) expect(source.how).not.toBe("");
  });
});
