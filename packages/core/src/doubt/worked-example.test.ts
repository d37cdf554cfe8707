import { describe, expect, it } from "vitest";
import type { FindingDoubt } from "./doubt.js";
import { doubtOf } from "./doubt-of.js";
import { lampCoach } from "./test-lamp.js";

const drop = (): FindingDoubt =>
  doubtOf(lampCoach(), { seed: 3, samples: 2000 }).find(
    (one): one is FindingDoubt => one.kind === "compared" && one.finding.code === "drop-over-limit",
  )!;

describe("the worked example of docs/method/doubt.md", () => {
  it("a drop of 0.8 to 1.6 V against 1.2 V fails in half of the drawn coaches", () => {
    const { span, limit, sense, failsRatio, quantiles, samples } = drop();
    // A millionth of an ohm stands for none at all.
    expect(span.lo).toBeCloseTo(0.8, 4);
    expect(span.hi).toBeCloseTo(1.6, 4);
    expect([limit.value, sense, samples]).toEqual([expect.closeTo(1.2, 9), "at-most", 2000]);
    // Half, to within four times the deviation of 2,000 draws.
    expect(Math.abs(failsRatio - 0.5)).toBeLessThan(0.045);
    // Even over 0.8 V: 5 %, half and 95 % of the way.
    expect(quantiles.q05).toBeCloseTo(0.84, 1);
    expect(quantiles.q50).toBeCloseTo(1.2, 1);
    expect(quantiles.q95).toBeCloseTo(1.56, 1);
  });

  it("an ohmmeter on the wire leaves 0.13 V of 0.8 V in 10 minutes, and settles it five times in six", () => {
    const [reading, ...others] = drop().readings;
    expect(others).toEqual([]);
    expect(reading).toMatchObject({
      path: "circuits[0].out.resistanceOhm",
      instrument: "ohmmeter",
      caution: "power-off-first",
      accessMin: 5,
      readMin: 5,
      minutes: 10,
    });
    expect(reading?.widthBefore).toBeCloseTo(0.8, 6);
    expect(reading?.widthAfter).toBeCloseTo(0.13, 6);
    expect(reading?.shrinkPerMin).toBeCloseTo(0.067, 6);
    expect(reading?.chanceHolds).toBeCloseTo(0.42262, 4);
    expect(reading?.chanceFails).toBeCloseTo(0.41447, 4);
    expect(drop().outlook).toBe("one-reading");
  });
});
