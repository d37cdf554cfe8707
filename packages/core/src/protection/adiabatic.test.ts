import { describe, expect, it } from "vitest";
import {
  adiabaticFactor,
  iceaTimeS,
  meltingCurrentA,
  meltingTimeS,
  withstandAreaMm2,
  withstandTimeS,
} from "./adiabatic.js";

describe("short-time withstand", () => {
  it("refuses a conductor that does not heat", () => {
    expect(adiabaticFactor(70, 70)).toMatchObject({ kind: "refused", code: "no-rise" });
    expect(adiabaticFactor(Number.NaN, 160)).toMatchObject({ kind: "refused", code: "no-rise" });
  });

  it("the section that stands a current for a time stands it for just that time", () => {
    expect(withstandTimeS(200, withstandAreaMm2(200, 0.7, 100), 100)).toBeCloseTo(0.7, 12);
  });

  it("twice the current melts a wire in a quarter of the time, and the two forms of the law agree", () => {
    expect(meltingTimeS(200, 4110, 25) / meltingTimeS(400, 4110, 25)).toBeCloseTo(4, 12);
    expect(meltingTimeS(meltingCurrentA(3, 4110, 25), 4110, 25)).toBeCloseTo(3, 12);
  });

  it("insulation is lost before copper melts", () => {
    expect(iceaTimeS(200, 4110, 75, 150)).toBeLessThan(meltingTimeS(200, 4110, 75));
  });
});
