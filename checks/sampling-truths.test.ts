import {
  allOnState,
  busyState,
  type CoachState,
  drawRecord,
  sampleCoach,
  solveCoach,
  spanCoach,
} from "@fusebook/core/network";
import { type CoachIndex, type CoachRecord, indexRecord } from "@fusebook/core/record";
import { demoRecord, generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { columnsOf, pointsOf, spansOf } from "./sampling-columns.js";

interface Trial {
  readonly seed: number;
  readonly index: CoachIndex;
  readonly state: CoachState;
}

/** Trees, loops, several batteries, chargers and alternators, figures left out, a charge that the state gives, an ambient in doubt, and the demo coach. */
function* trials(): Generator<Trial> {
  for (let seed = 1; seed <= 36; seed++) {
    const missingRatio = seed % 3 === 0 ? 0.2 : 0;
    const { record } = generateCoach({ seed, circuits: 2 + ((seed * 5) % 40), hasMesh: seed % 4 === 0, missingRatio });
    const policy = seed % 5 === 2 ? { ...record.policy, ambientPlusMinusC: 15 } : record.policy;
    const index = indexRecord({ ...record, policy } as CoachRecord);
    const charge = seed % 6 === 1 ? { chargeRatio: 0.5 } : {};
    const state = seed % 2 ? { ...allOnState(index), ...charge } : busyState(index);
    yield { seed, index, state: { ...state, chargerOn: seed % 5 === 0, engineOn: seed % 7 === 0 } };
  }
  const index = indexRecord(demoRecord());
  yield { seed: 37, index, state: allOnState(index) };
  yield { seed: 38, index, state: { ...busyState(index), chargerOn: true } };
}

describe("samples of a coach", () => {
  it("a sample is the coach that drawRecord writes for it: solved from its own record, every quantity reads the same", () => {
    let values = 0;
    let truths = 0;
    const apart: string[] = [];
    for (const { seed, index, state } of trials()) {
      const samples = sampleCoach(index, state, { seed, samples: 5 });
      if (samples.kind !== "known") throw new Error(JSON.stringify(samples));
      const columns = columnsOf(samples.value);
      for (let place = 0; place < samples.value.solved; place++) {
        const truth = indexRecord(drawRecord(index.record, seed, samples.value.sampleNumbers[place]));
        const found = solveCoach(truth, state);
        if (found.kind !== "known") throw new Error(`${seed}/${place}: ${JSON.stringify(found)}`);
        truths++;
        const points = pointsOf(found.value);
        for (const [name, column] of columns) {
          const value = points.get(name);
          values++;
          if (value === undefined || Math.abs(column[place]! - value) > 1e-9 * Math.max(0.01, Math.abs(value)))
            apart.push(`seed ${seed} place ${place} ${name}: ${column[place]}, from its own record ${value}`);
        }
      }
    }
    process.stdout.write(`${truths} truths, ${values} values, ${apart.length} apart\n`);
    expect(apart).toEqual([]);
    expect(truths).toBeGreaterThan(150);
  });

  it("every sample lies inside the spans", () => {
    let values = 0;
    const outside: string[] = [];
    for (const { seed, index, state } of trials()) {
      const samples = sampleCoach(index, state, { seed, samples: 200 });
      const spans = spanCoach(index, state);
      if (samples.kind !== "known" || spans.kind !== "known") throw new Error(JSON.stringify([samples, spans]));
      const columns = columnsOf(samples.value);
      for (const [name, { span }] of spansOf(spans.value))
        for (const value of columns.get(name)!) {
          values++;
          if (!(span.lo <= value && value <= span.hi))
            outside.push(`seed ${seed} ${name}: ${value} not in ${JSON.stringify(span)}`);
        }
    }
    process.stdout.write(`${values} sampled values, ${outside.length} outside\n`);
    expect(outside.slice(0, 10)).toEqual([]);
    expect(values).toBeGreaterThan(500_000);
  });
});
