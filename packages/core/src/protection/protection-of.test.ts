import { describe, expect, it } from "vitest";
import { allOnState, spanCoach } from "../network/index.js";
import {
  busCurrentOf,
  cableFaultOf,
  circuitInrushOf,
  demandOf,
  faultAtFarEnd,
  prospectiveAtFuse,
  protectionOf,
  totalsOf,
  underPolicies,
} from "./index.js";
import { smallCoach } from "./small-coach.js";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });
const value = <T>(outcome: { kind: string; value?: T }): T => {
  expect(outcome).toMatchObject({ kind: "known" });
  return outcome.value as T;
};

describe("the short at the far end", () => {
  it("is the battery's volts over all that lies in its way: 12.6 V over 10 + 1 + 1 + 8 + 50 + 10 mOhm", () => {
    const found = value(faultAtFarEnd(smallCoach({ out: { resistanceOhm: exact(0.05) } }), "c1"));
    expect(found.currentA).toBeCloseTo(12.6 / 0.08, 9);
    expect(found.parts.map(({ place, ohm }) => `${place} ${ohm}`)).toEqual([
      "battery 0.01",
      "feeder 0.001",
      "fuse 0.001",
      "fuse 0.008",
      "wire 0.05",
      "return 0.01",
    ]);
    // All is exact but the heat: at the least both wires are at 105 C instead of 30 C.
    const hot = (1 + 0.00393 * 85) / (1 + 0.00393 * 10);
    expect(found.span.lo).toBeCloseTo(12.6 / (0.02 + 0.06 * hot), 9);
    expect(found.span.hi).toBeCloseTo(12.6 / 0.08, 9);
  });

  it("with a charger of 14.4 V and 30 A on, at most 30 A more, and never more than 14.4 V could drive", () => {
    const charger = {
      id: "s2",
      name: "C",
      kind: "charger",
      node: "n-bar",
      returnNode: "n-minus",
      outputV: exact(14.4),
      ratedA: 30,
    };
    const far = value(faultAtFarEnd(smallCoach({ out: { resistanceOhm: exact(0.05) }, supplies: [charger] }), "c1"));
    expect(far.span.hi).toBeCloseTo(12.6 / 0.08 + 30, 6);
    const thin = value(faultAtFarEnd(smallCoach({ out: { resistanceOhm: exact(2) }, supplies: [charger] }), "c1"));
    expect(thin.span.hi).toBeLessThan(14.4 / 2.018);
  });

  it("at a lamp's own thin wire it is smaller, and that wire is among the conductors", () => {
    const lamp = {
      id: "l1",
      name: "Lamp",
      class: "led-resistor",
      currentA: 1,
      tail: { gauge: "22 AWG", insulationC: 105, lengthM: 1 },
    };
    const found = value(faultAtFarEnd(smallCoach({ loads: [lamp] }), "c1"));
    expect(found.ends.map((end) => [end.at, end.conductors.at(-1)?.part])).toEqual([
      ["run", "return"],
      ["tail", "tail"],
    ]);
    expect(found.ends[1]!.currentA).toBeLessThan(found.currentA);
  });

  it("two unlike batteries: the nominal lies inside, the span reaches from the weaker alone to the stronger alone", () => {
    const second = {
      id: "s2",
      name: "B2",
      kind: "battery",
      node: "n-plus",
      returnNode: "n-minus",
      openCircuitV: exact(12.2),
      internalResistanceOhm: exact(0.02),
    };
    const { currentA, span } = value(
      faultAtFarEnd(smallCoach({ out: { resistanceOhm: exact(0.05) }, supplies: [second] }), "c1"),
    );
    // Both together: (12.6/10 + 12.2/20) / (1/10 + 1/20) = 12.4667 V behind 6.667 mOhm.
    expect(currentA).toBeCloseTo(12.466666667 / 0.076666667, 5);
    expect(span.hi).toBeCloseTo(12.6 / 0.076666667, 5);
    expect(span.lo).toBeLessThan(12.2 / 0.076666667);
  });

  it("names what is wanted, and refuses an unknown circuit", () => {
    expect(faultAtFarEnd(smallCoach({ out: { lengthM: undefined } }), "c1")).toEqual({
      kind: "missing",
      needs: ["circuits[0].out.lengthM"],
    });
    expect(faultAtFarEnd(smallCoach(), "c9")).toMatchObject({ kind: "refused", code: "no-such-circuit" });
  });
});

describe("right behind a device", () => {
  it("the fuse itself counts as nothing: 12.6 V over battery and main cable", () => {
    expect(value(prospectiveAtFuse(smallCoach(), "c1")).currentA).toBeCloseTo(12.6 / 0.012, 6);
  });
  it("a feeder: at its source the battery alone, at its end the cable and its device too", () => {
    const found = value(cableFaultOf(smallCoach(), "k1"));
    expect(found.atSource.currentA).toBeCloseTo(12.6 / 0.01, 6);
    expect(found.atEnd.currentA).toBeCloseTo(12.6 / 0.012, 6);
  });
});

describe("protection of a circuit", () => {
  it("a long thin wire: the short cannot open a 20 A fuse in 5 s, and that fails", () => {
    const told = value(
      protectionOf(smallCoach({ fuse: { ratedA: 20 }, out: { gauge: "18 AWG", lengthM: exact(18) } }), "c1"),
    );
    expect(value(told.ends)[0]!.clearing.verdict).toBe("fails");
  });
  it("a 24 AWG tail behind 30 A: the fuse is too slow for it, the 16 AWG run is not spoiled", () => {
    const lamp = {
      id: "l1",
      name: "Lamp",
      class: "led-resistor",
      currentA: 1,
      tail: { gauge: "24 AWG", insulationC: 80, lengthM: 0.3 },
    };
    const told = value(protectionOf(smallCoach({ fuse: { ratedA: 30 }, loads: [lamp] }), "c1"));
    const [run, tail] = value(told.ends);
    expect(run!.conductors.map((one) => one.verdict)).not.toContain("fails");
    expect(tail!.conductors.find((one) => one.conductor.part === "tail")?.verdict).toBe("fails");
  });
  it("a motor that stalls at ten times its 6 A fuse for 0.3 s does not pass; behind 40 A it does", () => {
    const motor = { id: "l1", name: "Pump", class: "pump", currentA: exact(5), stallA: exact(60), runUpS: exact(0.3) };
    const verdict = (ratedA: number) =>
      value(value(protectionOf(smallCoach({ fuse: { ratedA }, loads: [motor] }), "c1")).inrushPasses).verdict;
    expect(verdict(6)).toBe("fails");
    expect(verdict(40)).toBe("holds");
  });
  it("a fuse that may break 50 A where 1050 A can flow fails; without its print the field is named", () => {
    const told = (fuse: object) => value(protectionOf(smallCoach({ fuse }), "c1")).interrupt;
    expect(value(told({ interruptA: 50 })).verdict).toBe("fails");
    expect(value(told({ interruptA: 2000 })).verdict).toBe("holds");
    expect(told({})).toEqual({ kind: "missing", needs: ["circuits[0].fuse.interruptA"] });
  });
  it("the main fuse of a family without gates is named by the field that would tell", () => {
    expect(value(protectionOf(smallCoach(), "c1")).above[0]?.selectivity).toEqual({
      kind: "missing",
      needs: ["cables[0].protection.gates"],
    });
  });
});

describe("limits side by side", () => {
  it("18 AWG at 105 C alone: 20 A by 33 CFR 183 table 5; a device up to 7 A (NEC 240.4(D)), 30 A (150 %), 25 A (125 %)", () => {
    const index = smallCoach({ out: { gauge: "18 AWG", insulationC: 105, bundleCount: 1 } });
    const rows = value(underPolicies(index, "c1", ["nec", "marine", "road-vehicle"]));
    expect(
      rows.map(({ policy, runs }) => [
        policy,
        value(runs[0]!.ampacity).ampacityA,
        value(runs[0]!.ceiling).maxA,
        runs[0]!.fuse,
      ]),
    ).toEqual([
      ["nec", 20, 7, "fails"],
      ["marine", 20, 30, "holds"],
      ["road-vehicle", 20, 25, "holds"],
    ]);
  });
});

describe("totals", () => {
  it("both states are named, and the demand counts only the greatest of what moves", () => {
    const index = smallCoach({
      loads: [
        { id: "l1", name: "Lamp", class: "led-resistor", currentA: exact(2) },
        { id: "l2", name: "Pump", class: "pump", currentA: exact(6) },
        { id: "l3", name: "Shade", class: "actuator", currentA: exact(3) },
      ],
    });
    const demand = value(demandOf(index, [...index.circuits.values()]));
    expect([demand.connectedA, demand.demandA, demand.greatestMoving?.loadId]).toEqual([11, 0.8 * 2 + 6, "l2"]);
    expect(demand.source.how).toBe("practice");
    const totals = value(totalsOf(index));
    expect([totals.busy.state, totals.allOn.state]).toEqual(["busy evening", "everything on"]);
  });

  it("a bar that two unlike batteries share carries also what one takes from the other, and the span holds it", () => {
    const second = {
      id: "s2",
      name: "B2",
      kind: "battery",
      node: "n-plus",
      returnNode: "n-minus",
      openCircuitV: exact(12),
      internalResistanceOhm: exact(0.01),
    };
    const index = smallCoach({ supplies: [second] });
    const spans = value(spanCoach(index, allOnState(index)));
    const found = value(busCurrentOf(index, spans, "n-plus"));
    // 12.6 V and 12 V through 20 mOhm: about 30 A between them, half an ampere each to the lamp.
    const flowing = Math.max(...[...spans.nominal.supplies.values()].map((supply) => supply.currentA));
    expect(flowing).toBeGreaterThan(29);
    expect(found.span.hi).toBeGreaterThanOrEqual(flowing);
    expect(found.span.lo).toBeLessThanOrEqual(flowing);
    expect(found.nominal).toBeCloseTo(flowing, 6);
  });
});

describe("a circuit's start", () => {
  it("two lamps on one wire share its resistance: their peak is less than twice one's, and above one's", () => {
    const lamp = (id: string) => ({ id, name: id, class: "filament", powerW: exact(20), ratedV: exact(12) });
    const out = { resistanceOhm: exact(0.1) };
    const one = value(circuitInrushOf(smallCoach({ out, loads: [lamp("l1")] }), "c1")).peakA;
    const two = value(circuitInrushOf(smallCoach({ out, loads: [lamp("l1"), lamp("l2")] }), "c1")).peakA;
    expect(two).toBeGreaterThan(one);
    expect(two).toBeLessThan(2 * one);
  });
  it("an outlet has no start that anybody knows: the field is named", () => {
    const outlet = { id: "l1", name: "Outlet", class: "outlet", currentA: 5 };
    expect(circuitInrushOf(smallCoach({ loads: [outlet] }), "c1")).toEqual({
      kind: "missing",
      needs: ["loads[0].inrushRatio"],
    });
  });
});
