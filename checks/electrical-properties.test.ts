import { allOnState, busyState, type CoachSolution, solveCoach } from "@fusebook/core/network";
import { ampacityOf, deviceCeilingOf } from "@fusebook/core/protection";
import { type CoachRecord, indexRecord, policyOf } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conductorsOf, copyOf, heat, known, type Place, stretch, thicken } from "./properties-coach.js";

/** Laws that no figure may break, through the public engines, on coaches made from a seed. */
const RUNS = { seed: 20261125, numRuns: 110 } as const;
/** What a second solve may differ by: the solver balances to 1e-9 of the currents, tens of amperes. */
const LEAST_V = 1e-7;

const seeds = fc.integer({ min: 1, max: 100_000 });
const sizes = fc.integer({ min: 2, max: 14 });
const choices = fc.nat(1_000_000);
const factors = fc.double({ min: 1.05, max: 3, noNaN: true });

function solved(record: CoachRecord): CoachSolution {
  const index = indexRecord(record);
  return known(solveCoach(index, busyState(index)));
}

/** The drop of every load that is behind a conductor, before and after a change. */
function* dropsBehind(place: Place, before: CoachSolution, after: CoachSolution) {
  for (const [id, one] of before.loads) {
    const other = after.loads.get(id);
    if (one.kind !== "known" || other?.kind !== "known" || !place.isBehind(id, before)) continue;
    yield { id, before: one.value, after: other.value };
  }
}

describe("laws of the electrical engines on generated coaches", () => {
  it("more copper: two gauge numbers thicker never adds to the drop of a load behind it, nor takes volts from it", () => {
    const seen = { changes: 0, loads: 0 };
    fc.assert(
      fc.property(seeds, sizes, choices, (seed, circuits, choice) => {
        const { record } = generateCoach({ seed, circuits });
        const draft = copyOf(record);
        const places = conductorsOf(draft);
        const place = places[choice % places.length]!;
        if (!thicken(place.run)) return;
        seen.changes++;
        const before = solved(record);
        for (const one of dropsBehind(place, before, solved(draft))) {
          seen.loads++;
          expect(one.after.dropV, `${place.what} ${one.id}`).toBeLessThanOrEqual(one.before.dropV + LEAST_V);
          expect(one.after.onV, `${place.what} ${one.id}`).toBeGreaterThanOrEqual(one.before.onV - LEAST_V);
        }
      }),
      RUNS,
    );
    expect(seen.changes).toBeGreaterThan(70);
    expect(seen.loads).toBeGreaterThan(100);
  });

  it("length: a longer wire never takes from the drop of a load behind it", () => {
    fc.assert(
      fc.property(seeds, sizes, choices, factors, (seed, circuits, choice, by) => {
        const { record } = generateCoach({ seed, circuits });
        const draft = copyOf(record);
        const places = conductorsOf(draft);
        const place = places[choice % places.length]!;
        stretch(place.run, by);
        for (const one of dropsBehind(place, solved(record), solved(draft)))
          expect(one.after.dropV, `${place.what} ${one.id}`).toBeGreaterThanOrEqual(one.before.dropV - LEAST_V);
      }),
      RUNS,
    );
  });

  it("ambient: hotter air everywhere never takes from a drop, and never adds to what a conductor or its fuse may carry", () => {
    fc.assert(
      fc.property(seeds, sizes, fc.integer({ min: 1, max: 20 }), (seed, circuits, byK) => {
        const { record } = generateCoach({ seed, circuits });
        const policy = policyOf(record);
        const draft = copyOf(record);
        heat(draft, byK, policy);
        const [cool, hot] = [solved(record), solved(draft)];
        for (const [id, one] of cool.loads) {
          const other = hot.loads.get(id);
          if (one.kind === "known" && other?.kind === "known")
            expect(other.value.dropV, id).toBeGreaterThanOrEqual(one.value.dropV - LEAST_V);
        }
        const hotPolicy = policyOf(draft);
        for (const { what, run } of conductorsOf(draft)) {
          const [a, b] = [ampacityOf(run as never, policy), ampacityOf(run as never, hotPolicy)];
          if (a.kind === "known" && b.kind === "known")
            expect(b.value.ampacityA, what).toBeLessThanOrEqual(a.value.ampacityA);
          const [c, d] = [deviceCeilingOf(run as never, policy), deviceCeilingOf(run as never, hotPolicy)];
          if (c.kind === "known" && d.kind === "known") expect(d.value.maxA, what).toBeLessThanOrEqual(c.value.maxA);
        }
      }),
      RUNS,
    );
  });

  it("duty: a longer pulse never takes from the mean or the RMS current of a load, nor adds to the drop in the pulse; without filaments that stays as it is", () => {
    fc.assert(
      fc.property(
        seeds,
        sizes,
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (seed, circuits, one, other) => {
          const index = indexRecord(generateCoach({ seed, circuits }).record);
          const hasFilament = [...index.loads.values()].some((load) => load.class === "filament");
          const state = allOnState(index);
          const at = (duty: number) =>
            known(solveCoach(index, { ...state, dutyRatio: new Map([...state.on].map((id) => [id, duty])) }));
          const [low, high] = [at(Math.min(one, other)), at(Math.max(one, other))];
          for (const [id, a] of low.loads) {
            const b = high.loads.get(id);
            if (a.kind !== "known" || b?.kind !== "known") continue;
            expect(b.value.meanA, id).toBeGreaterThanOrEqual(a.value.meanA - 1e-9);
            expect(b.value.rmsA, id).toBeGreaterThanOrEqual(a.value.rmsA - 1e-9);
            // A filament dimmed deeper is cooler and draws more in its pulse.
            expect(b.value.dropV, id).toBeLessThanOrEqual(a.value.dropV + LEAST_V);
            if (!hasFilament) expect(b.value.dropV, id).toBeGreaterThanOrEqual(a.value.dropV - LEAST_V);
          }
        },
      ),
      RUNS,
    );
  });
});
