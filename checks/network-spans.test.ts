import { allOnState, busyState, type CoachState, type Spanned, solveCoach, spanCoach } from "@fusebook/core/network";
import type { Outcome } from "@fusebook/core/quantity";
import { type CoachIndex, type CoachRecord, indexRecord } from "@fusebook/core/record";
import { demoRecord, generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { seededChance } from "./network-states.js";
import { drawTruth } from "./network-truths.js";

interface Seen {
  truths: number;
  values: number;
  refused: number;
  outside: string[];
  exact: number;
}

function sample(
  record: CoachRecord,
  stateOf: (index: CoachIndex) => CoachState,
  truths: number,
  seed: number,
  seen: Seen,
): void {
  const index = indexRecord(record);
  const spans = spanCoach(index, stateOf(index));
  if (spans.kind !== "known") throw new Error(JSON.stringify(spans));
  const chance = seededChance(seed);
  for (let t = 0; t < truths; t++) {
    const truth = indexRecord(drawTruth(record, chance));
    const found = solveCoach(truth, { ...stateOf(index) });
    if (found.kind !== "known") {
      seen.refused++;
      continue;
    }
    seen.truths++;
    const hold = (what: string, span: Spanned, value: number) => {
      seen.values++;
      if (span.method === "exact-corners") seen.exact++;
      if (!(span.span.lo <= value && value <= span.span.hi))
        seen.outside.push(`seed ${seed} truth ${t} ${what}: ${value} not in ${JSON.stringify(span)}`);
    };
    for (const [id, load] of spans.value.loads) {
      const real = found.value.loads.get(id);
      if (load.kind !== "known" || real?.kind !== "known") continue;
      hold(`${id} onV`, load.value.onV, real.value.onV);
      hold(`${id} onA`, load.value.onA, real.value.onA);
      hold(`${id} dropV`, load.value.dropV, real.value.dropV);
    }
    for (const [name, spanned, real] of [
      ["circuit", spans.value.circuitA, found.value.circuitA],
      ["module", spans.value.moduleA, found.value.moduleA],
      ["cable", spans.value.cableA, found.value.cableA],
    ] as const)
      for (const [id, one] of spanned as unknown as ReadonlyMap<string, Outcome<Spanned>>) {
        const value = (real as unknown as ReadonlyMap<string, { kind: string; value?: number }>).get(id);
        if (one.kind === "known" && value?.kind === "known") hold(`${name} ${id}`, one.value, value.value!);
      }
    for (const [name, least, real] of [
      ["module", spans.value.moduleAtLeastA, found.value.moduleA],
      ["cable", spans.value.cableAtLeastA, found.value.cableA],
    ] as const)
      for (const [id, atLeastA] of least as unknown as ReadonlyMap<string, number>) {
        const value = (real as unknown as ReadonlyMap<string, { kind: string; value?: number }>).get(id);
        if (value?.kind === "known" && value.value! < atLeastA - 1e-9)
          seen.outside.push(`seed ${seed} truth ${t} ${name} ${id}: ${value.value} under at-least ${atLeastA}`);
      }
  }
}

const fresh = (): Seen => ({ truths: 0, values: 0, refused: 0, outside: [], exact: 0 });
const said = (what: string, seen: Seen) =>
  process.stdout.write(
    `${what}: ${seen.truths} truths, ${seen.values} values (${seen.exact} by exact corners), ${seen.outside.length} outside, ${seen.refused} truths without a point\n`,
  );

describe("a span holds every coach that the record may stand for", () => {
  it("1,000 sampled truths of generated coaches lie inside: trees, loops, several batteries, chargers, figures left out", () => {
    const seen = fresh();
    for (let seed = 1; seed <= 50; seed++) {
      const { record } = generateCoach({
        seed,
        circuits: 2 + ((seed * 5) % 40),
        hasMesh: seed % 4 === 0,
        missingRatio: seed % 3 === 0 ? 0.2 : 0,
      });
      const stateOf =
        seed % 2
          ? allOnState
          : (index: CoachIndex) => ({ ...busyState(index), chargerOn: seed % 5 !== 0, engineOn: seed % 7 === 0 });
      sample(record, stateOf, 20, seed, seen);
    }
    said("generated coaches", seen);
    expect(seen.outside).toEqual([]);
    expect(seen.truths).toBeGreaterThanOrEqual(1000 - seen.refused);
    expect(seen.truths).toBeGreaterThan(900);
    expect(seen.exact).toBeGreaterThan(1000);
  });

  it("200 sampled truths of the demo coach lie inside", () => {
    const seen = fresh();
    sample(demoRecord(), allOnState, 100, 1, seen);
    sample(demoRecord(), busyState, 100, 2, seen);
    said("demo coach", seen);
    expect(seen.outside).toEqual([]);
    expect(seen.truths).toBeGreaterThan(150);
  });
});
