import { describe, expect, it } from "vitest";
import { type CoachRecord, indexRecord } from "../record/index.js";
import { loadCurrentA, sampleCoach, solveCoach, spanCoach } from "./index.js";
import { filamentPulseRatio, pulsedModel } from "./pulsed-model.js";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** One battery, one dimming channel, one filament of whose current 10 % are in doubt. */
const record = {
  format: "fusebook/1",
  coach: { name: "Bench", nominalV: 12 },
  supplies: [
    {
      id: "s1",
      kind: "battery",
      name: "House",
      node: "bat",
      returnNode: "neg",
      openCircuitV: exact(12.6),
      internalResistanceOhm: exact(0.01),
    },
  ],
  nodes: ["bat", "neg"].map((id) => ({ id, kind: "stud", name: id, rail: id === "neg" ? "return" : "positive" })),
  moduleKinds: [{ id: "K", name: "K", channels: 8, onResistanceOhm: exact(0.015), quiescentA: exact(0) }],
  modules: [{ id: "m1", kind: "K", feedNode: "bat", returnNode: "neg" }],
  circuits: [
    {
      id: "c1",
      module: "m1",
      channel: 1,
      fuse: { ratedA: 10, resistanceOhm: exact(0.005) },
      out: { resistanceOhm: exact(0.06) },
      return: { resistanceOhm: exact(0.06), node: "neg" },
      loads: ["l1"],
    },
  ],
  loads: [
    {
      id: "l1",
      name: "Lamp",
      class: "filament",
      ratedV: 12,
      currentA: { value: 1.75, basis: "measured", plusMinus: 0.175 },
    },
  ],
} as unknown as CoachRecord;

const index = indexRecord(record);
const stateAt = (dutyRatio: number) => ({
  name: "dimmed",
  on: new Set(["c1" as never]),
  dutyRatio: new Map([["c1" as never, dutyRatio]]),
});

describe("a load in its pulse", () => {
  it("a filament at a quarter of the time has the resistance of half the volts: 2 to the power 0.45 of its full current", () => {
    expect(filamentPulseRatio(0.25)).toBeCloseTo(2 ** 0.45, 12);
    expect(filamentPulseRatio(1)).toBe(1);
    const lamp = { kind: "filament", currentA: 1.75, ratedV: 12 } as const;
    const halfOhm = 6 / loadCurrentA(lamp, 6);
    expect(loadCurrentA(pulsedModel(lamp, 0.25), 12)).toBeCloseTo(12 / halfOhm, 12);
  });

  it("every other load draws in its pulse what it draws when full", () => {
    const led = { kind: "led", forwardV: 9, resistanceOhm: 3 } as const;
    expect(pulsedModel(led, 0.1)).toBe(led);
  });

  it("samples of a dimmed filament lie inside the spans of the same state, and reach into both halves of them", () => {
    const state = stateAt(0.3);
    const solved = solveCoach(index, state);
    const spans = spanCoach(index, state);
    const samples = sampleCoach(index, state, { seed: 7, samples: 200 });
    if (solved.kind !== "known" || spans.kind !== "known" || samples.kind !== "known")
      throw new Error("known is wanted");
    const span = spans.value.loads.get("l1" as never);
    const point = solved.value.loads.get("l1" as never);
    const drawn = samples.value.loads.get("l1" as never);
    if (span?.kind !== "known" || point?.kind !== "known" || drawn?.kind !== "known")
      throw new Error("known is wanted");
    expect(point.value.onA).toBeGreaterThan(1.75 * 1.25);
    const onA = [...drawn.value.onA];
    for (const a of onA) {
      expect(a).toBeGreaterThanOrEqual(span.value.onA.span.lo);
      expect(a).toBeLessThanOrEqual(span.value.onA.span.hi);
    }
    expect(Math.min(...onA)).toBeLessThan(point.value.onA);
    expect(Math.max(...onA)).toBeGreaterThan(point.value.onA);
  });
});
