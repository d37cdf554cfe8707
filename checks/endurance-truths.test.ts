import { type Endurance, enduranceOf } from "@fusebook/core/endurance";
import { drawRecord } from "@fusebook/core/network";
import { type CoachRecord, indexRecord } from "@fusebook/core/record";
import { demoRecord, generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";

/*
 * The least and the most are said to be guaranteed over the record's figures. A truth is drawn from the spans of the record, every figure of it known
 * exactly; its own hours must lie between them, however the draw falls out.
 */

const ran = (record: CoachRecord, profile: string, spans: "fine" | "coarse" | "none"): Endurance => {
  const found = enduranceOf(indexRecord(record), profile, { reserveRatio: 0.4, horizonH: 400, spans });
  if (found.kind !== "known") throw new Error(`${record.id} ${profile}: ${JSON.stringify(found)}`);
  return found.value;
};

const COACHES: readonly (readonly [string, CoachRecord])[] = [
  ["the demo coach, figures missing", demoRecord()],
  ...[1, 2, 3].map((seed) => [`generated ${seed}`, generateCoach({ seed, circuits: 10 + 8 * seed }).record] as const),
  ["generated with figures left out", generateCoach({ seed: 9, circuits: 30, missingRatio: 0.2 }).record],
];

describe("the hours of a drawn truth lie between the least and the most", () => {
  it.each(COACHES)(
    "%s: 12 truths, two profiles, and the coarse span holds the fine one",
    (name, record) => {
      let tightest = Number.POSITIVE_INFINITY;
      for (const profile of ["evening", "night"]) {
        const fine = ran(record, profile, "fine");
        const coarse = ran(record, profile, "coarse").hours.span;
        const { lo, hi } = fine.hours.span;
        expect(coarse.lo).toBeLessThanOrEqual(lo * (1 + 1e-9));
        expect(coarse.hi).toBeGreaterThanOrEqual(hi * (1 - 1e-9));
        for (let seed = 1; seed <= 12; seed++) {
          const hours = ran(drawRecord(record, seed), profile, "none").hours.nominal;
          expect(hours, `${profile}, truth ${seed}`).toBeGreaterThanOrEqual(lo * (1 - 2e-4));
          expect(hours, `${profile}, truth ${seed}`).toBeLessThanOrEqual(hi * (1 + 2e-4));
          tightest = Math.min(tightest, hours / lo - 1, 1 - hours / hi);
        }
      }
      process.stdout.write(`${name}: nearest to an end ${(100 * tightest).toFixed(1)} % of it\n`);
    },
    120_000,
  );
});
