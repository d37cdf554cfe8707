import { frameBits, terminatedOhm, trunkLimits } from "@fusebook/core/tables";
import { describe, expect, it } from "vitest";

const figure = (of: { kind: string; value?: number }): number => {
  expect(of.kind).toBe("known");
  return of.value ?? Number.NaN;
};

/**
 * Real-Time Systems 35 (2007) 239-272, equations 1 to 3, quoted in the header of the Linux CAN utilities (seen): worst-case bits with the three of
 * the interframe space, 11-bit and 29-bit identifier; then milliseconds of the 29-bit frame at 125 and 250 kbit/s.
 */
const FRAMES: readonly (readonly [number, number, number, number, number])[] = [
  [0, 55, 80, 0.64, 0.32],
  [1, 65, 90, 0.72, 0.36],
  [2, 75, 100, 0.8, 0.4],
  [3, 85, 110, 0.88, 0.44],
  [4, 95, 120, 0.96, 0.48],
  [5, 105, 130, 1.04, 0.52],
  [6, 115, 140, 1.12, 0.56],
  [7, 125, 150, 1.2, 0.6],
  [8, 135, 160, 1.28, 0.64],
];

describe("worst-case frames of the two-wire network", () => {
  it.each(FRAMES)("%d data bytes: %d bits, %d bits", (dataBytes, bits11, bits29, msAt125, msAt250) => {
    expect(figure(frameBits(dataBytes, 11))).toBe(bits11);
    expect(figure(frameBits(dataBytes, 29))).toBe(bits29);
    expect(figure(frameBits(dataBytes, 29)) / 125).toBeCloseTo(msAt125, 9);
    expect(figure(frameBits(dataBytes, 29)) / 250).toBeCloseTo(msAt250, 9);
  });
});

describe("cable of the two-wire network", () => {
  /** CiA 301, bit-timing table, as quoted in public documents (seen); the stub columns come from one device document. */
  it.each([
    [1000, 25, 1.5, 7.5],
    [800, 50, 2.5, 12.5],
    [500, 100, 5.5, 27.5],
    [250, 250, 11, 55],
    [125, 500, 22, 110],
    [50, 1000, 55, 275],
  ])("%d kbit/s: %d m, stubs of %d m, %d m of stubs in all", (kbit, trunkM, stubM, allStubsM) => {
    expect(trunkLimits(kbit)).toMatchObject({ kind: "known", value: { trunkM, stubM, allStubsM } });
  });

  it("measured unpowered: 60 ohm with both terminators, 120 with one missing, 40 with a third (120 ohm each, ISO 11898-2)", () => {
    expect([2, 1, 3].map((count) => figure(terminatedOhm(count)))).toEqual([60, 120, 40]);
  });
});
