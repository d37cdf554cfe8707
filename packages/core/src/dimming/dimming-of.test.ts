import { describe, expect, it } from "vitest";
import type { Outcome } from "../quantity/index.js";
import { type CoachRecord, indexRecord, type ModuleKind } from "../record/index.js";
import { capacitorInput } from "./capacitor-input.js";
import { circuitFeed, feedOfDriver } from "./circuit-feed.js";
import { circuitSuitability } from "./circuit-suitability.js";
import { dimmingOf } from "./dimming-of.js";
import { driverPulses, INPUT_CAPACITANCE } from "./driver-pulses.js";
import { evenRamp } from "./even-ramp.js";
import { lightnessOf } from "./lightness.js";
import { lowestUsefulDuty } from "./lowest-duty.js";
import { moduleDimming } from "./module-dimming.js";

const knownOf = <T>(outcome: Outcome<T>): T => {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};
const exactly = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

const kind = {
  id: "d4",
  name: "D4",
  channels: 4,
  output: "pwm",
  pwmHz: exactly(220),
  minDutyRatio: 0.05,
  dutySteps: 100,
  ratedDimmedA: 6,
  onResistanceOhm: exactly(0.02),
  dimBlocks: [{ id: "b1", channels: [1, 2] }],
};

/** A battery of 12.6 V behind 10 milliohm; circuits of 0.1 ohm out and 0.1 ohm back. */
const coach = (circuits: readonly (readonly object[])[]) =>
  indexRecord({
    format: "fusebook/1",
    id: "x",
    coach: { name: "x", nominalV: 12 },
    supplies: [
      {
        id: "s1",
        name: "bank",
        kind: "battery",
        node: "plus",
        returnNode: "minus",
        openCircuitV: exactly(12.6),
        internalResistanceOhm: exactly(0.01),
      },
    ],
    nodes: [
      { id: "plus", name: "plus", kind: "busbar" },
      { id: "minus", name: "minus", kind: "busbar" },
    ],
    moduleKinds: [{ ...kind, quiescentA: exactly(0) }],
    modules: [{ id: "m1", kind: "d4", feedNode: "plus" }],
    circuits: circuits.map((loads, i) => ({
      id: `c${i + 1}`,
      module: "m1",
      channel: i + 1,
      fuse: { ratedA: 10, resistanceOhm: exactly(0.01) },
      out: { resistanceOhm: exactly(0.1) },
      return: { resistanceOhm: exactly(0.1), node: "minus" },
      loads: loads.map((_, k) => `l${i + 1}${k + 1}`),
    })),
    loads: circuits.flatMap((loads, i) =>
      loads.map((load, k) => ({ id: `l${i + 1}${k + 1}`, name: "x", ratedV: exactly(12), ...load })),
    ),
  } as unknown as CoachRecord);

describe("evenRamp", () => {
  it("rounds each step to what the module can give, never below its lowest, and says how even that leaves it", () => {
    const ramp = knownOf(evenRamp({ ...(kind as unknown as ModuleKind) }));
    expect(ramp.steps).toHaveLength(8);
    expect(ramp.steps[0]).toMatchObject({ dutyRatio: 0.05, level: 5 });
    expect(ramp.steps.at(-1)).toMatchObject({ dutyRatio: 1, level: 100 });
    for (const step of ramp.steps) {
      expect(step.dutyRatio * 100).toBeCloseTo(step.level!, 9);
      // The neighbour on either side looks no nearer to what was wanted.
      const wanted = step.lightness - step.errorLightness;
      for (const other of [step.level! - 1, step.level! + 1])
        if (other >= 5 && other <= 100)
          expect(Math.abs(knownOf(lightnessOf(other / 100)) - wanted)).toBeGreaterThanOrEqual(
            Math.abs(step.errorLightness) - 1e-9,
          );
    }
    expect(ramp.isRounded).toBe(true);
    expect(ramp.greatestStepLightness - ramp.leastStepLightness).toBeLessThan(2);
  });

  it("merges steps that a coarse module cannot tell apart", () => {
    const ramp = knownOf(evenRamp({ minDutyRatio: 0.1, dutySteps: 10 }, { steps: 16 }));
    expect(ramp.steps.length + ramp.mergedSteps).toBe(16);
    expect(ramp.mergedSteps).toBeGreaterThan(5);
    expect(new Set(ramp.steps.map((step) => step.level)).size).toBe(ramp.steps.length);
  });

  it("does not round where nobody knows how finely the module dims", () => {
    const ramp = knownOf(evenRamp({ minDutyRatio: 0.05 }));
    expect(ramp.isRounded).toBe(false);
    expect(ramp.steps.every((step) => step.errorLightness < 1e-9 && step.level === undefined)).toBe(true);
    expect(evenRamp({})).toEqual({ kind: "missing", needs: ["minDutyRatio"] });
    expect(evenRamp({ minDutyRatio: 0.1, dutySteps: 0 })).toMatchObject({ code: "duty-steps-out-of-range" });
  });

  it("starts at the lowest duty that the lamps want, where that is above the module's", () => {
    expect(knownOf(evenRamp({ minDutyRatio: 0.05, dutySteps: 100 }, { fromDutyRatio: 0.2 })).steps[0]).toMatchObject({
      dutyRatio: 0.2,
    });
  });
});

describe("circuitSuitability", () => {
  const of = (...loads: object[]) => {
    const index = coach([loads]);
    return circuitSuitability(index, index.circuits.get("c1")!);
  };
  it("is as good as the worst of its loads, and names a mixture", () => {
    expect(of({ class: "filament" }, { class: "led-resistor" }).may).toBe("yes");
    expect(of({ class: "filament" }, { class: "led-driver" }).may).toBe("only-if");
    expect(of({ class: "filament" }, {}).may).toBe("unknown");
    expect(of({ class: "filament" }, { class: "fan" })).toMatchObject({
      may: "no",
      isMixed: true,
      steady: ["l12"],
      dimmable: ["l11"],
    });
    expect(of({ class: "fan" }).isMixed).toBe(false);
  });
  it("names lamps that sit behind a switch of their own, and knows nothing of a circuit without loads", () => {
    expect(of({ class: "filament", hasOwnSwitch: true, ownSwitchKind: "contact" })).toMatchObject({
      may: "yes",
      behindOwnSwitch: ["l11"],
    });
    expect(of()).toMatchObject({ may: "unknown", isUnlisted: true });
  });
});

describe("circuitFeed and driverPulses", () => {
  // 6 W at 12 V on 0.24 ohm: bank 0.01, contact 0.02, fuse 0.01, wires 0.2.
  const driver = { class: "led-driver", currentA: exactly(0.5), dropOutV: exactly(8) };
  it("finds the loop by hand: bank, contact, fuse and both wires", () => {
    const index = coach([[driver]]);
    const feed = knownOf(circuitFeed(index, index.circuits.get("c1")!));
    expect(feed.supplyV).toBeCloseTo(12.6, 6);
    expect(feed.loopOhm).toBeCloseTo(0.24, 6);
    expect(feed.powerW).toBeCloseTo(6, 9);
    expect(feed.dropOutV).toBe(8);
    expect(feed.loopSpanOhm.lo).toBeLessThanOrEqual(0.24);
    expect(feed.loopSpanOhm.hi).toBeGreaterThanOrEqual(0.24);
  });
  it("gives one of two alike drivers twice the loop, because the other's current drops on it too", () => {
    const index = coach([[driver, driver]]);
    const feed = knownOf(circuitFeed(index, index.circuits.get("c1")!));
    expect(feed.powerW).toBeCloseTo(12, 9);
    expect(feedOfDriver(feed, "l11")).toMatchObject({ powerW: 6 });
    expect(feedOfDriver(feed, "l11")!.loopOhm).toBeCloseTo(0.48, 6);
    expect(feedOfDriver(feed, "nobody")).toBeUndefined();
  });
  it("holds every capacitor of the class figure, marked as from memory; the record's own narrows it", () => {
    const feed = { supplyV: 12.6, loopOhm: 0.24, loopSpanOhm: { lo: 0.24, hi: 0.24 }, powerW: 6, dropOutV: 8 };
    const guessed = knownOf(driverPulses([{ class: "led-driver" }], feed, 220, 0.5));
    expect(guessed.knownFrom).toBe("class");
    expect(guessed.source.how).toBe("memory");
    for (const inputCapacitanceF of [INPUT_CAPACITANCE.spanF.lo, 220e-6, INPUT_CAPACITANCE.spanF.hi]) {
      const read = knownOf(
        driverPulses([{ class: "led-driver", inputCapacitanceF: exactly(inputCapacitanceF) as never }], feed, 220, 0.5),
      );
      expect(read.knownFrom).toBe("record");
      expect(read.peakA.hi).toBeLessThanOrEqual(guessed.peakA.hi * 1.001);
      expect(read.peakA.lo).toBeGreaterThanOrEqual(guessed.peakA.lo * 0.999);
      expect(read.rmsA.hi).toBeCloseTo(read.rmsA.lo, 9);
    }
    // As hot as the hottest of eighty capacitors between.
    const span = knownOf(driverPulses([{ class: "led-driver" }], feed, 220, 0.1)).rmsA;
    for (let i = 0; i <= 80; i++) {
      const farad = INPUT_CAPACITANCE.spanF.lo * 100 ** (i / 80);
      const one = knownOf(capacitorInput({ ...feed, capacitanceF: farad, pwmHz: 220, dutyRatio: 0.1 }));
      expect(one.rmsA).toBeLessThanOrEqual(span.hi * 1.002);
    }
    expect(driverPulses([{ class: "filament" }], feed, 220, 0.5).kind).toBe("missing");
  });
  it("finds the least duty at which a driver runs through the pauses", () => {
    const feed = { supplyV: 12.6, loopOhm: 0.24, powerW: 6, dropOutV: 8 };
    const lowest = (inputCapacitanceF: number) =>
      knownOf(lowestUsefulDuty(kind as unknown as ModuleKind, { class: "led-driver", inputCapacitanceF }, feed));
    expect(lowest(470e-6)).toMatchObject({ setBy: "driver", lightness: 100 });
    expect(lowest(470e-6).dutyRatio).toBeLessThan(lowest(100e-6).dutyRatio);
    expect(lowest(20e-3)).toMatchObject({ setBy: "module", dutyRatio: 0.05 });
    expect(lowestUsefulDuty(kind as unknown as ModuleKind, { class: "led-driver" }, feed)).toEqual({
      kind: "missing",
      needs: ["inputCapacitanceF"],
    });
  });
});

describe("dimmingOf", () => {
  it("gathers verdict, flicker, lowest duty, currents, rating and ramp of a lamp circuit", () => {
    const index = coach([[{ class: "led-linear", currentA: exactly(2) }]]);
    const one = knownOf(dimmingOf(index, "c1"));
    expect(one).toMatchObject({ circuit: "c1", module: "m1", kind: "d4", channel: 1, block: "b1" });
    expect(knownOf(one.rating).verdict).toBe("holds");
    expect(knownOf(one.lowestDutyRatio)).toBe(0.05);
    const rows = knownOf(one.currents);
    expect(rows[0]!.dutyRatio).toBe(0.05);
    // 2 A over contact 0.02, fuse 0.01 and wires 0.2; the bank's own drop is not in it.
    for (const row of rows) expect(row.dropV).toBeCloseTo(0.46, 6);
    expect(knownOf(one.loads[0]!.flicker)).toMatchObject({ lowRisk: "fails", noEffect: "fails" });
    expect(knownOf(one.ramp).steps[0]!.dutyRatio).toBe(0.05);
    expect(one.drivers).toBeUndefined();
  });

  it("shows that a dimmed filament drops more while on, though it takes less on the mean", () => {
    const index = coach([[{ class: "filament", currentA: exactly(2) }]]);
    const rows = knownOf(knownOf(dimmingOf(index, "c1")).currents);
    for (let i = 1; i < rows.length; i++) {
      expect(rows[i]!.dropV).toBeLessThan(rows[i - 1]!.dropV);
      expect(rows[i]!.meanA).toBeGreaterThan(rows[i - 1]!.meanA);
      expect(rows[i]!.meanW).toBeGreaterThan(rows[i - 1]!.meanW);
    }
  });

  it("judges on another kind, and says why a relay kind or a plain fuse has no ramp", () => {
    const index = coach([[{ class: "filament", currentA: exactly(2) }]]);
    const relay = { ...kind, id: "r4", name: "R4", output: "relay" } as unknown as ModuleKind;
    const one = knownOf(dimmingOf(index, "c1", { kind: relay }));
    expect(one.ramp).toMatchObject({ kind: "refused", code: "kind-cannot-dim" });
    expect(one.suitability.may).toBe("yes");
    expect(dimmingOf(index, "c9")).toMatchObject({ code: "no-such-circuit" });
  });

  it("names what is missing by its full path, the kind's fields with the kind's", () => {
    const index = coach([[{ class: "led-driver", currentA: exactly(1) }]]);
    const bare = { ...kind, pwmHz: undefined, minDutyRatio: undefined } as unknown as ModuleKind;
    const one = knownOf(dimmingOf(index, "c1", { kind: bare }));
    expect(one.loads[0]!.lowest).toEqual({
      kind: "missing",
      needs: ["loads[0].inputCapacitanceF", "moduleKinds[0].minDutyRatio", "moduleKinds[0].pwmHz"],
    });
    expect(one.loads[0]!.flicker).toEqual({ kind: "missing", needs: ["moduleKinds[0].pwmHz"] });
  });
});

describe("moduleDimming", () => {
  it("gives blocks, both ramps and every circuit", () => {
    const index = coach([[{ class: "filament", currentA: exactly(2) }], [{ class: "pump", currentA: exactly(2) }]]);
    const one = knownOf(moduleDimming(index, "m1"));
    expect(one.blocks.map(({ suitability }) => knownOf(suitability).may)).toEqual(["no"]);
    expect(one.circuits).toHaveLength(2);
    const [led, filament] = [knownOf(one.ramps.led), knownOf(one.ramps.filament)];
    // A filament needs more duty for the same look.
    expect(filament.steps[3]!.dutyRatio).toBeGreaterThan(led.steps[3]!.dutyRatio);
    expect(moduleDimming(index, "m9")).toMatchObject({ code: "no-such-module" });
  });
});
