import { capacityAtHoursAh, chargeLostPerHour, peukertHours, ratedCurrentOfBatteryA } from "@fusebook/core/endurance";
import { tableById } from "@fusebook/core/tables";
import { describe, expect, it } from "vitest";

/*
 * Peukert's law. Expected figures: table `peukert` (published tutorials, two derivations and two example pages; seen, the rated-hour results computed
 * there from the seen form) and worked example W31 (a public tutorial; seen).
 */

const near = (got: number, wanted: number, within: number) =>
  expect(Math.abs(got - wanted), `${got} against ${wanted}`).toBeLessThanOrEqual(within);
const hundredAh = (exponent: number) => ({ capacityAh: 100, ratedHours: 20, exponent });

/** The popular form, here only to show what it gives. */
const naiveHours = (capacityAh: number, currentA: number, exponent: number): number =>
  capacityAh / currentA ** exponent;

describe("Peukert at rated hours, t = H (C / (I H))^k", () => {
  it("100 Ah at 20 h, k 1.2, drawn at its rated 5 A: 20 h, whatever the exponent", () => {
    near(peukertHours(hundredAh(1.2), 5), 20, 1e-12);
    near(peukertHours(hundredAh(1.3), ratedCurrentOfBatteryA(hundredAh(1.3))), 20, 1e-12);
  });

  it("100 Ah at 20 h, k 1.2, 10 A: 8.706 h; k 1.3: 8.123 h", () => {
    near(peukertHours(hundredAh(1.2), 10), 8.706, 0.0005);
    near(peukertHours(hundredAh(1.3), 10), 8.123, 0.0005);
  });

  it("W31 at rated hours: 250 Ah at 20 h, 20 A, k 1.3: 10.856 h", () => {
    near(peukertHours({ capacityAh: 250, ratedHours: 20, exponent: 1.3 }, 20), 10.856, 0.0005);
  });

  it("the other published form, T = C (C/R)^(n-1) / I^n with R rated hours, is the same law", () => {
    for (const [c, r, n, i] of [
      [100, 20, 1.2, 10],
      [250, 20, 1.3, 20],
      [440, 10, 1.12, 63],
    ] as const)
      near(peukertHours({ capacityAh: c, ratedHours: r, exponent: n }, i), (c * (c / r) ** (n - 1)) / i ** n, 1e-9);
  });
});

describe("the published answers of the popular form t = C / I^k, which differ and are wrong for a 20-hour capacity", () => {
  it("100 Ah, k 1.2, 5 A: 14.5 h is printed, though the label itself promises 20 h at 5 A", () => {
    near(naiveHours(100, 5, 1.2), 14.5, 0.05);
    expect(peukertHours(hundredAh(1.2), 5) - naiveHours(100, 5, 1.2)).toBeGreaterThan(5);
  });

  it("W31: 250 Ah, 20 A, n 1.3: 5.0886 h and 101.77 Ah are printed; the rated-hour form gives 2.13 times the hours", () => {
    near(naiveHours(250, 20, 1.3), 5.0886, 0.00005);
    near(naiveHours(250, 20, 1.3) * 20, 101.77, 0.005);
    const ratio = peukertHours({ capacityAh: 250, ratedHours: 20, exponent: 1.3 }, 20) / naiveHours(250, 20, 1.3);
    near(ratio, 10.856 / 5.0886, 0.001);
  });

  it("why: the popular form is the same law with the hours rated at one ampere; it agrees where C is the one-ampere capacity", () => {
    const atOneAmpere = { capacityAh: 250, ratedHours: 250, exponent: 1.3 };
    near(peukertHours(atOneAmpere, 20), naiveHours(250, 20, 1.3), 1e-9);
  });

  it("both forms are kept in the table, the popular one called wrong", () => {
    const table = tableById("peukert");
    expect(table?.notes.join(" ")).toMatch(/WRONG/);
    expect(table?.rows.map((row) => row[1])).toEqual(expect.arrayContaining([20, 8.706, 8.123, 10.856]));
  });
});

describe("the law step by step", () => {
  it("a steady current above the rated one empties the battery in the hours the law says", () => {
    for (const currentA of [5, 10, 20, 63])
      near(1 / chargeLostPerHour(hundredAh(1.2), currentA), peukertHours(hundredAh(1.2), currentA), 1e-9);
  });

  it("below the rated current nothing above the mark is counted on: half an ampere from 100 Ah lasts 200 h, not the law's 317", () => {
    near(1 / chargeLostPerHour(hundredAh(1.2), 0.5), 200, 1e-9);
    near(peukertHours(hundredAh(1.2), 0.5), 20 * 10 ** 1.2, 1e-9);
  });

  it("capacity at other rated hours lies on the same line: 100 Ah at 20 h, k 1.2, is what 8.706 h at 10 A take out", () => {
    near(capacityAtHoursAh(hundredAh(1.2), 8.706), 87.06, 0.005);
  });

  it("no current: no end", () => {
    expect(peukertHours(hundredAh(1.2), 0)).toBe(Number.POSITIVE_INFINITY);
    expect(chargeLostPerHour(hundredAh(1.2), 0)).toBe(0);
  });
});
