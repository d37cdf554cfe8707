import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LoadModel } from "../network/index.js";
import type { Outcome } from "../quantity/index.js";
import { type CapacitorInput, capacitorInput } from "./capacitor-input.js";
import { filamentPulse } from "./filament-heat.js";
import { stepPeakA } from "./loop-inductance.js";
import { modulationDepth } from "./modulation-depth.js";
import { onTimeDrop } from "./on-time-drop.js";
import { powerOfDuty } from "./power-of-duty.js";

const knownOf = <T>(outcome: Outcome<T>): T => {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};
const num = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** What rounding and the steps of the solution may do to an inequality. */
const SLACK = 1e-6;

const driver = fc.record({
  supplyV: num(11.5, 14.4),
  loopOhm: num(0.03, 0.4),
  capacitanceF: num(20e-6, 2e-3),
  powerW: num(2, 24),
  dropOutV: num(6, 9),
  pwmHz: num(150, 2000),
  dutyRatio: num(0.05, 0.95),
});

describe("capacitorInput", () => {
  it("keeps charge and power: what the loop brings on the mean is what the driver and the wire take", () => {
    fc.assert(
      fc.property(driver, (input) => {
        const pulses = knownOf(capacitorInput(input));
        // Power in = power of the driver while it runs + heat of the loop, but for what it takes on its short way out, a hundredth of its drop-out.
        const { supplyV, capacitanceF, dropOutV, pwmHz, powerW } = input;
        const onWayOutW = capacitanceF * (dropOutV ** 2 - (0.99 * dropOutV) ** 2) * pwmHz;
        const inW = supplyV * pulses.meanA;
        const outW = powerW * pulses.runsRatio + pulses.loopHeatW;
        expect(Math.abs(inW - outW)).toBeLessThanOrEqual(onWayOutW + 2e-4 * inW);
      }),
      { seed: 21, numRuns: 150 },
    );
  });

  it("has peak >= root mean square >= mean, and no peak above supply over loop", () => {
    fc.assert(
      fc.property(driver, (input) => {
        const { peakA, rmsA, meanA, firstPeakA, lowV, highV } = knownOf(capacitorInput(input));
        expect(rmsA).toBeLessThanOrEqual(peakA * (1 + SLACK));
        expect(meanA).toBeLessThanOrEqual(rmsA * (1 + SLACK));
        expect(peakA).toBeLessThanOrEqual(firstPeakA * (1 + SLACK));
        expect(lowV).toBeLessThanOrEqual(highV * (1 + SLACK));
      }),
      { seed: 22, numRuns: 150 },
    );
  });

  const rises = (change: (input: CapacitorInput) => CapacitorInput) =>
    fc.assert(
      fc.property(driver, (input) => {
        const before = knownOf(capacitorInput(input));
        const after = knownOf(capacitorInput(change(input)));
        // Less is drained in a shorter pause, so that less is left to charge.
        expect(after.peakA).toBeLessThanOrEqual(before.peakA * (1 + 1e-4) + 1e-4);
        if (before.runsRatio >= 1 - 1e-9) expect(after.runsRatio).toBeGreaterThanOrEqual(1 - 1e-9);
      }),
      { seed: 23, numRuns: 100 },
    );

  it("peaks no higher at more duty, and a driver that runs through the pauses still does", () => {
    rises((input) => ({ ...input, dutyRatio: input.dutyRatio + (1 - input.dutyRatio) / 2 }));
  });

  it("peaks no higher at faster PWM, and a driver that runs through the pauses still does", () => {
    rises((input) => ({ ...input, pwmHz: input.pwmHz * 1.5 }));
  });

  it("peaks no higher with a larger capacitor, and a driver that runs through the pauses still does", () => {
    rises((input) => ({ ...input, capacitanceF: input.capacitanceF * 1.5 }));
  });

  it("draws a steady current, its power over its volts, at full duty: by hand", () => {
    // 12 W at 12 V behind 0.1 ohm from 12.1 V: 1 A, no drain, no peak beyond that.
    const full = knownOf(
      capacitorInput({
        supplyV: 12.1,
        loopOhm: 0.1,
        capacitanceF: 1e-4,
        powerW: 12,
        dropOutV: 9,
        pwmHz: 200,
        dutyRatio: 1,
      }),
    );
    expect(full.peakA).toBeCloseTo(1, 6);
    expect(full.rmsA).toBeCloseTo(1, 6);
    expect(full.meanA).toBeCloseTo(1, 6);
    expect(full.runsRatio).toBe(1);
  });

  it("drains in the pause by constant power, in closed form: v^2 falls by 2 P t / C", () => {
    // 9.9 W on 1 mF, 2 ms of pause (250 Hz, half): v^2 falls by 2 * 9.9 * 0.002 / 0.001 = 39.6 V^2.
    const pulses = knownOf(
      capacitorInput({
        supplyV: 13,
        loopOhm: 0.05,
        capacitanceF: 1e-3,
        powerW: 9.9,
        dropOutV: 8,
        pwmHz: 250,
        dutyRatio: 0.5,
      }),
    );
    expect(pulses.highV ** 2 - pulses.lowV ** 2).toBeCloseTo(39.6, 6);
    expect(pulses.peakA).toBeCloseTo((13 - pulses.lowV) / 0.05, 6);
  });

  it("refuses figures out of range by name", () => {
    const good = { supplyV: 12, loopOhm: 0.1, capacitanceF: 1e-4, powerW: 12, dropOutV: 9, pwmHz: 200, dutyRatio: 0.5 };
    for (const bad of ["supplyV", "loopOhm", "capacitanceF", "dropOutV", "pwmHz"] as const)
      expect(capacitorInput({ ...good, [bad]: 0 })).toMatchObject({
        code: "figure-out-of-range",
        because: expect.stringContaining(bad),
      });
    expect(capacitorInput({ ...good, dutyRatio: 1.2 })).toMatchObject({ code: "duty-out-of-range" });
    expect(capacitorInput({ ...good, powerW: -1 }).kind).toBe("refused");
  });
});

describe("stepPeakA", () => {
  it("is volts over ohms without inductance, and at the border of ringing 2 / e of that: by hand", () => {
    expect(stepPeakA(5, 0.25, 0, 1e-4)).toBe(20);
    // R = 2 sqrt(L / C): 0.4 ohm with 4 uH and 100 uF. Peak = (V / L) (2 L / R) / e = 2 V / (R e).
    expect(stepPeakA(5, 0.4, 4e-6, 1e-4)).toBeCloseTo((2 * 5) / (0.4 * Math.E), 6);
    // All but no resistance: V / sqrt(L / C) = 5 / 0.2.
    expect(stepPeakA(5, 1e-6, 4e-6, 1e-4)).toBeCloseTo(25, 3);
  });
  it("falls with inductance, and never passes volts over ohms", () => {
    fc.assert(
      fc.property(num(0.03, 0.5), num(1e-7, 3e-5), num(1e-5, 2e-3), num(1.01, 4), (ohm, henry, farad, times) => {
        const less = stepPeakA(5, ohm, henry, farad);
        expect(stepPeakA(5, ohm, henry * times, farad)).toBeLessThanOrEqual(less * (1 + 1e-9));
        expect(less).toBeLessThanOrEqual((5 / ohm) * (1 + 1e-9));
      }),
      { seed: 27, numRuns: 300 },
    );
  });
});

describe("onTimeDrop", () => {
  const models: readonly LoadModel[] = [
    { kind: "resistance", resistanceOhm: 6 },
    { kind: "led", forwardV: 9, resistanceOhm: 1.5 },
    { kind: "current", currentA: 2, kneeV: 6 },
    { kind: "power", powerW: 20, dropOutV: 9 },
    { kind: "filament", currentA: 2, ratedV: 12 },
  ];

  it("drops as much at every duty as at full, except behind a filament, which drops more the deeper it is dimmed", () => {
    fc.assert(
      fc.property(fc.constantFrom(...models), num(0.02, 0.9), num(0.02, 0.4), (model, dutyRatio, loopOhm) => {
        const at = (duty: number) => knownOf(onTimeDrop({ supplyV: 12.6, loopOhm, model, dutyRatio: duty }));
        const [deep, more, full] = [at(dutyRatio), at(dutyRatio * 1.1), at(1)];
        if (model.kind === "filament") {
          expect(deep.dropV).toBeGreaterThan(more.dropV);
          expect(more.dropV).toBeGreaterThan(full.dropV);
        } else expect(deep.dropV).toBeCloseTo(full.dropV, 9);
        // Mean and heat rise with duty for every load.
        expect(more.meanA).toBeGreaterThan(deep.meanA);
        expect(more.rmsA).toBeGreaterThan(deep.rmsA);
        expect(full.rmsA).toBeGreaterThanOrEqual(more.rmsA);
      }),
      { seed: 24, numRuns: 200 },
    );
  });

  it("splits the supply between wire and load: 12 V, 0.5 ohm, 5.5 ohm, by hand", () => {
    const wire = knownOf(
      onTimeDrop({ supplyV: 12, loopOhm: 0.5, model: { kind: "resistance", resistanceOhm: 5.5 }, dutyRatio: 0.25 }),
    );
    expect(wire.onA).toBeCloseTo(2, 9);
    expect(wire.dropV).toBeCloseTo(1, 9);
    expect(wire.meanA).toBeCloseTo(0.5, 9);
    expect(wire.rmsA).toBeCloseTo(1, 9);
    expect(wire.wireHeatW).toBeCloseTo(0.5, 9);
    expect(wire.loadW).toBeCloseTo(5.5, 9);
  });

  it("pulls a filament's pulse up by duty^-0.225 on stiff volts: 1.679 times at a tenth, by hand", () => {
    // 10^0.225 = 1.67880.
    const at = (dutyRatio: number) =>
      knownOf(onTimeDrop({ supplyV: 12, loopOhm: 0, model: models[4]!, dutyRatio })).onA;
    expect(at(0.1) / at(1)).toBeCloseTo(1.6788, 4);
  });

  it("refuses what cannot be", () => {
    const wire = { supplyV: 12, loopOhm: 0.1, model: models[0]!, dutyRatio: 0.5 };
    expect(onTimeDrop({ ...wire, dutyRatio: -0.1 }).kind).toBe("refused");
    expect(onTimeDrop({ ...wire, loopOhm: -1 }).kind).toBe("refused");
    expect(onTimeDrop({ ...wire, supplyV: Number.NaN }).kind).toBe("refused");
    expect(onTimeDrop({ ...wire, model: { kind: "regulated", setV: 13, outputOhm: 0.1, maxA: 30 } }).kind).toBe(
      "refused",
    );
  });
});

describe("modulation of a filament", () => {
  const lamp = fc.record({ tauS: num(0.005, 0.3), pwmHz: num(20, 3000), dutyRatio: num(0.02, 0.97) });

  it("falls with frequency and with slowness, and by nothing but their product", () => {
    fc.assert(
      fc.property(lamp, num(1.05, 3), ({ tauS, pwmHz, dutyRatio }, times) => {
        const plain = filamentPulse(tauS, pwmHz, dutyRatio).modulationRatio;
        const faster = filamentPulse(tauS, pwmHz * times, dutyRatio).modulationRatio;
        const slower = filamentPulse(tauS * times, pwmHz, dutyRatio).modulationRatio;
        expect(faster).toBeLessThan(plain);
        expect(slower).toBeCloseTo(faster, 7);
      }),
      { seed: 25, numRuns: 150 },
    );
  });

  it("lets mean light, peak current and power go the right way with duty", () => {
    fc.assert(
      fc.property(lamp, ({ tauS, pwmHz, dutyRatio }) => {
        const less = filamentPulse(tauS, pwmHz, dutyRatio * 0.9);
        const more = filamentPulse(tauS, pwmHz, dutyRatio);
        expect(more.meanLightRatio).toBeGreaterThan(less.meanLightRatio);
        expect(more.peakCurrentRatio).toBeLessThan(less.peakCurrentRatio);
        expect(knownOf(powerOfDuty("filament", dutyRatio))).toBeGreaterThan(
          knownOf(powerOfDuty("filament", dutyRatio * 0.9)),
        );
      }),
      { seed: 26, numRuns: 100 },
    );
  });

  it("gives the light of the steady heat where it is slow against the PWM: duty^1.7", () => {
    for (const duty of [0.05, 0.25, 0.5, 0.9])
      expect(filamentPulse(0.2, 1200, duty).meanLightRatio / duty ** 1.7).toBeCloseTo(1, 3);
  });
});

describe("modulationDepth", () => {
  it("knows of nothing that filters a bare LED, and says what it knows a filament from", () => {
    expect(knownOf(modulationDepth({ class: "led-resistor" }, 220, 0.5))).toMatchObject({
      ratio: { lo: 1, hi: 1 },
      filter: "none",
    });
    const guessed = knownOf(modulationDepth({ class: "filament" }, 220, 0.5));
    expect(guessed).toMatchObject({ filter: "thermal", knownFrom: "class", wouldSettle: ["filamentTimeConstantS"] });
    expect(guessed.source.how).toBe("memory");
    const read = knownOf(modulationDepth({ class: "filament", filamentTimeConstantS: 0.05 }, 220, 0.5));
    expect(read).toMatchObject({ filter: "thermal", knownFrom: "record", wouldSettle: [] });
    expect(read.ratio.hi).toBeLessThan(guessed.ratio.hi);
  });

  it("takes an unknown filter as the worst case, and says so", () => {
    expect(knownOf(modulationDepth({ class: "led-driver" }, 220, 0.5))).toMatchObject({
      ratio: { lo: 0, hi: 1 },
      filter: "unknown",
      knownFrom: "worst-case",
      wouldSettle: ["inputCapacitanceF"],
    });
  });

  it("sees a driver with a large capacitor run on, and one with a small capacitor go out between pulses", () => {
    const feed = { supplyV: 12.6, loopOhm: 0.15, powerW: 6, dropOutV: 8 };
    const swing = (inputCapacitanceF: number) =>
      knownOf(modulationDepth({ class: "led-driver", inputCapacitanceF }, 220, 0.5, feed)).ratio;
    expect(swing(2e-3)).toEqual({ lo: 0, hi: 0 });
    expect(swing(1e-5)).toEqual({ lo: 1, hi: 1 });
  });

  it("swings nothing at full and at off, and has no answer for what gives no light", () => {
    for (const each of ["led-resistor", "led-linear", "filament", "led-driver"] as const)
      for (const duty of [0, 1]) expect(knownOf(modulationDepth({ class: each }, 220, duty)).ratio.hi).toBe(0);
    expect(modulationDepth({ class: "pump" }, 220, 0.5)).toMatchObject({ code: "no-light" });
    expect(modulationDepth({ class: undefined }, 220, 0.5)).toEqual({ kind: "missing", needs: ["class"] });
    expect(modulationDepth({ class: "filament" }, 0, 0.5)).toMatchObject({ code: "frequency-out-of-range" });
  });
});
