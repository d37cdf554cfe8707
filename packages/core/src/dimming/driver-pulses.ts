import { figureValue, known, missing, type Outcome, type Source, type Span, spanOf } from "../quantity/index.js";
import type { Load } from "../record/index.js";
import { type CapacitorInputCurrents, capacitorInput } from "./capacitor-input.js";
import { between, CAPACITANCE_POINTS, hottestOf } from "./hottest-capacitor.js";
import { LOOP_INDUCTANCE, stepPeakA } from "./loop-inductance.js";
import type { DriverFeed } from "./modulation-depth.js";

/**
 * Capacitor at the input of one LED driver where nobody read it, farad: from a ceramic part to a large electrolytic. From memory, no source; whatever
 * rests on it says so.
 */
export const INPUT_CAPACITANCE: { readonly nominalF: number; readonly spanF: Span; readonly source: Source } = {
  nominalF: 100e-6,
  spanF: { lo: 10e-6, hi: 1000e-6 },
  source: { id: "class-figure", name: "class figure from memory, no source", how: "memory" },
};

/** Pulses into the drivers of one channel, as spans over the capacitor and the loop. */
export interface DriverPulses {
  /** From the most inductance that the loop may have to none. */
  readonly peakA: Span;
  readonly rmsA: Span;
  readonly meanA: Span;
  /** Share of the time that the drivers run; 1: they do not dim. */
  readonly runsRatio: Span;
  readonly nominal: CapacitorInputCurrents;
  readonly capacitanceF: Span;
  /** `class`: nobody read the capacitor, and the class figure from memory stood in. */
  readonly knownFrom: "record" | "class";
  readonly source: Source;
}

/** The feed of a driver with the span of its loop. */
export interface SpannedFeed extends DriverFeed {
  readonly loopSpanOhm: Span;
}

/**
 * What does the channel feel of its drivers at this duty, whatever their capacitors and the loop may be? All drivers of `loads` together, as one.
 * The extremes are sought on a grid over both spans, because the heat is greatest somewhere inside. Missing: no driver among them.
 * Refused as `capacitorInput`.
 */
export function driverPulses(
  loads: readonly Pick<Load, "class" | "inputCapacitanceF" | "quantity">[],
  feed: SpannedFeed,
  pwmHz: number,
  dutyRatio: number,
): Outcome<DriverPulses> {
  const drivers = loads.filter((load) => load.class === "led-driver");
  if (drivers.length === 0) return missing("a driver");
  const knownFrom = drivers.every((load) => load.inputCapacitanceF !== undefined) ? "record" : "class";
  const total = { lo: 0, nominal: 0, hi: 0 };
  for (const load of drivers) {
    const stated = load.inputCapacitanceF;
    const span = stated === undefined ? INPUT_CAPACITANCE.spanF : spanOf(stated, "any");
    const pieces = load.quantity ?? 1;
    total.lo += pieces * Math.max(span.lo, 1e-9);
    total.nominal += pieces * (stated === undefined ? INPUT_CAPACITANCE.nominalF : figureValue(stated));
    total.hi += pieces * span.hi;
  }
  const made = new Map<string, Outcome<CapacitorInputCurrents>>();
  const at = (capacitanceF: number, loopOhm: number): Outcome<CapacitorInputCurrents> => {
    const key = `${capacitanceF} ${loopOhm}`;
    const one = made.get(key) ?? capacitorInput({ ...feed, capacitanceF, loopOhm, pwmHz, dutyRatio });
    made.set(key, one);
    return one;
  };
  const nominal = at(total.nominal, feed.loopOhm);
  if (nominal.kind !== "known") return nominal;
  const found = [nominal.value];
  const softest: number[] = [];
  const points = total.hi > total.lo ? CAPACITANCE_POINTS : 1;
  for (let i = 0; i < points; i++) {
    const capacitanceF = between(total, points === 1 ? 0 : i / (points - 1));
    for (const loopOhm of new Set([feed.loopSpanOhm.lo, feed.loopSpanOhm.hi])) {
      const one = at(capacitanceF, Math.max(loopOhm, 1e-4));
      if (one.kind !== "known") return one;
      found.push(one.value);
      // What flows on while the driver runs is not slowed by inductance.
      const steadyA = dutyRatio < 1 ? feed.powerW / feed.supplyV : one.value.peakA;
      const pulseA = stepPeakA(feed.supplyV - one.value.lowV, loopOhm, LOOP_INDUCTANCE.spanH.hi, capacitanceF);
      softest.push(Math.min(one.value.peakA, Math.max(pulseA, steadyA)));
    }
  }
  const hottest = hottestOf(at, total, feed.loopSpanOhm);
  if (hottest !== undefined) found.push(hottest);
  const over = (of: (one: CapacitorInputCurrents) => number): Span => {
    const all = found.map(of);
    return { lo: Math.min(...all), hi: Math.max(...all) };
  };
  return known({
    peakA: { lo: Math.min(...softest), hi: over((one) => one.peakA).hi },
    rmsA: over((one) => one.rmsA),
    meanA: over((one) => one.meanA),
    runsRatio: over((one) => one.runsRatio),
    nominal: nominal.value,
    capacitanceF: { lo: total.lo, hi: total.hi },
    knownFrom,
    source:
      knownFrom === "class"
        ? INPUT_CAPACITANCE.source
        : { id: "record", name: "the record's own figure", how: "computed" },
  });
}
