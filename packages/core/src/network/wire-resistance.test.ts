import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY } from "../record/index.js";
import { conductorCOf, type WireResistance, wireResistance } from "./wire-resistance.js";

const exact = (value: number) => ({ value, basis: "measured" as const, plusMinus: 0 });
const known = (run: Parameters<typeof wireResistance>[0], conductorC = 20): WireResistance => {
  const found = wireResistance(run, DEFAULT_POLICY, conductorC, "run.");
  if (found.kind !== "known") throw new Error(JSON.stringify(found));
  return found.value;
};

describe("resistance of a conductor, one way", () => {
  it("NEC chapter 9 table 8, stranded at 75 C: 14, 12, 10, 6 AWG are 10.30, 6.50, 4.07, 1.61 ohm/km within 1 %", () => {
    for (const [gauge, ohmPerKm] of [
      ["14", 10.3018],
      ["12", 6.4961],
      ["10", 4.0682],
      ["6", 1.6109],
    ] as const)
      expect(Math.abs(known({ gauge: `${gauge} AWG`, lengthM: exact(1000) }, 75).ohm / ohmPerKm - 1)).toBeLessThan(
        0.01,
      );
  });
  it("solid copper at 20 C lies in the span: 12 AWG is 5.2108 ohm/km", () => {
    const { span } = known({ gauge: "12 AWG", lengthM: exact(1000) });
    expect(span.lo).toBeLessThan(5.2108);
    expect(span.hi).toBeGreaterThan(5.2108 * 1.02);
  });
  it("hotter copper resists more: 0.00393 per kelvin from 20 C", () => {
    const cold = known({ sectionMm2: exact(2), lengthM: exact(10) }, 20).ohm;
    expect(known({ sectionMm2: exact(2), lengthM: exact(10) }, 50).ohm / cold).toBeCloseTo(1 + 0.00393 * 30, 12);
  });
  it("a bare gauge number spans SAE and AWG: 14 holds 1.876 to 2.081 mm²", () => {
    const bare = known({ gauge: "14ga", lengthM: exact(10) });
    const awg = known({ gauge: "14 AWG", lengthM: exact(10) });
    const sae = known({ gauge: "14 SAE", lengthM: exact(10) });
    expect(sae.ohm / awg.ohm).toBeCloseTo(2.0809 / 1.876, 3);
    expect(bare.span.hi).toBeCloseTo(sae.span.hi, 12);
    expect(bare.span.lo).toBeCloseTo(awg.span.lo, 12);
  });
  it("IEC 60228: a 2.5 mm² flexible wire is at most 7.98 ohm/km at 20 C and at least plain copper", () => {
    const { ohm, span } = known({ gauge: "2.5 mm²", lengthM: exact(1000) });
    expect(ohm).toBeCloseTo(7.98, 9);
    expect(span.lo).toBeLessThan((1000 / 58 / 2.5) * 1.0001);
  });
  it("a reading end to end wins over length and gauge; a stated section wins over the gauge", () => {
    expect(known({ resistanceOhm: exact(0.05), gauge: "14 AWG", lengthM: exact(10) })).toMatchObject({
      ohm: 0.05,
      from: ["resistanceOhm"],
    });
    expect(known({ sectionMm2: exact(2), gauge: "14 AWG", lengthM: exact(10) }).from).toEqual([
      "sectionMm2",
      "lengthM",
    ]);
  });
  it("what is wanting is named; what cannot be is refused", () => {
    const of = (run: Parameters<typeof wireResistance>[0]) => wireResistance(run, DEFAULT_POLICY, 20, "run.");
    expect(of({})).toEqual({ kind: "missing", needs: ["run.gauge", "run.lengthM"] });
    expect(of({ gauge: "14 AWG" })).toEqual({ kind: "missing", needs: ["run.lengthM"] });
    expect(of({ gauge: "14 AWG", lengthM: 0 })).toMatchObject({ kind: "refused", code: "length-not-positive" });
    expect(of({ gauge: "14 AWG", lengthM: -3 })).toMatchObject({ kind: "refused", code: "length-not-positive" });
    expect(of({ gauge: "thick", lengthM: 3 })).toMatchObject({ kind: "refused", code: "gauge-unread" });
  });
  it("a conductor is at its zone's ambient: 30 C in the cabin, 50 C at the engine, its place's zone where it names none", () => {
    expect(conductorCOf({}, DEFAULT_POLICY)).toBe(30);
    expect(conductorCOf({ zone: "engine" }, DEFAULT_POLICY)).toBe(50);
    expect(conductorCOf({ place: "p1" }, DEFAULT_POLICY, () => "bay")).toBe(40);
  });
});
