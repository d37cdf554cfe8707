import { lightnessOf, luminanceRatioOf } from "@fusebook/core/dimming";
import { describe, expect, it } from "vitest";

/**
 * CIE 1976 lightness: CIE e-ILV 17-23-076, IEC 60050-845-23-076, ISO/CIE 11664-4:2020, definition. Both vocabularies were opened (seen);
 * the pairs were computed from the definition outside this code, to three places.
 */
const PAIRS: readonly (readonly [luminanceRatio: number, lightness: number])[] = [
  [0.001, 0.903],
  [0.005, 4.516],
  [0.008856, 8.0],
  [0.01, 8.991],
  [0.02, 15.487],
  [0.05, 26.735],
  [0.1, 37.842],
  [0.18, 49.496],
  [0.2, 51.837],
  [0.25, 57.075],
  [0.5, 76.069],
  [0.75, 89.393],
  [1, 100.0],
];

/** Half a unit of the third place, and the rounding of binary numbers. */
const TOLERANCE_LSTAR = 0.0005 + 1e-9;

describe("CIE 1976 lightness", () => {
  it.each(PAIRS)("light %f of full looks %f", (luminanceRatio, lightness) => {
    const got = lightnessOf(luminanceRatio);
    expect(got.kind).toBe("known");
    if (got.kind === "known") expect(Math.abs(got.value - lightness)).toBeLessThanOrEqual(TOLERANCE_LSTAR);
  });

  it("half as bright to the eye is less than a fifth of the light (0.184, from the 0.18 and 0.2 pairs)", () => {
    const half = luminanceRatioOf(50);
    expect(half.kind).toBe("known");
    if (half.kind === "known") {
      expect(half.value).toBeGreaterThan(0.18);
      expect(half.value).toBeLessThan(0.2);
    }
  });
});
