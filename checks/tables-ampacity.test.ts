import {
  ambientFactorByLaw,
  bladeColour,
  cfr183Ampacity,
  cfr183EngineFactor,
  contactFactor,
  faaAmpacity,
  marineBundleFactor,
  necAmbientFactor,
  necBundleFactor,
  necSmallConductorMaxA,
} from "@fusebook/core/tables";
import { describe, expect, it } from "vitest";

const figure = (of: { kind: string; value?: number }): number => {
  expect(of.kind).toBe("known");
  return of.value ?? Number.NaN;
};
const near = (got: number, wanted: number, tolerance: number) =>
  expect(Math.abs(got - wanted), `${got} against ${wanted}`).toBeLessThanOrEqual(tolerance);

const CLASSES = [60, 75, 80, 90, 105, 125, 200] as const;

/** 33 CFR 183.425 table 5, current text, A in 30 C air, by insulation class; seen in a public reproduction of the regulation. */
const TABLE_5: readonly (readonly [string, readonly number[]])[] = [
  ["18", [10, 10, 15, 20, 20, 25, 25]],
  ["16", [15, 15, 20, 25, 25, 30, 35]],
  ["14", [20, 20, 25, 30, 35, 40, 45]],
  ["12", [25, 25, 35, 40, 45, 50, 55]],
  ["10", [40, 40, 50, 55, 60, 70, 70]],
  ["8", [55, 65, 70, 70, 80, 90, 100]],
  ["6", [80, 95, 100, 100, 120, 125, 135]],
  ["4", [105, 125, 130, 135, 160, 170, 180]],
  ["3", [120, 145, 150, 155, 180, 195, 210]],
  ["2", [140, 170, 175, 180, 210, 225, 240]],
  ["1", [165, 195, 210, 210, 245, 265, 280]],
  ["1/0", [195, 230, 245, 245, 285, 305, 325]],
  ["2/0", [225, 265, 285, 285, 330, 355, 370]],
  ["3/0", [260, 310, 330, 330, 385, 410, 430]],
  ["4/0", [300, 360, 385, 385, 445, 475, 510]],
];

/** The 105 C column in an engine space (50 C) as two reprints of the marine table print it, A (seen). */
const ENGINE_105: readonly number[] = [17, 21, 30, 38, 51, 68, 102, 136, 153, 178, 208, 242, 280, 327, 378];

describe("33 CFR 183.425 table 5", () => {
  it.each(TABLE_5)("%s AWG by class 60 to 200 C: %j", (size, amperes) => {
    expect(CLASSES.map((insulationC) => figure(cfr183Ampacity(size, insulationC)))).toEqual(amperes);
  });

  it("the engine-space column of the reprints is the 105 C column times 0.85, to the ampere", () => {
    const factor = figure(cfr183EngineFactor(105));
    TABLE_5.forEach(([size], at) => {
      near(figure(cfr183Ampacity(size, 105)) * factor, ENGINE_105[at]!, 0.5 + 1e-9);
    });
  });

  it("the engine-space factors from memory for 60, 75 and 90 C are those of the NEC 46-50 C row, which was seen", () => {
    for (const [insulationC, seen] of [
      [60, 0.58],
      [75, 0.75],
      [90, 0.82],
    ] as const) {
      expect(figure(cfr183EngineFactor(insulationC))).toBe(seen);
      expect(figure(necAmbientFactor(50, insulationC))).toBe(seen);
    }
  });

  it("the factors from memory for 80, 105 and 125 C keep the law root((Tc - 50)/(Tc - 30)) within 0.01; the one for 200 C does not (1.00 against 0.94)", () => {
    for (const insulationC of [80, 105, 125])
      near(figure(cfr183EngineFactor(insulationC)), figure(ambientFactorByLaw(50, insulationC)), 0.01);
    near(figure(ambientFactorByLaw(50, 200)), 0.94, 0.005);
    expect(figure(cfr183EngineFactor(200))).toBe(1);
  });
});

/** NFPA 70 (NEC) 2023 table 310.15(B)(1)(1), hottest air of each band, factor for 60, 75 and 90 C; seen in a public transcription. */
const AMBIENT: readonly (readonly [number, number, number | undefined, number | undefined, number | undefined])[] = [
  [26, 30, 1, 1, 1],
  [31, 35, 0.91, 0.94, 0.96],
  [36, 40, 0.82, 0.88, 0.91],
  [41, 45, 0.71, 0.82, 0.87],
  [46, 50, 0.58, 0.75, 0.82],
  [51, 55, 0.41, 0.67, 0.76],
  [56, 60, undefined, 0.58, 0.71],
  [61, 65, undefined, 0.47, 0.65],
  [66, 70, undefined, 0.33, 0.58],
  [71, 75, undefined, undefined, 0.5],
  [76, 80, undefined, undefined, 0.41],
  [81, 85, undefined, undefined, 0.29],
];

describe("NEC table 310.15(B)(1)(1), ambient", () => {
  it.each(AMBIENT)("air of %d to %d C", (fromC, toC, ...factors) => {
    ([60, 75, 90] as const).forEach((insulationC, at) => {
      for (const ambientC of [fromC, toC]) {
        const got = necAmbientFactor(ambientC, insulationC);
        if (factors[at] === undefined) expect(got.kind).toBe("refused");
        else expect(figure(got)).toBe(factors[at]);
      }
      // The law at the hottest air of the band, rounded to two places, is the table.
      if (factors[at] !== undefined) near(figure(ambientFactorByLaw(toC, insulationC)), factors[at], 0.005);
    });
  });
});

describe("NEC table 310.15(C)(1) and the marine guideline, bundles", () => {
  /** NFPA 70 2023 (seen in a transcription; a second page agrees). */
  it.each([
    [4, 6, 0.8],
    [7, 9, 0.7],
    [10, 20, 0.5],
    [21, 30, 0.45],
    [31, 40, 0.4],
    [41, 90, 0.35],
  ])("NEC: %d to %d conductors, %d", (from, to, factor) => {
    expect([figure(necBundleFactor(from)), figure(necBundleFactor(to))]).toEqual([factor, factor]);
  });

  /** 33 CFR 183.435 guideline, table 5 note 2, as a public reprint has it (seen); applied there at 50 V and more. */
  it.each([
    [3, 3, 0.7],
    [4, 6, 0.6],
    [7, 24, 0.5],
    [25, 60, 0.4],
  ])("marine: %d to %d conductors, %d", (from, to, factor) => {
    expect([figure(marineBundleFactor(from)), figure(marineBundleFactor(to))]).toEqual([factor, factor]);
  });
});

describe("other published figures", () => {
  it("NEC 240.4(D) (seen): 18, 16, 14, 12, 10 AWG copper take 7, 10, 15, 20, 30 A", () => {
    expect(["18", "16", "14", "12", "10"].map((size) => figure(necSmallConductorMaxA(size)))).toEqual([
      7, 10, 15, 20, 30,
    ]);
  });

  it("FAA AC 43.13-1B CHG 1 table 11-9 (seen): 14, 10 and 4/0 at 105, 150, 200 C", () => {
    const row = (size: string) => ([105, 150, 200] as const).map((conductorC) => figure(faaAmpacity(size, conductorC)));
    expect(row("14")).toEqual([10, 14, 18]);
    expect(row("10")).toEqual([17, 26, 32]);
    expect(row("4/0")).toEqual([204, 310, 395]);
  });

  it("FAA AC 43.13-1B table 11-4 (seen): contact factors at 12 V and 28 V", () => {
    const row = (load: "lamp" | "inductive" | "resistive" | "motor") => [
      figure(contactFactor(load, 12)),
      figure(contactFactor(load, 24)),
    ];
    expect([row("lamp"), row("inductive"), row("resistive"), row("motor")]).toEqual([
      [5, 8],
      [2, 4],
      [1, 2],
      [2, 3],
    ]);
  });

  it("blade fuse colours that public pages show (seen): 3 A violet, 7.5 A brown, 10 A red, 15 A blue, 30 A green", () => {
    expect([3, 7.5, 10, 15, 30].map((ratedA) => bladeColour(ratedA))).toMatchObject(
      ["violet", "brown", "red", "blue", "green"].map((value) => ({ value, source: { how: "seen" } })),
    );
  });
});
