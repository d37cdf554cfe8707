import { CLASS_BATTERY, chargeFound, chargeOfRestedVolts, HALF_CHARGE_TABLES_V } from "@fusebook/core/endurance";
import type { Supply } from "@fusebook/core/record";
import { chargeOfLead, lifepo4V, openCircuitOfLead, tableById } from "@fusebook/core/tables";
import { describe, expect, it } from "vitest";

/*
 * Open-circuit volts. Expected figures: table `ocv-lead`, the BCI table as reproduced in two public pages (seen), and the other tables seen beside it;
 * table `lifepo4`, several public guides (seen, none a standard). W21 and W23 (battery networks) are in network-textbook.test.ts.
 */

const battery = (more: Partial<Supply>): Supply => ({ id: "s-1", kind: "battery", name: "Bank", ...more }) as Supply;
const point = (v: number) => ({ lo: v, hi: v });

describe("flooded lead-acid at rest, 12 V, 80 F", () => {
  it("BCI as reproduced: 12.65, 12.45, 12.24, 12.06, 11.89 V at 100, 75, 50, 25, 0 %, and back", () => {
    for (const [percent, volts] of [
      [100, 12.65],
      [75, 12.45],
      [50, 12.24],
      [25, 12.06],
      [0, 11.89],
    ] as const) {
      expect(openCircuitOfLead(percent / 100)).toMatchObject({ kind: "known", value: volts });
      const back = chargeOfLead(volts);
      expect(back.kind === "known" && back.value).toBeCloseTo(percent / 100, 9);
    }
  });

  it("the published tables disagree at half charge, 12.20, 12.24 or 12.30 V: a perfect reading of 12.24 V still leaves 41 to 57 %", () => {
    expect(HALF_CHARGE_TABLES_V).toEqual({ least: 12.2, table: 12.24, most: 12.3 });
    expect(tableById("ocv-lead")?.notes.join(" ")).toContain("12.20, 12.24 or 12.30 V");
    const found = chargeOfRestedVolts(battery({ chemistry: "flooded" }), 12.24, point(12.24), 12);
    if (found.kind !== "known") throw new Error("known");
    expect(found.value.value).toBeCloseTo(0.5, 9);
    // 12.18 V lies 0.06 V below 12.24: 0.12/0.18 of the way from 25 to 50 %; 12.28 V 0.04 V above: 0.04/0.21 of the way to 75 %.
    expect(found.value.span.lo).toBeCloseTo(0.25 + (0.25 * 0.12) / 0.18, 9);
    expect(found.value.span.hi).toBeCloseTo(0.5 + (0.25 * 0.04) / 0.21, 9);
  });

  it("a 24 V bank reads twice as much", () => {
    const found = chargeOfRestedVolts(battery({ chemistry: "agm" }), 24.9, point(24.9), 24);
    expect(found.kind === "known" && found.value.value).toBeCloseTo(0.75, 9);
  });
});

describe("lithium iron phosphate", () => {
  it("public guides: 12.8 V nominal, 14.6 V full charge limit, 13.5 V float for four cells", () => {
    expect(lifepo4V("nominal")).toMatchObject({ value: 12.8 });
    expect(lifepo4V("full charge limit")).toMatchObject({ value: 14.6 });
    expect(lifepo4V("float")).toMatchObject({ value: 13.5 });
  });

  it("its volts say little between 20 and 90 %: a reading tells no charge, and three quarters is assumed over a wide span instead", () => {
    const lithium = battery({ chemistry: "lifepo4", openCircuitV: 13.1 });
    expect(chargeOfRestedVolts(lithium, 13.1, point(13.1), 12)).toMatchObject({
      kind: "refused",
      code: "volts-say-little",
    });
    expect(chargeFound(lithium, "supplies[0]", 12)).toMatchObject({
      value: { from: "assumed", span: { lo: 0.25, hi: 1 } },
    });
  });

  it("no exponent is published for it: what is used is marked as memory, lead's as seen", () => {
    expect(CLASS_BATTERY.exponent.lithium).toMatchObject({ value: 1.02, source: { how: "memory" } });
    expect(CLASS_BATTERY.exponent.lead).toMatchObject({
      span: { lo: 1.1, hi: 1.3 },
      source: { id: "peukert", how: "seen" },
    });
  });
});
