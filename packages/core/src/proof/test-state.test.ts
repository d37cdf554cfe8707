import { describe, expect, it } from "vitest";
import { onlyState, type SpannedLoad, spanCoach } from "../network/index.js";
import type { LoadId } from "../record/index.js";
import { circuitOn, lamp, smallCoach } from "./small-coach.js";
import { indexOfOnly } from "./test-state.js";

const pump = { id: "l-pump", name: "Water pump", class: "pump", currentA: 4 };

describe("the record as if it had only the circuits that are on", () => {
  const coach = smallCoach({ circuits: [circuitOn(3, "l-pump"), circuitOn(1, "l-lamp")], loads: [lamp, pump] });
  const lampOf = (index: typeof coach): SpannedLoad | undefined => {
    const spans = spanCoach(index, onlyState(index, ["c1"], "lamp"));
    if (spans.kind !== "known") return undefined;
    const found = spans.value.loads.get("l-lamp" as LoadId);
    return found?.kind === "known" ? found.value : undefined;
  };
  it("gives the same span as the whole record with the others off", () => {
    const whole = lampOf(coach)!;
    const part = lampOf(indexOfOnly(coach, [coach.circuits.get("c1")!.id]))!;
    for (const amount of ["onV", "onA"] as const) {
      expect(part[amount].span.lo).toBeCloseTo(whole[amount].span.lo, 7);
      expect(part[amount].span.hi).toBeCloseTo(whole[amount].span.hi, 7);
    }
  });
  it("keeps the paths of the whole record", () => {
    expect(indexOfOnly(coach, []).pathOf("circuits", "c1")).toBe("circuits[1]");
  });
});
