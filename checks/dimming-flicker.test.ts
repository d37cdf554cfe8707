import { flickerLimits, flickerOf } from "@fusebook/core/dimming";
import { describe, expect, it } from "vitest";

/**
 * IEEE Std 1789-2015, 8.1.1 simple recommended practices, maximum modulation in percent. Seen in an open-source flicker-analysis module that
 * cites the clause; the standard's title page was seen, the clause itself was not opened. undefined: no limit.
 */
const ROWS: readonly (readonly [
  hz: number,
  lowRiskPercent: number | undefined,
  noEffectPercent: number | undefined,
])[] = [
  [10, 0.25, 0.1],
  [60, 1.5, 0.6],
  [90, 7.2, 3.0],
  [100, 8.0, 3.33],
  [120, 9.6, 4.0],
  [200, 16.0, 6.67],
  [400, 32.0, 13.33],
  [500, 40.0, 16.67],
  [1000, 80.0, 33.33],
  [1250, 100.0, 41.67],
  [2000, undefined, 66.67],
  [3000, undefined, undefined],
];

/** Half a unit of the second place. */
const TOLERANCE_PERCENT = 0.005 + 1e-9;

describe("IEEE Std 1789-2015, 8.1.1", () => {
  it.each(ROWS)("at %d Hz: low risk %s %%, no effect %s %%", (hz, lowRiskPercent, noEffectPercent) => {
    const limits = flickerLimits(hz);
    for (const [got, wanted] of [
      [limits.lowRiskRatio, lowRiskPercent],
      [limits.noEffectRatio, noEffectPercent],
    ]) {
      if (wanted === undefined) expect(got).toBeUndefined();
      else expect(Math.abs(got! * 100 - wanted)).toBeLessThanOrEqual(TOLERANCE_PERCENT);
    }
  });

  it("light that goes out between pulses is low risk from 1250 Hz and without effect from 3000 Hz (note to the table)", () => {
    const verdicts = (hz: number) => {
      const got = flickerOf(hz, 1);
      return got.kind === "known" ? [got.value.lowRisk, got.value.noEffect] : [];
    };
    expect(verdicts(220)).toEqual(["fails", "fails"]);
    expect(verdicts(1249)).toEqual(["fails", "fails"]);
    expect(verdicts(1250)).toEqual(["holds", "fails"]);
    expect(verdicts(2999)).toEqual(["holds", "fails"]);
    expect(verdicts(3000)).toEqual(["holds", "holds"]);
  });
});
