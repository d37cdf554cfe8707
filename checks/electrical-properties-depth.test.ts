import { capacitorInput, lightOfDuty, onTimeDrop } from "@fusebook/core/dimming";
import { enduranceOf } from "@fusebook/core/endurance";
import { fuseGatesOf, inrushMargin, openingTimes, protectionOf, withstandOf } from "@fusebook/core/protection";
import { type CoachIndex, type Fuse, indexRecord, type LoadProfile, policyOf } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conductorsOf, copyOf, heat, known, stretch, thicken } from "./properties-coach.js";

const RUNS = { seed: 20261125, numRuns: 60 } as const;
/** Two ways of the same sum: rounding, no more. */
const ROUNDING = 1e-9;
const SIZES_A = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40] as const;

const seeds = fc.integer({ min: 1, max: 100_000 });
const sizes = fc.integer({ min: 2, max: 10 });
const choices = fc.nat(1_000_000);
const duties = fc.double({ min: 0.02, max: 1, noNaN: true });
const fuses = fc.record({
  type: fc.constantFrom("blade" as const, "glass-fast" as const, "glass-slow" as const),
  a: fc.constantFrom(...SIZES_A),
  b: fc.constantFrom(...SIZES_A),
  plusMinus: fc.double({ min: 0, max: 0.2, noNaN: true }),
});

const gatesOf = (type: Fuse["type"], ratedA: number) => known(fuseGatesOf({ type, ratedA } as Fuse, "fuse"));

/** The protection of every circuit of a coach whose fuse and fault are known. */
function* protectedCircuits(index: CoachIndex) {
  for (const circuit of index.circuits.values()) {
    if (circuit.isSpare === true) continue;
    const found = protectionOf(index, circuit.id);
    if (found.kind === "known" && found.value.fault.kind === "known")
      yield { id: circuit.id, of: found.value, fault: found.value.fault.value };
  }
}

describe("laws of protection", () => {
  it("a bigger fuse never opens sooner, at the soonest or at the latest, at any current", () => {
    fc.assert(
      fc.property(fuses, fc.double({ min: 0.1, max: 3000, noNaN: true }), ({ type, a, b }, currentA) => {
        const small = openingTimes(gatesOf(type, Math.min(a, b)), currentA);
        const big = openingTimes(gatesOf(type, Math.max(a, b)), currentA);
        expect(big.soonestS).toBeGreaterThanOrEqual(small.soonestS * (1 - ROUNDING));
        expect(big.latestS).toBeGreaterThanOrEqual(small.latestS * (1 - ROUNDING));
        expect(small.soonestS).toBeLessThanOrEqual(small.latestS);
      }),
      { ...RUNS, numRuns: 2000 },
    );
  });

  it("more current never opens a fuse later", () => {
    const current = fc.double({ min: 0.1, max: 3000, noNaN: true });
    fc.assert(
      fc.property(fuses, current, current, ({ type, a }, one, other) => {
        const gates = gatesOf(type, a);
        const [less, more] = [openingTimes(gates, Math.min(one, other)), openingTimes(gates, Math.max(one, other))];
        expect(more.soonestS).toBeLessThanOrEqual(less.soonestS * (1 + ROUNDING));
        expect(more.latestS).toBeLessThanOrEqual(less.latestS * (1 + ROUNDING));
      }),
      { ...RUNS, numRuns: 2000 },
    );
  });

  it("on generated coaches the next fuse up clears the far-end short no sooner and lets no less of the start pass", () => {
    const seen = { circuits: 0 };
    fc.assert(
      fc.property(seeds, sizes, (seed, circuits) => {
        const { record } = generateCoach({ seed, circuits });
        const draft = copyOf(record);
        for (const circuit of draft.circuits ?? []) {
          const { fuse } = circuit;
          if (typeof fuse?.ratedA !== "number") continue;
          (fuse as { ratedA: number; resistanceOhm?: number }).ratedA =
            SIZES_A.find((a) => a > (fuse.ratedA as number)) ?? 40;
        }
        const bigger = indexRecord(draft);
        for (const { id, of, fault } of protectedCircuits(indexRecord(record))) {
          const other = protectionOf(bigger, id);
          if (of.fuse.kind !== "known" || other.kind !== "known" || other.value.fuse.kind !== "known") continue;
          seen.circuits++;
          // The same current: a bigger fuse has less resistance too, and that is not what is asked here.
          const before = openingTimes(of.fuse.value, fault.currentA);
          const after = openingTimes(other.value.fuse.value, fault.currentA);
          expect(after.latestS, id).toBeGreaterThanOrEqual(before.latestS * (1 - ROUNDING));
          if (of.inrush.kind !== "known") continue;
          const { curve } = of.inrush.value;
          expect(inrushMargin(curve, other.value.fuse.value).ratio, id).toBeGreaterThanOrEqual(
            inrushMargin(curve, of.fuse.value).ratio * (1 - ROUNDING),
          );
        }
      }),
      RUNS,
    );
    expect(seen.circuits).toBeGreaterThan(100);
  });

  it("more copper never lowers a prospective current, more length or hotter air never raises it", () => {
    const seen = { compared: 0, moved: 0 };
    fc.assert(
      fc.property(
        seeds,
        sizes,
        choices,
        fc.constantFrom("thicken" as const, "stretch" as const, "heat" as const),
        (seed, circuits, choice, change) => {
          const { record } = generateCoach({ seed, circuits });
          const draft = copyOf(record);
          const places = conductorsOf(draft);
          const { run } = places[choice % places.length]!;
          if (change === "thicken" && !thicken(run)) return;
          if (change === "stretch") stretch(run, 1.7);
          if (change === "heat") heat(draft, 15, policyOf(record));
          const sign = change === "thicken" ? 1 : -1;
          const after = indexRecord(draft);
          for (const { id, fault } of protectedCircuits(indexRecord(record))) {
            const other = protectionOf(after, id);
            if (other.kind !== "known" || other.value.fault.kind !== "known") continue;
            seen.compared++;
            const moved = other.value.fault.value.currentA / fault.currentA - 1;
            if (Math.abs(moved) > 1e-6) seen.moved++;
            expect(sign * moved, `${change} ${id}`).toBeGreaterThanOrEqual(-ROUNDING);
            for (const end of ["lo", "hi"] as const)
              expect(
                sign * (other.value.fault.value.span[end] / fault.span[end] - 1),
                `${change} ${id} ${end}`,
              ).toBeGreaterThanOrEqual(-1e-7);
          }
        },
      ),
      RUNS,
    );
    expect(seen.compared).toBeGreaterThan(100);
    expect(seen.moved).toBeGreaterThan(50);
  });

  it("more length never raises the peak of a start, hotter air never lets a conductor stand more", () => {
    fc.assert(
      fc.property(seeds, sizes, (seed, circuits) => {
        const { record } = generateCoach({ seed, circuits });
        const policy = policyOf(record);
        const draft = copyOf(record);
        for (const { run } of conductorsOf(draft)) stretch(run, 1.5);
        const longer = indexRecord(draft);
        for (const { id, of } of protectedCircuits(indexRecord(record))) {
          const other = protectionOf(longer, id);
          if (of.inrush.kind !== "known" || other.kind !== "known" || other.value.inrush.kind !== "known") continue;
          expect(other.value.inrush.value.peakA, id).toBeLessThanOrEqual(of.inrush.value.peakA * (1 + ROUNDING));
        }
        heat(draft, 15, policy);
        for (const { what, run } of conductorsOf(draft)) {
          const [cool, hot] = [withstandOf(run as never, policy), withstandOf(run as never, policyOf(draft))];
          if (cool.kind !== "known" || hot.kind !== "known") continue;
          expect(hot.value.limitA2s, what).toBeLessThanOrEqual(cool.value.limitA2s * (1 + ROUNDING));
          expect(hot.value.span.hi, what).toBeLessThanOrEqual(cool.value.span.hi * (1 + ROUNDING));
        }
      }),
      RUNS,
    );
  });
});

describe("laws of duty and of hours", () => {
  it("duty: light, mean and RMS never fall with it; a filament's pulse never rises with it", () => {
    const models = [
      { kind: "led", forwardV: 9, resistanceOhm: 2 },
      { kind: "filament", currentA: 1.75, ratedV: 12 },
      { kind: "resistance", resistanceOhm: 4 },
      { kind: "current", currentA: 1, kneeV: 6 },
    ] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...models),
        duties,
        duties,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (model, one, other, loopOhm) => {
          const at = (dutyRatio: number) => known(onTimeDrop({ supplyV: 12.6, loopOhm, model, dutyRatio }));
          const [low, high] = [at(Math.min(one, other)), at(Math.max(one, other))];
          for (const figure of ["meanA", "rmsA", "wireHeatW", "loadW"] as const)
            expect(high[figure], figure).toBeGreaterThanOrEqual(low[figure] * (1 - 1e-9));
          expect(high.onA).toBeLessThanOrEqual(low.onA * (1 + 1e-9));
          for (const lamp of ["led-resistor", "led-linear", "filament"] as const)
            expect(known(lightOfDuty(lamp, Math.max(one, other))).luminanceRatio).toBeGreaterThanOrEqual(
              known(lightOfDuty(lamp, Math.min(one, other))).luminanceRatio,
            );
        },
      ),
      { ...RUNS, numRuns: 500 },
    );
  });

  it("duty: a driver with a capacitor never runs for less of the time, nor rushes harder, for a longer pulse; more loop never raises its first peak", () => {
    fc.assert(
      fc.property(
        duties,
        duties,
        fc.record({
          loopOhm: fc.double({ min: 0.05, max: 1, noNaN: true }),
          capacitanceF: fc.double({ min: 20e-6, max: 1e-3, noNaN: true }),
          powerW: fc.double({ min: 2, max: 30, noNaN: true }),
          pwmHz: fc.constantFrom(100, 220, 500, 1200),
        }),
        (one, other, figures) => {
          const at = (dutyRatio: number, loopOhm = figures.loopOhm) =>
            capacitorInput({ supplyV: 12.6, dropOutV: 8, ...figures, dutyRatio, loopOhm });
          const [low, high, longer] = [
            at(Math.min(one, other)),
            at(Math.max(one, other)),
            at(one, 1.5 * figures.loopOhm),
          ];
          const same = at(one);
          if (low.kind !== "known" || high.kind !== "known" || longer.kind !== "known" || same.kind !== "known") return;
          // The share of time is counted in whole steps of the charge. The mean current may fall a little with the duty: less is lost in the loop.
          expect(high.value.runsRatio).toBeGreaterThanOrEqual(low.value.runsRatio - 1e-4);
          expect(high.value.peakA).toBeLessThanOrEqual(low.value.peakA * (1 + 1e-6));
          expect(longer.value.firstPeakA).toBeLessThanOrEqual(same.value.firstPeakA);
        },
      ),
      { ...RUNS, numRuns: 200 },
    );
  });

  it("duty and share: lights used more, or brighter, never give more hours on battery", () => {
    const profile = (dutyRatio: number, shareRatio: number): LoadProfile =>
      ({
        id: "asked",
        name: "asked",
        spans: [
          {
            hours: 5,
            on: [
              { classes: ["led-resistor", "led-linear", "filament"], dutyRatio, shareRatio },
              { classes: ["electronics", "fan"], shareRatio: 0.3 },
            ],
          },
        ],
      }) as LoadProfile;
    const seen = { coaches: 0, moved: 0 };
    fc.assert(
      fc.property(seeds, sizes, duties, duties, (seed, circuits, one, other) => {
        const index = indexRecord(generateCoach({ seed, circuits }).record);
        const hours = (dutyRatio: number, shareRatio: number) =>
          enduranceOf(index, profile(dutyRatio, shareRatio), { spans: "none" });
        const [a, b] = [Math.min(one, other), Math.max(one, other)];
        const [dim, bright, often] = [hours(a, 0.4), hours(b, 0.4), hours(b, 0.8)];
        if (dim.kind !== "known" || bright.kind !== "known" || often.kind !== "known") return;
        seen.coaches++;
        if (often.value.hours.nominal < bright.value.hours.nominal * (1 - 1e-6)) seen.moved++;
        expect(bright.value.hours.nominal).toBeLessThanOrEqual(dim.value.hours.nominal * (1 + 1e-6));
        expect(often.value.hours.nominal).toBeLessThanOrEqual(bright.value.hours.nominal * (1 + 1e-6));
      }),
      { ...RUNS, numRuns: 30 },
    );
    expect(seen.coaches).toBeGreaterThan(20);
    expect(seen.moved).toBeGreaterThan(5);
  });

  it("reserve and cold: more kept back, or a colder battery, never gives more hours", () => {
    fc.assert(
      fc.property(
        seeds,
        sizes,
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.integer({ min: -15, max: 20 }),
        (seed, circuits, reserveRatio, more, batteryC) => {
          const index = indexRecord(generateCoach({ seed, circuits }).record);
          const hours = (options: Parameters<typeof enduranceOf>[2]) => {
            const found = enduranceOf(index, "evening", { spans: "none", ...options });
            return found.kind === "known" ? found.value.hours.nominal : undefined;
          };
          const [plain, kept] = [hours({ reserveRatio }), hours({ reserveRatio: reserveRatio + more })];
          if (plain !== undefined && kept !== undefined) expect(kept).toBeLessThanOrEqual(plain * (1 + 1e-9));
          const [cold, warm] = [hours({ reserveRatio, batteryC }), hours({ reserveRatio, batteryC: batteryC + 5 })];
          if (cold !== undefined && warm !== undefined) expect(cold).toBeLessThanOrEqual(warm * (1 + 1e-9));
        },
      ),
      { ...RUNS, numRuns: 30 },
    );
  });
});
