import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DIMENSIONS, type Dimension, type ReadOptions, readCounted, readGauge, readQuantity } from "./index.js";

const SETTINGS = { seed: 20260502, numRuns: 10000 } as const;

const read = (text: string, dimension: Dimension, options?: ReadOptions) => {
  const got = readQuantity(text, dimension, options);
  return got.kind === "read" ? got.value : got.code;
};

describe("what people write for a quantity", () => {
  it.each<[string, Dimension, number]>([
    ["18'", "length", 5.4864],
    ["18 ft", "length", 5.4864],
    ["18 ft.", "length", 5.4864],
    ["18-ft", "length", 5.4864],
    ["18 feet", "length", 5.4864],
    [`5'6"`, "length", 1.6764],
    ["5’6”", "length", 1.6764],
    ["5′ 6″", "length", 1.6764],
    [`5'-6"`, "length", 1.6764],
    ["5'6''", "length", 1.6764],
    [`5' 6 1/2"`, "length", 1.6891],
    [`5' 6½"`, "length", 1.6891],
    ["5 ft 6 in", "length", 1.6764],
    ["5ft6", "length", 1.6764],
    ["66in", "length", 1.6764],
    [`66"`, "length", 1.6764],
    ["6 yd", "length", 5.4864],
    ["3 m", "length", 3],
    ["3,2 m", "length", 3.2],
    ["3m20", "length", 3.2],
    ["350cm", "length", 3.5],
    ["178 mm", "length", 0.178],
    ["0", "length", 0],
    ["18 ft (5.49 m)", "length", 5.4864],
    ["15A", "current", 15],
    ["15", "current", 15],
    ["15 Amps", "current", 15],
    ["15-amp", "current", 15],
    ["15 A DC", "current", 15],
    [".35 amps", "current", 0.35],
    [",35 A", "current", 0.35],
    ["0,35A", "current", 0.35],
    ["350mA", "current", 0.35],
    ["350 MA", "current", 0.35],
    ["-5 A", "current", -5],
    ["1/2 A", "current", 0.5],
    ["60W", "power", 60],
    ["60 watts", "power", 60],
    ["1.2kW", "power", 1200],
    ["1 200 W", "power", 1200],
    ["1,234.5 W", "power", 1234.5],
    ["1.234,5 W", "power", 1234.5],
    ["1,000,000 W", "power", 1e6],
    ["12V", "voltage", 12],
    ["12.6 volts", "voltage", 12.6],
    ["12.6VDC", "voltage", 12.6],
    ["12,65 V", "voltage", 12.65],
    ["4.8 ohm", "resistance", 4.8],
    ["4.8Ω", "resistance", 4.8],
    ["4.8Ω", "resistance", 4.8],
    ["5 mOhm", "resistance", 0.005],
    ["5mΩ", "resistance", 0.005],
    ["5 MOhm", "resistance", 5e6],
    ["4k7", "resistance", 4700],
    ["0R1", "resistance", 0.1],
    ["86F", "temperature", 30],
    ["86 °F", "temperature", 30],
    ["30 °C", "temperature", 30],
    ["30 deg C", "temperature", 30],
    ["-40F", "temperature", -40],
    ["440Ah", "capacity", 440],
    ["440 amp hours", "capacity", 440],
    ["2.5mm²", "section", 2.5],
    ["2.5sq", "section", 2.5],
    ["2,5 mm2", "section", 2.5],
    ["2.5 mm^2", "section", 2.5],
    ["1h30", "time", 5400],
    ["90 min", "time", 5400],
    ["220 Hz", "frequency", 220],
    ["1.2 kHz", "frequency", 1200],
  ])("%s as a %s is %d", (text, dimension, value) => {
    expect(read(text, dimension)).toBe(value);
  });

  it.each<[string, Dimension, string]>([
    ["", "current", "empty"],
    ["   ", "current", "empty"],
    ["ask the owner", "current", "not-a-number"],
    ["1,000 A", "current", "ambiguous-number"],
    ["18", "length", "unit-missing"],
    ["30", "temperature", "unit-missing"],
    ["30°", "temperature", "unit-unknown"],
    [`5'66"`, "length", "part-too-large"],
    [`5'12"`, "length", "part-too-large"],
    ["5.5' 6\"", "length", "not-a-number"],
    ["60W", "current", "wrong-dimension"],
    ["15 furlongs", "length", "unit-unknown"],
    ["5 MOHM", "resistance", "ambiguous-unit"],
    ["5-3A", "current", "range-backwards"],
    ["-3 m", "length", "negative"],
    ["1e30 A", "current", "out-of-range"],
    ["120 VAC", "voltage", "alternating"],
    ["2 x 5A", "current", "counted"],
    ["1.2.3 A", "current", "not-a-number"],
    ["1/0 A", "current", "not-a-number"],
    ["5 A 3 V", "current", "wrong-dimension"],
    ["9".repeat(121), "current", "too-long"],
  ])("%s as a %s is unread: %s", (text, dimension, code) => {
    expect(read(text, dimension)).toBe(code);
    expect(readQuantity(text, dimension)).toMatchObject({ kind: "unread", asWritten: text });
  });

  it("says which dimension a wrong unit belongs to", () => {
    expect(readQuantity("60W", "current")).toMatchObject({ looksLike: "power" });
  });

  it("a bare length is read in the unit that the caller names", () => {
    expect(read("18", "length", { bareUnit: "ft" })).toBe(5.4864);
    expect(read("18", "length", { bareUnit: "m" })).toBe(18);
    expect(readQuantity("18", "length", { bareUnit: "ft" })).toMatchObject({ isUnitTaken: true, unit: "ft" });
  });

  it.each<[string, Dimension, number, number]>([
    ["2-3A", "current", 2.5, 0.5],
    ["2 to 3 A", "current", 2.5, 0.5],
    ["2A–3A", "current", 2.5, 0.5],
    ["500 mA - 1 A", "current", 0.75, 0.25],
    ["10..12 V", "voltage", 11, 1],
    ["20-30 C", "temperature", 25, 5],
    ["68-86 F", "temperature", 25, 5],
    ["10 ft - 12 ft", "length", 3.3528, 0.3048],
    ["3.1 ± 0.1 A", "current", 3.1, 0.1],
    ["3.1A +/- 100 mA", "current", 3.1, 0.1],
    ["3.1 A +- 10 %", "current", 3.1, 0.31],
    ["86 ± 9 F", "temperature", 30, 5],
  ])("%s as a %s is %d, give or take %d", (text, dimension, value, plusMinus) => {
    expect(readQuantity(text, dimension)).toMatchObject({ kind: "read", value, plusMinus });
  });

  it.each([
    ["~3A", "assumed"],
    ["≈ 3 A", "assumed"],
    ["about 3 amps", "assumed"],
    ["approx. 3A", "assumed"],
    ["3?", "assumed"],
    ["3 A?", "assumed"],
    ["3A (guess)", "assumed"],
    ["3 A typ.", "typical"],
    ["3 A (label)", "marked"],
    ["3 A (measured)", "measured"],
    ["measured 3A", "measured"],
    ["~3 A measured", "assumed"],
  ])("%s is 3 A, known as %s", (text, basis) => {
    expect(readQuantity(text, "current")).toMatchObject({ kind: "read", value: 3, basis });
  });

  it("says nothing of the basis where the text says nothing of it", () => {
    expect(readQuantity("3 A", "current")).not.toHaveProperty("basis");
  });

  it.each<[string, number, number]>([
    ["4 x 5W", 4, 5],
    ["4×5W", 4, 5],
    ["5W x 4", 4, 5],
    ["4 @ 5 W", 4, 5],
    ["5 W each", 1, 5],
    ["5 W", 1, 5],
  ])("%s is %d pieces of %d W", (text, count, value) => {
    expect(readCounted(text, "power")).toMatchObject({ kind: "read", count, each: { value } });
  });

  it("any text whatever is read or unread, never a crash, and what is read is a finite number", () => {
    const typed = fc.string({
      unit: fc.constantFrom(..."0123456789.,-+~?'\"/ xXaAmMvVwWkKΩ°²½±()ftinohCFgd\u00a0\u2033µ".split("")),
      maxLength: 14,
    });
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: "binary", maxLength: 200 }), typed),
        fc.constantFrom(...DIMENSIONS),
        (text, dimension) => {
          const got = readQuantity(text, dimension);
          if (got.kind === "read") {
            expect(Number.isFinite(got.value)).toBe(true);
            expect(got.plusMinus ?? 0).toBeGreaterThanOrEqual(0);
          } else expect(got.why.length).toBeGreaterThan(0);
          const counted = readCounted(text, dimension);
          if (counted.kind === "read") expect(counted.count).toBeGreaterThan(0);
          const gauge = readGauge(text);
          if (gauge.kind === "read") expect(gauge.size.length).toBeGreaterThan(0);
        },
      ),
      SETTINGS,
    );
  });

  it("a long line of digits and spaces is refused at once, not searched for ever", () => {
    for (const text of ["1 ".repeat(60), "1,".repeat(60), "1 000 ".repeat(20), `${"9 ".repeat(59)}x`, "-".repeat(120)])
      expect(readQuantity(text, "length").kind).toBe("unread");
  });
});
