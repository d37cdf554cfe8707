import {
  awgAreaMm2,
  awgDiameterMm,
  circularMilsOf,
  copperOhmCmilPerFt,
  copperResistanceOhm,
  necOhmPerKm75C,
  resistanceRatio,
  runAtTemperatureM,
  solidOhmPerKm20C,
} from "@fusebook/core/tables";
import { describe, expect, it } from "vitest";

const KM_PER_KFT = 0.3048;

const figure = (of: { kind: string; value?: number }): number => {
  expect(of.kind).toBe("known");
  return of.value ?? Number.NaN;
};

/**
 * ASTM B258 diameter law with IACS resistivity, worked out apart from this code; diameters and circular mils agree with the solid-wire table of
 * the open textbook Lessons In Electric Circuits, Reference volume (seen). Columns: mm, mm2, circular mils, ohm per 1000 ft at 20 C and 75 C.
 */
const SOLID: readonly (readonly [string, number, number, number, number, number])[] = [
  ["24", 0.5106, 0.2047, 404.0, 25.6688, 31.2171],
  ["22", 0.6438, 0.3255, 642.4, 16.1432, 19.6326],
  ["20", 0.8118, 0.5176, 1021.5, 10.1526, 12.3471],
  ["18", 1.0237, 0.823, 1624.3, 6.385, 7.7651],
  ["16", 1.2908, 1.3087, 2582.7, 4.0156, 4.8835],
  ["14", 1.6277, 2.0809, 4106.7, 2.5254, 3.0713],
  ["12", 2.0525, 3.3088, 6529.9, 1.5883, 1.9316],
  ["10", 2.5882, 5.2612, 10383.0, 0.9989, 1.2148],
  ["8", 3.2636, 8.3656, 16509.7, 0.6282, 0.764],
  ["6", 4.1154, 13.3018, 26251.4, 0.3951, 0.4805],
  ["4", 5.1894, 21.1506, 41741.3, 0.2485, 0.3022],
  ["3", 5.8273, 26.6705, 52634.8, 0.197, 0.2396],
  ["2", 6.5437, 33.6308, 66371.3, 0.1563, 0.19],
  ["1", 7.3481, 42.4077, 83692.7, 0.1239, 0.1507],
  ["1/0", 8.2515, 53.4751, 105534.5, 0.0983, 0.1195],
  ["2/0", 9.2658, 67.4309, 133076.5, 0.0779, 0.0948],
  ["3/0", 10.4049, 85.0288, 167806.4, 0.0618, 0.0752],
  ["4/0", 11.684, 107.2193, 211600.0, 0.049, 0.0596],
];

/** Half of the last place printed, and a little for the rounding of binary numbers. */
const half = (places: number): number => 0.5 * 10 ** -places * 1.001;
const near = (got: number, wanted: number, tolerance: number) =>
  expect(Math.abs(got - wanted), `${got} against ${wanted}`).toBeLessThanOrEqual(tolerance);

describe("solid AWG copper: ASTM B258 law with IACS resistivity", () => {
  it.each(SOLID)("%s AWG", (size, diameterMm, areaMm2, mils, ohmPerKft20C, ohmPerKft75C) => {
    const area = figure(awgAreaMm2(size));
    near(figure(awgDiameterMm(size)), diameterMm, half(4));
    near(area, areaMm2, half(4));
    near(circularMilsOf(area), mils, half(1));
    near(figure(solidOhmPerKm20C(size)) * KM_PER_KFT, ohmPerKft20C, half(4));
    near(copperResistanceOhm(area, 304.8, 75), ohmPerKft75C, half(4));
  });
});

/** NFPA 70 (NEC) 2023, chapter 9 table 8, ohm per 1000 ft at 75 C, uncoated copper. Seen in a transcription; 18 AWG stranded from memory. */
const NEC_SOLID: readonly (readonly [string, number])[] = [
  ["18", 7.77],
  ["16", 4.89],
  ["14", 3.07],
  ["12", 1.93],
  ["10", 1.21],
  ["8", 0.764],
];
const NEC_STRANDED: readonly (readonly [string, number])[] = [
  ["18", 7.95],
  ["16", 4.99],
  ["14", 3.14],
  ["12", 1.98],
  ["10", 1.24],
  ["8", 0.778],
  ["6", 0.491],
  ["4", 0.308],
  ["3", 0.245],
  ["2", 0.194],
  ["1", 0.154],
  ["1/0", 0.122],
  ["2/0", 0.0967],
  ["3/0", 0.0766],
  ["4/0", 0.0608],
];

describe("NEC chapter 9 table 8 against the copper law at 75 C", () => {
  it.each(NEC_SOLID)("%s AWG solid, %d ohm/kft: the law agrees within 0.6 %%", (size, ohmPerKft) => {
    near(figure(necOhmPerKm75C(size, "solid")) * KM_PER_KFT, ohmPerKft, 1e-9);
    near(copperResistanceOhm(figure(awgAreaMm2(size)), 304.8, 75) / ohmPerKft, 1, 0.006);
  });

  it.each(NEC_STRANDED)(
    "%s AWG stranded, %d ohm/kft: 2 %% over the solid law, give or take 0.6 %% (lay of the strands)",
    (size, ohmPerKft) => {
      near(figure(necOhmPerKm75C(size, "stranded")) * KM_PER_KFT, ohmPerKft, 1e-9);
      near(ohmPerKft / copperResistanceOhm(figure(awgAreaMm2(size)), 304.8, 75), 1.02, 0.006);
    },
  );

  it("circular mils of the law agree with the table's own within 0.3 % (1620, 4110, 26240, 105600, 211600)", () => {
    const printed: readonly (readonly [string, number])[] = [
      ["18", 1620],
      ["14", 4110],
      ["6", 26240],
      ["1/0", 105600],
      ["4/0", 211600],
    ];
    for (const [size, mils] of printed) near(circularMilsOf(figure(awgAreaMm2(size))) / mils, 1, 0.003);
  });
});

describe("resistivity and temperature", () => {
  it("IACS in the unit of drop tables: 10.371 ohm cmil/ft at 20 C (1/58 ohm mm2/m converted)", () => {
    near(copperOhmCmilPerFt(20), 10.371, half(3));
  });

  it("K = 10.75 of the marine tables (ABYC E-11 11.14.2.6 as quoted) is copper at about 29 C; at 75 C K is 12.61", () => {
    near(copperOhmCmilPerFt(29.3), 10.75, 0.01);
    near(copperOhmCmilPerFt(75), 12.61, half(2));
  });

  it("R(75 C) over R(20 C) is 1.21615, from 0.00393 (IEC 60287-1-1 table 1, seen in a transcription)", () => {
    near(resistanceRatio(20, 75), 1.21615, half(5));
  });

  it("the NEC form, R2 = R1 (1 + 0.00323 (T2 - 75)), agrees within 0.1 % from 20 C to 105 C", () => {
    for (const conductorC of [20, 40, 60, 75, 90, 105])
      near(resistanceRatio(75, conductorC) / (1 + 0.00323 * (conductorC - 75)), 1, 0.001);
  });

  it("a run for a hot wire, FAA AC 43.13-1B 11-66, L2 = 254.5 L1/(234.5 + T2): the copper law agrees within 0.1 %", () => {
    near(runAtTemperatureM(100, 20), 100, 1e-9);
    for (const conductorC of [50, 105, 200])
      near((runAtTemperatureM(100, conductorC) * resistanceRatio(20, conductorC)) / 100, 1, 0.001);
  });
});
