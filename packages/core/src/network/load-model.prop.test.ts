import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { figureValue } from "../quantity/index.js";
import { LOAD_CLASSES, type Load } from "../record/index.js";
import { loadFiguresOf } from "./load-figures.js";
import { isMonotone, type LoadModel, LoadTable } from "./load-model.js";

const RUNS = { seed: 20260502, numRuns: 500 };
const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const model: fc.Arbitrary<LoadModel> = fc.oneof(
  fc.record({ kind: fc.constant("resistance" as const), resistanceOhm: figure(0.1, 100) }),
  fc.record({ kind: fc.constant("current" as const), currentA: figure(0, 20), kneeV: figure(1, 10) }),
  fc.record({ kind: fc.constant("power" as const), powerW: figure(0, 200), dropOutV: figure(5, 11) }),
  fc.record({
    kind: fc.constant("led" as const),
    forwardV: figure(0, 11),
    resistanceOhm: figure(0.1, 50),
    bendV: figure(11, 14),
    aboveOhm: figure(0.1, 50),
  }),
  fc.record({ kind: fc.constant("filament" as const), currentA: figure(0, 20), ratedV: figure(6, 28) }),
  fc.record({ kind: fc.constant("motor" as const), runningA: figure(0, 20), stallOhm: figure(0.1, 5) }),
  fc.record({
    kind: fc.constant("regulated" as const),
    setV: figure(12, 15),
    outputOhm: figure(0.001, 0.1),
    maxA: figure(0, 100),
  }),
);

describe("load models", () => {
  it("the slope is the slope, and no model jumps", () => {
    fc.assert(
      fc.property(model, figure(-5, 30), (one, v) => {
        const table = new LoadTable([{ model: one }]);
        const h = 1e-7;
        const below = table.currentAt(0, v - h);
        const belowSlope = table.slopeS;
        const above = table.currentAt(0, v + h);
        const aboveSlope = table.slopeS;
        const rise = (above - below) / (2 * h);
        const slack = 1e-4 * (1 + Math.abs(belowSlope) + Math.abs(aboveSlope));
        // At a kink the rise lies between the slopes on both sides.
        expect(rise).toBeGreaterThan(Math.min(belowSlope, aboveSlope) - slack);
        expect(rise).toBeLessThan(Math.max(belowSlope, aboveSlope) + slack);
      }),
      RUNS,
    );
  });

  it("every model but constant power never draws less as the volts rise", () => {
    fc.assert(
      fc.property(model.filter(isMonotone), figure(-5, 30), figure(0, 10), (one, v, more) => {
        const table = new LoadTable([{ model: one }]);
        expect(table.currentAt(0, v + more)).toBeGreaterThanOrEqual(table.currentAt(0, v) - 1e-12);
      }),
      RUNS,
    );
  });

  it("behind a resistance a load draws what it draws at the volts that are left, and the slope is that of both", () => {
    fc.assert(
      fc.property(model, figure(-5, 30), figure(0.001, 2), (one, v, ohm) => {
        const table = new LoadTable([{ model: one }]);
        const currentA = table.currentThrough(0, v, ohm);
        const own = table.currentAt(0, v - ohm * currentA);
        expect(Math.abs(own - currentA)).toBeLessThan(1e-9 * (1 + Math.abs(currentA)) * (1 + Math.abs(table.slopeS)));
        const h = 1e-7;
        const below = table.currentThrough(0, v - h, ohm);
        const belowSlope = table.slopeS;
        const above = table.currentThrough(0, v + h, ohm);
        const aboveSlope = table.slopeS;
        // A constant-power load that loses its upper point goes out at once: there is no slope there.
        if (
          one.kind === "power" &&
          (Math.abs(above - below) > 1e-3 || Math.abs(belowSlope) + Math.abs(aboveSlope) > 100)
        )
          return;
        const rise = (above - below) / (2 * h);
        const slack = 1e-3 * (1 + Math.abs(belowSlope) + Math.abs(aboveSlope));
        expect(rise).toBeGreaterThan(Math.min(belowSlope, aboveSlope) - slack);
        expect(rise).toBeLessThan(Math.max(belowSlope, aboveSlope) + slack);
      }),
      RUNS,
    );
  });
});

describe("figures of a load", () => {
  const load: fc.Arbitrary<Load> = fc.record(
    {
      id: fc.constant("l1" as Load["id"]),
      name: fc.constant("load"),
      class: fc.constantFrom(...LOAD_CLASSES),
      quantity: fc.integer({ min: 1, max: 8 }),
      ratedV: fc.constantFrom(12, 12.8, 13.5),
      currentA: figure(0.05, 15),
      powerW: figure(1, 150),
      stallA: figure(1, 60),
      dropOutV: figure(5, 11),
      ledForwardV: figure(5, 10),
      ledResistorOhm: figure(0.5, 40),
    },
    { requiredKeys: ["id", "name"] },
  );

  it("the nominal model lies between least and most at all volts; without any current or power it is missing by path", () => {
    fc.assert(
      fc.property(load, figure(0, 16), (one, v) => {
        const found = loadFiguresOf(one, 12, "loads[4]");
        const isLedGiven =
          one.class === "led-resistor" && one.ledForwardV !== undefined && one.ledResistorOhm !== undefined;
        if (found.kind !== "known") {
          expect(one.currentA === undefined && one.powerW === undefined && !isLedGiven).toBe(true);
          expect(found).toEqual({ kind: "missing", needs: ["loads[4].currentA"] });
          return;
        }
        const table = new LoadTable(
          [found.value.least, found.value.nominal, found.value.most].map((each) => ({ model: each })),
        );
        expect(table.currentAt(0, v)).toBeLessThanOrEqual(table.currentAt(1, v) + 1e-9);
        expect(table.currentAt(1, v)).toBeLessThanOrEqual(table.currentAt(2, v) + 1e-9);
      }),
      RUNS,
    );
  });

  it("at its rated volts a load draws its rated current, all pieces together", () => {
    fc.assert(
      fc.property(load, (one) => {
        const found = loadFiguresOf(one, 12, "loads[4]");
        if (found.kind !== "known") return;
        const table = new LoadTable([{ model: found.value.nominal }]);
        const currentA = table.currentAt(0, figureValue(one.ratedV ?? 12));
        // A motor whose stall figure is under its running figure is taken to stall there.
        expect(Math.abs(currentA - found.value.ratedA)).toBeLessThan(1e-6 * (1 + found.value.ratedA));
      }),
      RUNS,
    );
  });
});
