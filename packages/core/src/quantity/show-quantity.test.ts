import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Dimension, digitsOf, readQuantity, round, showQuantity, type UnitChoice } from "./index.js";

describe("how a quantity is written", () => {
  it.each<[number, Dimension, string, string, string]>([
    [5.4864, "length", "18 ft", "5.49 m", "18 ft (5.49 m)"],
    [1.6764, "length", "5 ft 6 in", "1.68 m", "5 ft 6 in (1.68 m)"],
    [0.178, "length", "7 in", "178 mm", "7 in (178 mm)"],
    [30, "temperature", "86 °F", "30 °C", "86 °F (30 °C)"],
    [15, "current", "15 A", "15 A", "15 A"],
    [0.035, "current", "35 mA", "35 mA", "35 mA"],
    [12.6, "voltage", "12.6 V", "12.6 V", "12.6 V"],
    [12.345, "voltage", "12.35 V", "12.35 V", "12.35 V"],
    [1200, "power", "1200 W", "1200 W", "1200 W"],
    [0.005, "resistance", "5 mΩ", "5 mΩ", "5 mΩ"],
    [4700, "resistance", "4.7 kΩ", "4.7 kΩ", "4.7 kΩ"],
    [2.5, "section", "2.5 mm²", "2.5 mm²", "2.5 mm²"],
    [440, "capacity", "440 Ah", "440 Ah", "440 Ah"],
    [5400, "time", "1 h 30 min", "1 h 30 min", "1 h 30 min"],
    [1200, "frequency", "1.2 kHz", "1.2 kHz", "1.2 kHz"],
  ])("%d as a %s is %s, or %s, or %s", (value, dimension, us, metric, both) => {
    expect(showQuantity(value, dimension, "us")).toBe(us);
    expect(showQuantity(value, dimension, "metric")).toBe(metric);
    expect(showQuantity(value, dimension, "both")).toBe(both);
  });

  it("rounds to the digits that count and writes no needless zero", () => {
    expect(round(12.3456)).toBe(12.3);
    expect(round(0.00123456, 2)).toBe(0.0012);
    expect(digitsOf(1234.5)).toBe("1230");
    expect(digitsOf(2.5)).toBe("2.5");
    expect(digitsOf(-0.0000001, 3, 2)).toBe("0");
  });

  /** Half of the last digit shown: three digits, volts and degrees to their place, feet to the inch, times to the minute. */
  const ROUNDING: Readonly<Record<Dimension, (value: number) => number>> = {
    current: (value) => 0.005 * Math.abs(value),
    power: (value) => 0.005 * Math.abs(value),
    voltage: (value) => Math.max(0.005, 0.0005 * Math.abs(value)),
    length: (value) => Math.max(0.0127, 0.005 * Math.abs(value)),
    section: (value) => 0.005 * Math.abs(value),
    resistance: (value) => 0.005 * Math.abs(value),
    temperature: (value) => Math.max(0.28, 0.0005 * Math.abs(value)),
    capacity: (value) => 0.005 * Math.abs(value),
    time: (value) => Math.max(30, 0.005 * Math.abs(value)),
    frequency: (value) => 0.005 * Math.abs(value),
  };

  it("what was shown is read back the same, within the rounding of what is shown, in every choice of units", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(ROUNDING) as Dimension[])),
        fc.constantFrom<UnitChoice>("us", "metric", "both"),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: -4, max: 4 }),
        (dimension, units, mantissa, power) => {
          const value = mantissa * 10 ** power;
          const text = showQuantity(value, dimension, units);
          const back = readQuantity(text, dimension);
          expect(back.kind, text).toBe("read");
          if (back.kind === "read")
            expect(Math.abs(back.value - value), text).toBeLessThanOrEqual(
              ROUNDING[dimension](value) * 1.000001 + 1e-12,
            );
        },
      ),
      { seed: 20260502, numRuns: 5000 },
    );
  });
});
