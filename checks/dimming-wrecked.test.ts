import { dimmingOf, moduleDimming } from "@fusebook/core/dimming";
import { checkRecord } from "@fusebook/core/findings";
import { type CoachRecord, indexRecord, readRecord } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { seededChance } from "./network-states.js";

type Loose = Record<string, unknown>;

/** Spoils what dimming reads: module kinds and loads, figures absurd or gone, doubts larger than what they belong to. */
function wreck(record: CoachRecord, chance: () => number): CoachRecord {
  const pick = <T>(list: readonly T[]): T => list[Math.min(list.length - 1, Math.floor(chance() * list.length))]!;
  const figure = (usual: number): unknown =>
    pick([usual, 0, -usual, usual * 1e6, { value: usual, basis: "measured", plusMinus: 3 * usual }, undefined]);
  const put = (into: Loose, name: string, value: unknown): void => {
    if (value === undefined) delete into[name];
    else into[name] = value;
  };
  for (const kind of (record.moduleKinds ?? []) as unknown as Loose[]) {
    put(kind, "pwmHz", figure(220));
    put(kind, "minDutyRatio", pick([0, 0.02, 1, 2, -1, undefined]));
    put(kind, "dutySteps", pick([1, 100, 255, undefined]));
    put(kind, "ratedDimmedA", figure(6));
    put(kind, "output", pick(["pwm", "relay", "mixed", undefined]));
  }
  for (const load of (record.loads ?? []) as unknown as Loose[]) {
    put(load, "class", pick(["led-resistor", "led-driver", "filament", "led-linear", "fan", undefined]));
    put(load, "inputCapacitanceF", figure(1e-4));
    put(load, "filamentTimeConstantS", figure(0.03));
    put(load, "dropOutV", figure(9));
    put(load, "ledForwardV", figure(9));
    put(load, "hasOwnSwitch", pick([true, undefined]));
    put(load, "allowsPwm", pick([true, false, undefined]));
    if (chance() < 0.5)
      put(
        load,
        "drawReadings",
        [0, 1, 2].slice(0, 1 + Math.floor(chance() * 2.9)).map(() => ({
          voltageV: figure(11 + 3 * chance()) ?? 12,
          currentA: figure(0.2 + 2 * chance()) ?? 1,
        })),
      );
  }
  return record;
}

/** Every number in an answer, however deep. */
function* numbersIn(value: unknown): Iterable<number> {
  if (typeof value === "number") yield value;
  else if (Array.isArray(value)) for (const one of value) yield* numbersIn(one);
  else if (typeof value === "object" && value !== null) for (const one of Object.values(value)) yield* numbersIn(one);
}

describe("a coach whose lamps and modules are spoiled", () => {
  it("60 of them: never a crash, never a number that is none, whatever is absurd, contradictory or doubted beyond itself", () => {
    const seen = { known: 0, missing: 0, refused: 0 };
    for (let seed = 1; seed <= 60; seed++) {
      const { record } = generateCoach({ seed, circuits: 4 + (seed % 6) });
      const read = readRecord(wreck(record, seededChance(seed)));
      if (read.kind === "refused") throw new Error(JSON.stringify(read.faults[0]));
      const index = indexRecord(read.record);
      for (const id of index.circuits.keys()) {
        const one = dimmingOf(index, id);
        if (one.kind !== "known") throw new Error(`${seed} ${id} ${one.kind}`);
        for (const load of one.value.loads) seen[load.flicker.kind] += 1;
        for (const number of numbersIn({ ...one.value, loads: one.value.loads.map(({ load: _, ...rest }) => rest) }))
          expect(Number.isFinite(number), `seed ${seed}, ${id}`).toBe(true);
      }
      for (const id of index.modules.keys()) expect(moduleDimming(index, id, { isBrief: true }).kind).toBe("known");
      expect(() => checkRecord(index)).not.toThrow();
    }
    // The spoiling leaves some of each.
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
  }, 120_000);
});
