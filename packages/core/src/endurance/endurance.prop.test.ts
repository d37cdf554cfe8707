import { generateCoach } from "@fusebook/fixtures";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CoachRecord, indexRecord, type LoadProfile } from "../record/index.js";
import { type EnduranceOptions, enduranceOf } from "./index.js";

const SEED = { seed: 20260509 };

const hours = (record: CoachRecord, profile: string | LoadProfile, options: EnduranceOptions = {}) => {
  const found = enduranceOf(indexRecord(record), profile, { horizonH: 2000, ...options });
  if (found.kind !== "known") throw new Error(JSON.stringify(found));
  return found.value.hours;
};

/** Straight lines between solved charges may miss by 2e-4; monotone up to five times that. */
const SLACK = 1.001;
const noLonger = (a: number, b: number) => expect(a).toBeLessThanOrEqual(b * SLACK);

const coaches = Array.from({ length: 6 }, (_, i) => generateCoach({ seed: 101 + i, circuits: 6 + 3 * i }).record);
const coach = fc.integer({ min: 0, max: coaches.length - 1 }).map((i) => coaches[i]!);
const ratio = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const withBattery = (record: CoachRecord, change: (supply: NonNullable<CoachRecord["supplies"]>[number]) => void) => {
  const copy = structuredClone(record) as CoachRecord;
  for (const supply of copy.supplies ?? []) if (supply.kind === "battery") change(supply);
  return copy;
};

const idsOf = (record: CoachRecord) => (record.circuits ?? []).filter((c) => c.isSpare !== true).map((c) => c.id);
const some = (record: CoachRecord, share: number, item: object = {}): LoadProfile => {
  const ids = idsOf(record);
  return { id: "p", spans: [{ hours: 3, on: [{ circuits: ids.slice(0, Math.ceil(share * ids.length)), ...item }] }] };
};

describe("how long the battery lasts", () => {
  it("more load never lasts longer: nominal, least and most", () => {
    fc.assert(
      fc.property(coach, ratio(0, 1), ratio(0, 1), (record, a, b) => {
        const [few, many] = [Math.min(a, b), Math.max(a, b)].map((share) => hours(record, some(record, share)));
        noLonger(many!.nominal, few!.nominal);
        noLonger(many!.span.lo, few!.span.lo);
      }),
      { ...SEED, numRuns: 25 },
    );
  });

  it("more capacity never lasts shorter", () => {
    fc.assert(
      fc.property(coach, ratio(60, 800), ratio(60, 800), (record, a, b) => {
        const of = (ah: number) =>
          hours(
            withBattery(record, (supply) => {
              supply.capacityAh = ah;
            }),
            "evening",
          );
        const [small, large] = [of(Math.min(a, b)), of(Math.max(a, b))];
        noLonger(small.nominal, large.nominal);
        noLonger(small.span.lo, large.span.lo);
        noLonger(small.span.hi, large.span.hi);
      }),
      { ...SEED, numRuns: 20 },
    );
  });

  it("a higher reserve never lasts longer", () => {
    fc.assert(
      fc.property(coach, ratio(0, 1), ratio(0, 1), (record, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((reserveRatio) =>
          hours(record, "night", { reserveRatio }),
        );
        noLonger(high!.nominal, low!.nominal);
        noLonger(high!.span.lo, low!.span.lo);
        noLonger(high!.span.hi, low!.span.hi);
      }),
      { ...SEED, numRuns: 20 },
    );
  });

  it("colder never lasts longer", () => {
    fc.assert(
      fc.property(coach, ratio(-30, 45), ratio(-30, 45), (record, a, b) => {
        const [cold, warm] = [Math.min(a, b), Math.max(a, b)].map((batteryC) => hours(record, "evening", { batteryC }));
        noLonger(cold!.nominal, warm!.nominal);
        noLonger(cold!.span.lo, warm!.span.lo);
        noLonger(cold!.span.hi, warm!.span.hi);
      }),
      { ...SEED, numRuns: 20 },
    );
  });

  it("dimming never lasts shorter, whatever dims", () => {
    fc.assert(
      fc.property(coach, ratio(0.01, 1), ratio(0.01, 1), (record, a, b) => {
        const lights = ["led-resistor", "led-linear", "filament"] as const;
        const at = (dutyRatio: number): LoadProfile => ({
          id: "p",
          spans: [{ hours: 4, on: [{ classes: [...lights], dutyRatio }] }],
        });
        const [deep, full] = [Math.min(a, b), Math.max(a, b)].map((duty) => hours(record, at(duty)));
        noLonger(full!.nominal, deep!.nominal);
        noLonger(full!.span.lo, deep!.span.lo);
        noLonger(full!.span.hi, deep!.span.hi);
      }),
      { ...SEED, numRuns: 25 },
    );
  });

  it("the nominal hours lie inside their span, and the charge between its two bounds, at any share", () => {
    fc.assert(
      fc.property(coach, ratio(0.05, 1), (record, shareRatio) => {
        const found = enduranceOf(indexRecord(record), some(record, 0.8, { shareRatio }), { horizonH: 500 });
        if (found.kind !== "known") throw new Error(JSON.stringify(found));
        const { nominal, span } = found.value.hours;
        expect(span.lo).toBeLessThanOrEqual(nominal);
        expect(span.hi).toBeGreaterThanOrEqual(nominal);
        const { points, least, most } = found.value.banks[0]!;
        const on = (line: readonly { timeH: number; chargeRatio: number }[], t: number): number => {
          const i = line.findIndex((p) => p.timeH >= t);
          if (i <= 0) return line[i < 0 ? line.length - 1 : 0]!.chargeRatio;
          const [p, q] = [line[i - 1]!, line[i]!];
          return p.chargeRatio + ((q.chargeRatio - p.chargeRatio) * (t - p.timeH)) / (q.timeH - p.timeH || 1);
        };
        for (const { timeH, chargeRatio } of points) {
          if (timeH <= least.at(-1)!.timeH) expect(on(least, timeH)).toBeLessThanOrEqual(chargeRatio + 0.003);
          if (timeH <= most.at(-1)!.timeH) expect(on(most, timeH)).toBeGreaterThanOrEqual(chargeRatio - 0.003);
        }
      }),
      { ...SEED, numRuns: 15 },
    );
  });
});
