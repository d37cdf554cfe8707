import { allOnState, busyState, solveCoach, spanCoach } from "@fusebook/core/network";
import { type CoachRecord, indexRecord, readRecord } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { seededChance } from "./network-states.js";

type Loose = Record<string, unknown>;

/** Fields without which a record is refused before any engine sees it. */
const REQUIRED = new Set(["value", "name", "from", "to", "channels"]);

/** Parts that the network does not read. */
const PLAIN = new Set(["bank", "dimBlocks", "lamps", "isolation", "openCircuitCurve"]);
const FIGURE = /(V|A|W|Ohm|M|Mm2|value)$/;

/** Spoils a record here and there: fields gone, numbers absurd, references crossed, cables in circles. */
function wreck(record: CoachRecord, chance: () => number): CoachRecord {
  const nodes = (record.nodes ?? []).map((node) => node.id as string);
  const absurd = [0, -1, 1e-9, 1e9, 0.5, 40];
  const pick = <T>(list: readonly T[]): T => list[Math.min(list.length - 1, Math.floor(chance() * list.length))]!;
  const spoil = (value: unknown): void => {
    if (Array.isArray(value)) {
      for (const one of value) spoil(one);
      return;
    }
    if (typeof value !== "object" || value === null) return;
    for (const [name, field] of Object.entries(value as Loose)) {
      if (name === "id" || name === "kind" || name === "class" || name === "basis" || PLAIN.has(name)) continue;
      const luck = chance();
      if (luck < 0.03 && !REQUIRED.has(name)) delete (value as Loose)[name];
      else if (typeof field === "number" && luck < 0.08 && FIGURE.test(name)) (value as Loose)[name] = pick(absurd);
      else if (
        typeof field === "string" &&
        luck < 0.06 &&
        ["from", "to", "node", "returnNode", "feedNode", "module"].includes(name)
      )
        (value as Loose)[name] = luck < 0.04 ? "nowhere" : pick(nodes);
      else spoil(field);
    }
  };
  for (const part of [
    record.supplies,
    record.cables,
    record.moduleKinds,
    record.modules,
    record.circuits,
    record.loads,
  ])
    spoil(part);
  return record;
}

/** Every number in an answer, however deep. */
function* numbersIn(value: unknown): Iterable<number> {
  if (typeof value === "number") yield value;
  else if (value instanceof Map) for (const one of value.values()) yield* numbersIn(one);
  else if (Array.isArray(value)) for (const one of value) yield* numbersIn(one);
  else if (typeof value === "object" && value !== null) for (const one of Object.values(value)) yield* numbersIn(one);
}

describe("a spoiled record", () => {
  it("600 of them: never a crash, never a number that is none, every span the right way round", () => {
    const seen = { known: 0, missing: 0, refused: 0, unreadable: 0 };
    for (let seed = 1; seed <= 300; seed++) {
      const chance = seededChance(seed);
      const { record } = generateCoach({ seed, circuits: 1 + (seed % 30), hasMesh: seed % 3 === 0 });
      const spoiled = wreck(record, chance);
      if (readRecord(spoiled).kind !== "read") {
        seen.unreadable++;
        continue;
      }
      const index = indexRecord(spoiled);
      for (const state of [
        allOnState(index),
        { ...busyState(index), chargerOn: true, engineOn: true, chargeRatio: 0.4 },
      ]) {
        const solved = solveCoach(index, state);
        const spans = spanCoach(index, state);
        seen[spans.kind]++;
        if (solved.kind === "known")
          for (const n of numbersIn(solved.value)) expect(Number.isFinite(n), `seed ${seed}`).toBe(true);
        if (spans.kind !== "known") continue;
        expect(solved.kind).toBe("known");
        for (const group of [spans.value.loads, spans.value.circuitA, spans.value.moduleA, spans.value.cableA])
          for (const n of numbersIn(group)) expect(Number.isFinite(n), `seed ${seed}`).toBe(true);
        for (const one of spans.value.cableA.values())
          if (one.kind === "known") expect(one.value.span.lo).toBeLessThanOrEqual(one.value.span.hi);
      }
    }
    process.stdout.write(
      `spoiled records: ${seen.known} known, ${seen.missing} missing, ${seen.refused} refused, ${seen.unreadable} records refused by the schema\n`,
    );
    expect(seen.known).toBeGreaterThan(100);
    expect(seen.missing + seen.refused).toBeGreaterThan(20);
  });
});
