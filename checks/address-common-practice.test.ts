import { NEVER_DIMMED, suitabilityOf } from "@fusebook/core/dimming";
import { addressesOf, encodeAddress } from "@fusebook/core/switchbank";
import { describe, expect, it } from "vitest";

/** Two facts of common practice. No text that was opened states them; they are typed here by hand. */
describe("common practice, no source", () => {
  it("four two-position switches give sixteen addresses, all with positions of their own", () => {
    const code = {
      kind: "weights" as const,
      coding: "binary" as const,
      firstAddress: 0,
      switches: [1, 2, 4, 8].map((weight, i) => ({ switch: i + 1, weight, onMeans: 1 as const })),
    };
    expect(addressesOf(code)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]);
    const settings = addressesOf(code).map((address) => JSON.stringify(encodeAddress(code, address)));
    expect(new Set(settings).size).toBe(16);
    expect(encodeAddress(code, 16)).toMatchObject({ kind: "refused", code: "address-out-of-range" });
  });

  it("motors, pumps, fans, actuators and heater signals are not dimmed", () => {
    for (const each of ["motor", "pump", "fan", "actuator", "heater-control"] as const) {
      expect(suitabilityOf({ class: each }).may, each).toBe("no");
      expect(NEVER_DIMMED).toContain(each);
    }
  });
});
