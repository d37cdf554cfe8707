import { withstandAreaMm2 } from "@fusebook/core/protection";
import {
  circularMilsForDrop,
  copperResistanceOhm,
  deratedA,
  faaOhmPerKm20C,
  frameBits,
  leastGaugeFor,
  lengthForDropM,
  M_PER_FT,
  maxDropRatio,
  necContinuousFactor,
  necSmallConductorMaxA,
  necStandardDevices,
  relayPullInV,
  resistanceRatio,
  tableById,
} from "@fusebook/core/tables";
import { describe, expect, it } from "vitest";

/*
 * Published worked examples, by their number in the table `worked-examples`. Every published answer was read in an opened text. Networks (W18 to W27)
 * are checked with the network engine; W31 (battery run time) in endurance-peukert.test.ts; W38 is a rule without arithmetic.
 */

const figure = (of: { kind: string; value?: number }): number => {
  expect(of.kind).toBe("known");
  return of.value ?? Number.NaN;
};
const near = (got: number, wanted: number, tolerance: number) =>
  expect(Math.abs(got - wanted), `${got} against ${wanted}`).toBeLessThanOrEqual(tolerance);
const gauge = (circularMils: number, basis: "awg" | "sae"): string => {
  const got = leastGaugeFor(circularMils, basis);
  return got.kind === "known" ? got.value : got.code;
};

/** Volts lost in so many feet of FAA table 11-9 wire at 20 A. */
const faaDropV = (size: string, loopFt: number): number =>
  figure(faaOhmPerKm20C(size)) * 0.001 * loopFt * M_PER_FT * 20;

describe("conductor selection by drop", () => {
  it("W01 Lessons In Electric Circuits vol. I, conductors: 25 A, 2300 ft one way, 5 V a leg, K 10.09: 116 035 cmil, 2/0 AWG", () => {
    const mils = circularMilsForDrop(10.09, 25, 2300, 5);
    near(mils, 116035, 0.5);
    expect(gauge(mils, "awg")).toBe("2/0");
    expect(mils).toBeGreaterThan(105500);
  });

  it("W02 the same text: in 14 AWG (4107 cmil) 230 V drives at most 20.352 A into a short, 5.651 ohm a leg", () => {
    near(circularMilsForDrop(10.09, 20.352, 4600, 230), 4107, 0.5);
    near(230 / 20.352 / 2, 5.651, 0.0005);
    expect(gauge(4107, "awg")).toBe("14");
  });

  it("W04 FAA AC 43.13-1B table 11-7: 1 V, 107 ft, 20 A: No. 6 drops 0.942 V", () => {
    near(faaDropV("6", 107), 0.942, 0.0005);
    expect(faaDropV("8", 107)).toBeGreaterThan(1);
  });

  it("W06 table 11-7: 4 V, 88 ft, 20 A: No. 12 drops 3.555 V; the printed 3.6 V is a rounding slip", () => {
    near(faaDropV("12", 88), 3.555, 0.0005);
    near(faaDropV("12", 88), 3.6, 0.05);
    expect(faaDropV("14", 88)).toBeGreaterThan(4);
  });

  it("W07 table 11-7: 7 V, 100 ft, 20 A: No. 14 drops 6.12 V", () => {
    near(faaDropV("14", 100), 6.12, 0.0005);
    expect(faaDropV("16", 100)).toBeGreaterThan(7);
  });

  it("W09 table 11-8: No. 10, 0.5 V, 20 A: 19.5 ft drops 0.491 V; the printed 0.366 V is wrong", () => {
    near(faaDropV("10", 19.5), 0.4914, 0.00005);
    expect(Math.abs(faaDropV("10", 19.5) - 0.366)).toBeGreaterThan(0.1);
    const longestFt = lengthForDropM(figure(faaOhmPerKm20C("10")) / 1000, 20, 0.5) / M_PER_FT;
    expect(longestFt).toBeGreaterThanOrEqual(19.5);
    expect(longestFt).toBeLessThan(20);
  });

  it("W10 table 11-8: No. 10, 4 V, 20 A: 156 ft drops 3.93 V", () => {
    near(faaDropV("10", 156), 3.93, 0.005);
    const longestFt = lengthForDropM(figure(faaOhmPerKm20C("10")) / 1000, 20, 4) / M_PER_FT;
    expect(longestFt).toBeGreaterThanOrEqual(156);
    expect(longestFt).toBeLessThan(160);
  });

  it("W12 FAA 11-67 example 1: 20 A, 50 ft with its return, 1 V: between No. 8 (0.70 V) and No. 10 (1.26 V), so No. 8", () => {
    near(faaDropV("8", 50), 0.7, 0.005);
    near(faaDropV("10", 50), 1.26, 0.005);
  });

  it("W15 reprint of ABYC E-11 table IX guidance: 12 V, 10 A, 21 ft round, 3 %: 10 AWG, by SAE minimum areas only", () => {
    const mils = circularMilsForDrop(10.75, 10, 21, 12 * maxDropRatio("critical").value);
    near(mils, 6271, 0.5);
    expect(gauge(mils, "sae")).toBe("10");
    expect(gauge(mils, "awg")).toBe("12");
  });

  it("W16 reprint of table X guidance: the same at 10 %: 16 AWG", () => {
    const mils = circularMilsForDrop(10.75, 10, 21, 12 * maxDropRatio("general").value);
    near(mils, 1881, 0.5);
    expect(gauge(mils, "sae")).toBe("16");
  });
});

describe("conductors, heat and devices", () => {
  it("W13 FAA 11-67 example 2: 47 A times 0.91 (20 000 ft) is 42.77 A, times 0.6 (8 wires) 25.7 A, printed as 26 A", () => {
    near(deratedA(47, [0.91]), 42.77, 0.005);
    near(deratedA(47, [0.91, 0.6]), 25.7, 0.05);
    expect(Math.round(deratedA(47, [0.91, 0.6]))).toBe(26);
  });

  it("W17 OpenStax College Physics 2e, 20.3: 20.0 m of 12 gauge copper, 2.053 mm across, measure 0.104 ohm", () => {
    near(copperResistanceOhm((Math.PI / 4) * 2.053 ** 2, 20, 20), 0.104, 0.0005);
  });

  it("W29 OpenStax College Physics 2e, 20.3: a filament of 0.350 ohm at 20 C is 4.8 ohm at 2850 C, 13.7 times", () => {
    const ratio = resistanceRatio(20, 2850, 4.5e-3, 20);
    near(0.35 * ratio, 4.8, 0.05);
    near(ratio, 13.7, 0.05);
  });

  it("W32 code question page (NEC 210.20): 24 A continuous wants a device of 30 A; 10 AWG may have one (240.4(D)(7))", () => {
    const leastA = 24 * necContinuousFactor().value;
    expect(leastA).toBe(30);
    expect(necStandardDevices().value.find((ratedA) => ratedA >= leastA)).toBe(30);
    expect(figure(necSmallConductorMaxA("10"))).toBe(30);
  });

  it("W33 BS 7671 543.1.3 example: 3000 A for 0.4 s, k 115: 16.50 mm2, so 25 mm2", () => {
    const areaMm2 = withstandAreaMm2(3000, 0.4, 115);
    near(areaMm2, 16.5, 0.005);
    const sizes = tableById("iec60228")!.rows.map((row) => Number(row[0]));
    expect(sizes.find((size) => size >= areaMm2)).toBe(25);
  });

  it("W35 Real-Time Systems 35 (2007): eight data bytes take 135 bits (11-bit identifier) or 160 (29-bit)", () => {
    expect([figure(frameBits(8, 11)), figure(frameBits(8, 29))]).toEqual([135, 160]);
  });

  it("W37 relay application note: 16 V pull-in at 25 C is 19.7 V at 85 C, 20.6 V at 100 C, 12.9 V at -25 C", () => {
    near(relayPullInV(16, 85), 19.7, 0.05);
    near(relayPullInV(16, 100), 20.6, 0.05);
    near(relayPullInV(16, -25), 12.9, 0.05);
  });
});
