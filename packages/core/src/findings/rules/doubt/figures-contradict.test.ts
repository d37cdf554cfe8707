import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";
import { read, solvedCoach } from "../../test-solved-coach.js";

describe("figures-contradict", () => {
  // 10 m of 2.5 mm2: (1/58) * (1 + 0.00393 * 10) * 10 / 2.5 * 1.02 = 0.0731 ohm, 0.066 to 0.081 with its tolerances.
  const wire = (resistanceOhm: object) => {
    const parts = solvedCoach([{ load: { class: "led-linear", currentA: read(5) } }]);
    const out = { resistanceOhm, lengthM: read(10, 0.2), sectionMm2: { value: 2.5, basis: "marked" } };
    return { ...parts, circuits: parts.circuits.map((circuit) => ({ ...circuit, out })) };
  };
  it("holds for a wire of 0.073 ohm that measures 0.075, fails where it measures 0.2: a joint, or another wire", () => {
    expect(verdictsOf("figures-contradict", wire(read(0.075, 0.003)))).toEqual(["c1 holds"]);
    expect(findingsOf("figures-contradict", wire(read(0.2, 0.01)))).toMatchObject([
      {
        verdict: "fails",
        severity: "watch",
        parameters: { what: "wire", isAbove: "yes" },
        settledBy: [{ path: "circuits[0].out.resistanceOhm", instrument: "ohmmeter" }],
      },
    ]);
  });
  it("fails for a lamp of 60 W on 12 V that was clamped at 2 A, holds at 5 A, minds no guess", () => {
    const at = (currentA: object) =>
      verdictsOf("figures-contradict", { loads: [{ id: "l1", name: "Lamp", ratedV: 12, powerW: 60, currentA }] });
    expect(at(read(2, 0.1))).toEqual(["l1 fails"]);
    expect(at(read(5, 0.1))).toEqual(["l1 holds"]);
    expect(at({ value: 2, basis: "assumed" })).toEqual([]);
  });
});
