import { checkRecord, type Finding } from "@fusebook/core/findings";
import { applyPlan, frontOf, type Plan } from "@fusebook/core/plan";
import { type CoachIndex, indexRecord, type LoadClass, readRecord, writeRecord } from "@fusebook/core/record";
import { decodeAddress, readOption } from "@fusebook/core/switchbank";
import { generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";

/**
 * Plans for generated coaches, held against what common practice says: motors, pumps, fans, actuators, valves, heater and inverter signals, relays, outlets,
 * electronics and detectors are not dimmed.
 */
const DIMMABLE: readonly LoadClass[] = ["led-resistor", "led-linear", "filament", "led-driver"];
const coaches = Array.from(
  { length: 24 },
  (_, i) => generateCoach({ seed: i + 1, circuits: 12 + ((i * 7) % 60) }).record,
);

const wishAll = (index: CoachIndex) => ({
  id: "j1",
  title: "dim what can dim",
  wishes: [...index.loads.values()]
    .filter((load) => load.class !== undefined && DIMMABLE.includes(load.class))
    .map((load, i) => ({
      load: load.id,
      wish: i % 4 === 0 ? ("must-dim" as const) : ("nice-to-dim" as const),
      weight: 1 + (i % 3),
    })),
});

const fronts = coaches.map((record) => {
  const index = indexRecord(record);
  const job = wishAll(index);
  return { index, job, front: frontOf(index, job as never, { check: null }) };
});

const eachTouched = (
  look: (after: CoachIndex, plan: Plan, choice: Plan["modules"][number], before: CoachIndex) => void,
) => {
  let count = 0;
  for (const { index, front } of fronts)
    for (const plan of front.plans) {
      const after = indexRecord(applyPlan(index.record, plan));
      for (const choice of plan.modules)
        if (choice.isTouched) {
          count++;
          look(after, plan, choice, index);
        }
    }
  return count;
};

describe("plans for generated coaches", () => {
  it("enable no block with a load that must not dim, that is unknown, or a channel nobody looked at", () => {
    const count = eachTouched((after, _plan, choice, before) => {
      const kind = after.moduleKinds.get(choice.to)!;
      const wired = before.moduleKinds.get(choice.from!)!.channels;
      const channels = (kind.dimBlocks ?? [])
        .filter((block) => choice.enables.includes(block.id))
        .flatMap((block) => block.channels);
      for (const channel of channels) {
        const circuits = (after.circuitsOfModule.get(choice.module) ?? []).filter(
          (circuit) => circuit.channel === channel,
        );
        if (circuits.length === 0) expect(channel).toBeGreaterThan(wired);
        for (const circuit of circuits) {
          if ((circuit.loads ?? []).length === 0) expect(circuit.isSpare).toBe(true);
          for (const id of circuit.loads ?? []) {
            const load = after.loads.get(id)!;
            expect(
              load.allowsPwm === true || (load.class !== undefined && DIMMABLE.includes(load.class)),
              load.name,
            ).toBe(true);
            expect(load.class).not.toBe("detector");
          }
        }
      }
    });
    expect(count).toBeGreaterThan(50);
  });
  it("set banks that read back as the module's address and the blocks of the plan", () => {
    let read = 0;
    eachTouched((after, _plan, choice) => {
      const kind = after.moduleKinds.get(choice.to)!;
      const module = after.modules.get(choice.module)!;
      if (choice.positions === undefined) {
        expect(choice.positionsNeed.length).toBeGreaterThan(0);
        return;
      }
      expect(module.positionsFound).toBe(choice.positions);
      if (kind.bank?.address === undefined) return;
      expect(decodeAddress(kind.bank.address, choice.positions)).toEqual({ kind: "known", value: module.address });
      if (kind.bank.options !== undefined)
        expect(readOption(kind.bank, choice.positions)).toEqual({ kind: "known", value: choice.enables });
      read++;
    });
    expect(read).toBeGreaterThan(20);
  });
  it("leave a record that is accepted, with every wire where it was", () => {
    for (const { index, front } of fronts)
      for (const plan of front.plans) {
        const after = applyPlan(index.record, plan);
        expect(readRecord(JSON.parse(writeRecord(after))).kind).toBe("read");
        expect((after.circuits ?? []).map((circuit) => [circuit.id, circuit.module, circuit.channel])).toEqual(
          (index.record.circuits ?? []).map((circuit) => [circuit.id, circuit.module, circuit.channel]),
        );
        expect(plan.wiresMoved).toBe(0);
      }
  });
  it("have no two alike and none beaten on cost, wish value and modules touched", () => {
    for (const { front } of fronts) {
      const ids = front.plans.map((plan) => plan.id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const a of front.plans)
        for (const b of front.plans)
          if (a !== b)
            expect(
              a.costCents <= b.costCents && a.wishValue >= b.wishValue && a.modulesTouched <= b.modulesTouched,
              `${a.id} ${b.id}`,
            ).toBe(false);
    }
  });
  it("say of every unmet wish what stops it, and of none that is met", () => {
    for (const { front, job } of fronts)
      for (const plan of front.plans) {
        const unmet = plan.unmet.map((wish) => wish.load);
        for (const wish of plan.unmet) expect(wish.stoppedBy.length, `${plan.id} ${wish.load}`).toBeGreaterThan(0);
        for (const { load } of job.wishes) expect(unmet.includes(load)).toBe(!plan.dims.includes(load));
      }
  });
  it("are the same whatever else was planned before: same input, same front", () => {
    for (const { index, job, front } of fronts.slice(0, 6))
      expect(frontOf(indexRecord(index.record), job as never, { check: null })).toEqual(front);
  });
  it("after the check leave no stop and no mend that the coach did not have", () => {
    const grave = (findings: readonly Finding[]) =>
      findings
        .filter((finding) => finding.severity === "stop" || finding.severity === "mend")
        .map((finding) => `${finding.code} ${finding.subject.id} ${finding.severity}`);
    for (const { index, job } of fronts.slice(0, 5)) {
      const front = frontOf(index, job as never, { mostChecks: 25 });
      const before = new Set(grave(checkRecord(index)));
      for (const plan of front.plans)
        if (!front.unchecked.includes(plan.id))
          expect(
            grave(checkRecord(indexRecord(applyPlan(index.record, plan)))).filter((each) => !before.has(each)),
          ).toEqual([]);
    }
  });
});
