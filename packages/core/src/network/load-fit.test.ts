import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Load } from "../record/index.js";
import { currentByFit, loadAsRead } from "./load-as-read.js";
import { loadFiguresOf } from "./load-figures.js";
import { type DrawReading, fitLamp, type LampFit, type LampPrior } from "./load-fit.js";
import { loadCurrentA } from "./load-model.js";

const fitted = (readings: readonly DrawReading[], prior: Partial<LampPrior> = {}): LampFit => {
  const fit = fitLamp(readings, { class: "led-resistor", nominalV: 12, ...prior });
  if (fit.kind !== "known") throw new Error(JSON.stringify(fit));
  return fit.value;
};
const exactly = (voltageV: number, currentA: number): DrawReading => ({
  voltageV: { value: voltageV, basis: "measured", plusMinus: 0 },
  currentA: { value: currentA, basis: "measured", plusMinus: 0 },
});
/** What meters would say of a lamp, as far off as their class allows: `by` from -1 to 1. */
const read = (voltageV: number, currentA: number, byV: number, byA: number): DrawReading => ({
  voltageV: voltageV + byV * (0.004 * voltageV + 0.008),
  currentA: currentA + byA * (0.015 * currentA + 0.04),
});

describe("fitLamp of a ballasted LED", () => {
  it("finds forward volts and resistor from two exact readings, by hand: 9 V and 3 ohm", () => {
    // (12 - 9) / 3 = 1 A; (13.5 - 9) / 3 = 1.5 A.
    const fit = fitted([exactly(12, 1), exactly(13.5, 1.5)]);
    if (fit.kind !== "led") throw new Error(fit.kind);
    expect(fit.from).toBe("readings");
    expect(fit.forwardV.nominal).toBeCloseTo(9, 9);
    expect(fit.forwardV.span.lo).toBeCloseTo(9, 6);
    expect(fit.resistorOhm.nominal).toBeCloseTo(3, 9);
    expect(fit.resistorOhm.span.hi).toBeCloseTo(3, 6);
  });

  const lamp = fc.record({
    forwardV: fc.double({ min: 8.4, max: 9.6, noNaN: true }),
    ohm: fc.double({ min: 1, max: 12, noNaN: true }),
    lowV: fc.double({ min: 11.4, max: 12.2, noNaN: true }),
    highV: fc.double({ min: 13, max: 14.4, noNaN: true }),
    off: fc.tuple(...([0, 1, 2, 3] as const).map(() => fc.double({ min: -1, max: 1, noNaN: true }))),
    at: fc.double({ min: 9, max: 15, noNaN: true }),
  });

  it("holds the true lamp, and its current at any volts, between two readings as wide as their meters", () => {
    fc.assert(
      fc.property(lamp, ({ forwardV, ohm, lowV, highV, off, at }) => {
        const truth = (v: number) => Math.max(0, (v - forwardV) / ohm);
        const fit = fitted([read(lowV, truth(lowV), off[0]!, off[1]!), read(highV, truth(highV), off[2]!, off[3]!)]);
        if (fit.kind !== "led") throw new Error(fit.kind);
        expect(fit.forwardV.span.lo).toBeLessThanOrEqual(forwardV + 1e-9);
        expect(fit.forwardV.span.hi).toBeGreaterThanOrEqual(forwardV - 1e-9);
        expect(fit.resistorOhm.span.lo).toBeLessThanOrEqual(ohm + 1e-9);
        expect(fit.resistorOhm.span.hi).toBeGreaterThanOrEqual(ohm - 1e-9);
        const { span } = currentByFit(fit, at);
        expect(span.lo).toBeLessThanOrEqual(truth(at) + 1e-9);
        expect(span.hi).toBeGreaterThanOrEqual(truth(at) - 1e-9);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it("gives the coach a least and a most that hold the truth at every volts", () => {
    fc.assert(
      fc.property(lamp, ({ forwardV, ohm, lowV, highV, off, at }) => {
        const truth = (v: number) => Math.max(0, (v - forwardV) / ohm);
        const drawReadings = [read(lowV, truth(lowV), off[0]!, off[1]!), read(highV, truth(highV), off[2]!, off[3]!)];
        const load = {
          id: "l1",
          name: "a",
          class: "led-resistor",
          quantity: 3,
          currentA: 9,
          drawReadings,
        } as unknown as Load;
        const figures = loadFiguresOf(load, 12, "loads[0]");
        if (figures.kind !== "known") throw new Error(figures.kind);
        expect(loadCurrentA(figures.value.least, at)).toBeLessThanOrEqual(3 * truth(at) + 1e-6);
        expect(loadCurrentA(figures.value.most, at)).toBeGreaterThanOrEqual(3 * truth(at) - 1e-6);
      }),
      { seed: 12, numRuns: 500 },
    );
  });

  it("takes the class's forward volts for one reading, and says so", () => {
    const fit = fitted([{ voltageV: 12.6, currentA: 1.2 }]);
    if (fit.kind !== "led") throw new Error(fit.kind);
    expect(fit.from).toBe("readings-and-class");
    // Class figure: 0.70 to 0.80 of 12 V, nominal 9 V; (12.6 - 9) / 1.2 = 3 ohm.
    expect(fit.forwardV.span.lo).toBeCloseTo(8.4, 6);
    expect(fit.forwardV.span.hi).toBeCloseTo(9.6, 6);
    expect(fit.resistorOhm.nominal).toBeCloseTo(3, 6);
  });

  it("narrows with a second reading, and with a better meter", () => {
    const one = fitted([read(12, 1, 0, 0)]);
    const two = fitted([read(12, 1, 0, 0), read(14.4, 1.8, 0, 0)]);
    const fine = fitted([exactly(12, 1), exactly(14.4, 1.8)]);
    const width = (fit: LampFit) => {
      const { span } = currentByFit(fit, 14);
      return span.hi - span.lo;
    };
    expect(width(two)).toBeLessThan(width(one));
    expect(width(fine)).toBeLessThan(width(two));
  });

  it("counts the pieces that the clamp took in", () => {
    const fit = fitted([
      { ...exactly(12, 4), pieces: 4 },
      { ...exactly(13.5, 6), pieces: 4 },
    ]);
    expect(fit.kind === "led" && fit.resistorOhm.nominal).toBeCloseTo(3, 9);
  });
});

describe("fitLamp of other classes", () => {
  it("fits a filament from one reading: 1.1 A at 13.2 V is 1.044 A at 12 V by the 0.55th power", () => {
    const fit = fitted([exactly(13.2, 1.1)], { class: "filament" });
    // By hand: 1.1 * (12 / 13.2)^0.55 = 1.1 * 0.94893 = 1.04382.
    expect(currentByFit(fit, 12).nominal).toBeCloseTo(1.0438, 3);
  });

  it("takes a driver's amps falling as the volts rise as what they are: steady watts", () => {
    const fit = fitted([exactly(12, 1), exactly(12.5, 0.96)], { class: "led-driver" });
    expect(fit.kind).toBe("power");
    expect(fit.kind === "power" && fit.nominal).toBeCloseTo(12, 3);
  });
});

describe("readings that contradict each other are named", () => {
  const code = (readings: readonly DrawReading[], ofClass: LampPrior["class"] = "led-resistor") => {
    const fit = fitLamp(readings, { class: ofClass, nominalV: 12 });
    return fit.kind === "refused" ? fit : fit.kind;
  };

  it("amps that fall as the volts rise, with the readings by number", () => {
    expect(code([exactly(13.5, 1), exactly(12, 1.4)])).toMatchObject({
      code: "current-falls-as-volts-rise",
      because: expect.stringContaining("readings 2 and 1"),
    });
    expect(code([exactly(13.5, 1), exactly(12, 1.4)], "filament")).toMatchObject({
      code: "current-falls-as-volts-rise",
    });
  });

  it("amps that rise less than the volts are no LED on a resistor", () => {
    expect(code([exactly(12, 1), exactly(13.5, 1.05)])).toMatchObject({ code: "rises-too-little" });
  });

  it("three readings off one line, and two at the same volts that differ", () => {
    expect(code([exactly(12, 1), exactly(13, 1.2), exactly(14, 1.9)])).toMatchObject({ code: "readings-apart" });
    expect(code([exactly(12, 1), exactly(12, 1.5)])).toMatchObject({ code: "readings-apart" });
  });

  it("a regulated lamp or a driver whose figure does not stay the same", () => {
    expect(code([exactly(12, 1), exactly(13.5, 1.5)], "led-linear")).toMatchObject({ code: "readings-apart" });
    expect(code([exactly(12, 1), exactly(13.5, 1.5)], "led-driver")).toMatchObject({ code: "readings-apart" });
  });

  it("nothing to read, or read while it was off", () => {
    expect(code([])).toBe("missing");
    expect(code([exactly(12, 0)])).toMatchObject({ code: "reading-not-positive" });
    expect(fitLamp([exactly(12, 1)], { class: undefined, nominalV: 12 })).toEqual({
      kind: "missing",
      needs: ["class"],
    });
  });

  it("a reading whose doubt is as large as itself says nothing, and says what to do", () => {
    expect(code([{ voltageV: 12, currentA: 0.04 }])).toMatchObject({
      code: "reading-too-wide",
      because: expect.stringContaining("clamp several pieces together"),
    });
    expect(code([{ voltageV: { value: 12, basis: "measured", plusMinus: 20 }, currentA: 1 }])).toMatchObject({
      code: "reading-too-wide",
    });
  });

  it("and the label is used instead, so that nothing is lost", () => {
    const load = {
      id: "l1",
      name: "a",
      class: "led-resistor",
      currentA: 2,
      drawReadings: [exactly(13.5, 1), exactly(12, 1.4)],
    } as unknown as Load;
    expect(loadAsRead(load, 12)).toBe(load);
    const figures = loadFiguresOf(load, 12, "loads[0]");
    expect(figures.kind === "known" && figures.value.ratedA).toBe(2);
  });
});
