import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LOAD_CLASSES } from "../record/index.js";
import { flickerLimits, flickerOf } from "./flicker.js";
import { lightOfDuty } from "./light-of-duty.js";
import { lightnessOf, luminanceRatioOf } from "./lightness.js";
import { lowestUsefulDuty } from "./lowest-duty.js";
import { modulationOf } from "./modulation.js";
import { pulseCurrents } from "./pulse.js";
import { rampOf } from "./ramp.js";

const knownOf = <T>(outcome: { kind: string; value?: T }): T => {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value as T;
};

describe("lightness", () => {
  it("comes back through its inverse", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (ratio) => {
        expect(knownOf(luminanceRatioOf(knownOf(lightnessOf(ratio))))).toBeCloseTo(ratio, 12);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it("refuses a share of light that is no share", () => {
    for (const ratio of [-0.1, 1.1, Number.NaN]) expect(lightnessOf(ratio).kind).toBe("refused");
    for (const lightness of [-1, 101, Number.NaN]) expect(luminanceRatioOf(lightness).kind).toBe("refused");
  });
});

describe("rampOf", () => {
  it("starts at the module's lowest duty, ends at full, and its steps look equally far apart", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.integer({ min: 2, max: 64 }),
        fc.constantFrom(1, 1.7),
        (minDutyRatio, steps, lightExponent) => {
          const ramp = knownOf(rampOf({ pwmHz: 220, minDutyRatio, steps, lightExponent }));
          expect(ramp.steps).toHaveLength(steps);
          expect(ramp.steps[0]!.dutyRatio).toBe(minDutyRatio);
          expect(ramp.steps.at(-1)!.dutyRatio).toBe(1);
          for (let i = 1; i < steps; i++) {
            const [before, now] = [ramp.steps[i - 1]!, ramp.steps[i]!];
            expect(now.dutyRatio).toBeGreaterThan(before.dutyRatio);
            const seen = (duty: number) => knownOf(lightnessOf(Math.min(1, duty ** lightExponent)));
            expect(seen(now.dutyRatio) - seen(before.dutyRatio)).toBeCloseTo(ramp.stepLightness, 8);
          }
        },
      ),
      { seed: 2, numRuns: 200 },
    );
  });

  it("takes a module kind as it is and gives the length of the pulses", () => {
    const ramp = knownOf(rampOf({ pwmHz: { value: 200, basis: "marked" }, minDutyRatio: 0.05 }));
    expect(ramp.steps).toHaveLength(8);
    expect(ramp.steps[0]!.onTimeS).toBeCloseTo(0.00025, 12);
  });

  it("asks for the lowest duty and refuses what cannot be a ramp", () => {
    expect(rampOf({ pwmHz: 220 })).toEqual({ kind: "missing", needs: ["minDutyRatio"] });
    expect(rampOf({ minDutyRatio: 1 }).kind).toBe("refused");
    expect(rampOf({ minDutyRatio: 0.1, steps: 1 }).kind).toBe("refused");
    expect(rampOf({ minDutyRatio: 0.1, pwmHz: 0 }).kind).toBe("refused");
  });
});

describe("lowestUsefulDuty", () => {
  it("is the module's lowest where the eye still sees that, the eye's where it does not", () => {
    // L* of 0.05 is 26.735 (reference pairs); an LED at 0.0001 of full is below L* 1.
    const module = knownOf(lowestUsefulDuty({ minDutyRatio: 0.05 }, { class: "led-resistor" }));
    expect(module).toMatchObject({ dutyRatio: 0.05, setBy: "module" });
    expect(module.lightness).toBeCloseTo(26.735, 3);
    const eye = knownOf(lowestUsefulDuty({ minDutyRatio: 0.0001 }, { class: "led-resistor" }));
    expect(eye.setBy).toBe("eye");
    expect(eye.lightness).toBeCloseTo(1, 9);
  });

  it("lies higher for a filament than for an LED", () => {
    const of = (loadClass: "filament" | "led-resistor") =>
      knownOf(lowestUsefulDuty({ minDutyRatio: 0 }, { class: loadClass })).dutyRatio;
    expect(of("filament")).toBeGreaterThan(of("led-resistor"));
  });

  it("does not guess for a driver, a load without a class or a module without a lowest duty", () => {
    expect(lowestUsefulDuty({ minDutyRatio: 0.1 }, { class: "led-driver" }).kind).toBe("missing");
    expect(lowestUsefulDuty({ minDutyRatio: 0.1 }, {})).toEqual({ kind: "missing", needs: ["class"] });
    expect(lowestUsefulDuty({}, { class: "filament" })).toEqual({ kind: "missing", needs: ["minDutyRatio"] });
    expect(lowestUsefulDuty({ minDutyRatio: 0.1 }, { class: "pump" }).kind).toBe("refused");
  });

  it("gives full light at full duty for every lamp, and no light for what is no lamp", () => {
    for (const each of LOAD_CLASSES) {
      const light = lightOfDuty(each, 1);
      if (light.kind === "known") expect(light.value.luminanceRatio).toBe(1);
      else expect(each === "led-driver" ? "missing" : "refused").toBe(light.kind);
    }
  });
});

describe("flickerOf", () => {
  it("is open where the frequency's span straddles the limit", () => {
    expect(knownOf(flickerOf({ lo: 1200, hi: 1300 }, 1)).lowRisk).toBe("open");
    expect(knownOf(flickerOf({ lo: 1250, hi: 1300 }, 1)).lowRisk).toBe("holds");
    expect(knownOf(flickerOf({ lo: 900, hi: 1000 }, 1)).lowRisk).toBe("fails");
  });

  it("never says holds or fails for a wider span where it was open for a narrower one", () => {
    const freq = fc.double({ min: 1, max: 4000, noNaN: true });
    const mod = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(freq, freq, mod, mod, fc.double({ min: 0.1, max: 1, noNaN: true }), (a, b, c, d, less) => {
        const [f, m] = [[a, b].sort((x, y) => x - y), [c, d].sort((x, y) => x - y)];
        const narrow = knownOf(flickerOf({ lo: f[0]!, hi: f[1]! }, { lo: m[0]!, hi: m[1]! }));
        const wide = knownOf(flickerOf({ lo: f[0]! * less, hi: f[1]! / less }, { lo: m[0]! * less, hi: m[1]! }));
        if (narrow.lowRisk === "open") expect(wide.lowRisk).toBe("open");
        if (narrow.noEffect === "open") expect(wide.noEffect).toBe("open");
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  it("sets the low-risk limit never below the no-effect limit", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 5000, noNaN: true }), (hz) => {
        const limits = flickerLimits(hz);
        expect(limits.lowRiskRatio ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(limits.noEffectRatio ?? 1);
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  it("refuses a frequency or a modulation that cannot be", () => {
    expect(flickerOf(0, 1).kind).toBe("refused");
    expect(flickerOf(Number.NaN, 1).kind).toBe("refused");
    expect(flickerOf(220, 1.2).kind).toBe("refused");
  });
});

describe("modulationOf and pulseCurrents", () => {
  it("knows that a bare LED goes out between pulses and does not know how much a filament filters", () => {
    expect(knownOf(modulationOf("led-resistor", 0.5))).toEqual({ lo: 1, hi: 1 });
    expect(knownOf(modulationOf("led-resistor", 1))).toEqual({ lo: 0, hi: 0 });
    expect(knownOf(modulationOf("filament", 0.5))).toEqual({ lo: 0, hi: 1 });
    expect(modulationOf("pump", 0.5).kind).toBe("refused");
  });

  it("leaves the current in the pulse as it is, so that the wire drops as many volts while on", () => {
    // By hand: 8 A at a quarter: mean 2 A, root mean square 4 A.
    expect(knownOf(pulseCurrents(8, 0.25))).toEqual({ onA: 8, meanA: 2, rmsA: 4 });
    expect(pulseCurrents(8, 1.1).kind).toBe("refused");
  });
});
