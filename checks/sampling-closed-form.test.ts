import {
  type CoachSamples,
  type CoachState,
  jointRatio,
  onlyState,
  quantilesOf,
  sampleCoach,
} from "@fusebook/core/network";
import { type CoachRecord, indexRecord } from "@fusebook/core/record";
import { describe, expect, it } from "vitest";

/**
 * Coaches so small that their distribution can be written down by hand; nothing here is taken from the code. A quantile of n samples is off by chance: the
 * share of the truth below it has a standard error of sqrt(p (1 - p) / n), and five of those are allowed.
 */
const SAMPLES = 20_000;
const RATIOS = [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99];
const allowed = (p: number) => 5 * Math.sqrt((p * (1 - p)) / SAMPLES);

const exactly = (value: number) => ({ value, basis: "measured", plusMinus: 0 });
const about = (value: number, plusMinus: number) => ({ value, basis: "measured", plusMinus });

interface Small {
  readonly emfV: number;
  readonly ohm: number;
  readonly feederOhm?: number;
  readonly circuits: readonly { readonly load: object; readonly out?: object }[];
}

/** Battery, one feeder, plain fuses on a bar; every wire that is not given measures nothing to speak of. */
function sampled({ emfV, ohm, feederOhm = 1e-6, circuits }: Small, seed = 1): CoachSamples {
  const bare = { resistanceOhm: exactly(0) };
  const record = {
    format: "fusebook/1",
    coach: { name: "small", nominalV: 12 },
    nodes: [
      { id: "n-plus", kind: "terminal", name: "plus", rail: "positive" },
      { id: "n-bar", kind: "busbar", name: "bar", rail: "positive" },
      { id: "n-minus", kind: "terminal", name: "minus", rail: "return" },
    ],
    supplies: [
      {
        id: "s-1",
        kind: "battery",
        name: "battery",
        node: "n-plus",
        returnNode: "n-minus",
        openCircuitV: exactly(emfV),
        internalResistanceOhm: exactly(ohm),
      },
    ],
    cables: [{ id: "k-1", from: "n-plus", to: "n-bar", resistanceOhm: exactly(feederOhm) }],
    circuits: circuits.map(({ out }, n) => ({
      id: `c-${n}`,
      fusePosition: { node: "n-bar", name: `F${n}` },
      fuse: { ratedA: 15, resistanceOhm: exactly(0) },
      out: out ?? bare,
      return: { ...bare, node: "n-minus" },
      loads: [`l-${n}`],
    })),
    loads: circuits.map(({ load }, n) => ({ id: `l-${n}`, name: `load ${n}`, ratedV: exactly(12), ...load })),
  } as unknown as CoachRecord;
  const index = indexRecord(record);
  const state: CoachState = onlyState(index, index.circuits.keys(), "all");
  const outcome = sampleCoach(index, state, { seed, samples: SAMPLES });
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

const voltsAt = (samples: CoachSamples, load: string) => {
  const found = samples.loads.get(load as never);
  if (found?.kind !== "known") throw new Error(JSON.stringify(found));
  return found.value;
};

describe("quantiles against closed forms", () => {
  it("a divider: battery 12.6 V and 0.2 ohm, heater of 4 to 6 A at 12 V: onV = 12.6 * 12 / (12 + 0.2 c), c even", () => {
    const samples = sampled({
      emfV: 12.6,
      ohm: 0.2,
      circuits: [{ load: { class: "resistive-heater", currentA: about(5, 1) } }],
    });
    const volts = voltsAt(samples, "l-0").onV;
    // Falls as c rises: below V lies the share of c above the c that gives V.
    const shareBelow = (v: number) => (6 - (12 * 12.6) / (0.2 * v) + 12 / 0.2) / 2;
    quantilesOf(volts, RATIOS).forEach((v, n) => {
      expect(Math.abs(shareBelow(v) - RATIOS[n]!)).toBeLessThan(allowed(RATIOS[n]!));
    });
    expect(Math.min(...volts)).toBeGreaterThan((12.6 * 12) / (12 + 0.2 * 6) - 1e-6);
    expect(Math.max(...volts)).toBeLessThan((12.6 * 12) / (12 + 0.2 * 4) + 1e-6);
  });

  it("two loads of 3 A plus or minus 1 A each: the feeder's current is a triangle from 4 to 8 A", () => {
    const load = { class: "heater-control", currentA: about(3, 1) };
    const samples = sampled({ emfV: 12.6, ohm: 0.01, circuits: [{ load }, { load }] });
    const feeder = samples.cableA.get("k-1" as never);
    if (feeder?.kind !== "known") throw new Error("feeder");
    const shareBelow = (a: number) => (a < 6 ? (a - 4) ** 2 / 8 : 1 - (8 - a) ** 2 / 8);
    quantilesOf(feeder.value, RATIOS).forEach((a, n) => {
      expect(Math.abs(shareBelow(a) - RATIOS[n]!)).toBeLessThan(allowed(RATIOS[n]!));
    });
    const over7 = jointRatio(samples, (place) => feeder.value[place]! > 7);
    expect(Math.abs(over7.ofSolved - 1 / 8)).toBeLessThan(allowed(1 / 8));
    expect([over7.lo, over7.hi]).toEqual([over7.ofSolved, over7.ofSolved]);
  });

  /** Two wires of 10 and 20 m at 1 A each; the share of coaches in which both drop more than they do half the time. */
  const bothOverMedian = (insulation: readonly [number, number]) => {
    const load = { class: "heater-control", currentA: exactly(1) };
    const out = (lengthM: number, insulationC: number) => ({
      gauge: { value: "14 AWG", basis: "typical" },
      lengthM: exactly(lengthM),
      insulationC,
    });
    const samples = sampled({
      emfV: 12.6,
      ohm: 1e-6,
      circuits: [
        { load, out: out(10, insulation[0]) },
        { load, out: out(20, insulation[1]) },
      ],
    });
    const [first, second] = [voltsAt(samples, "l-0").dropV, voltsAt(samples, "l-1").dropV];
    const [a, b] = [quantilesOf(first, [0.5])[0]!, quantilesOf(second, [0.5])[0]!];
    const ratios = Array.from(first, (v, n) => second[n]! / v);
    return {
      both: jointRatio(samples, (place) => first[place]! > a && second[place]! > b).ofSolved,
      ratioSpread: Math.max(...ratios) - Math.min(...ratios),
    };
  };

  it("one reel: wires of one gauge and insulation are thick or thin together; both are over the middle half the time, one drops twice the other always", () => {
    const { both, ratioSpread } = bothOverMedian([105, 105]);
    expect(Math.abs(both - 0.5)).toBeLessThan(allowed(0.5));
    expect(ratioSpread).toBeLessThan(1e-3);
  });

  it("two reels: the same gauge in another insulation moves by itself; both are over the middle a quarter of the time", () => {
    const { both, ratioSpread } = bothOverMedian([105, 80]);
    expect(Math.abs(both - 0.25)).toBeLessThan(allowed(0.25));
    expect(ratioSpread).toBeGreaterThan(0.5);
  });

  it("constant power of 40 to 80 W behind 0.5 ohm, out below 9 V: it can run only up to (12.6 - 9) * 9 / 0.5 = 64.8 W; the rest are counted, not solved", () => {
    const samples = sampled({
      emfV: 12.6,
      ohm: 0.5,
      circuits: [{ load: { class: "electronics", powerW: about(60, 20), dropOutV: exactly(9) } }],
    });
    const share = (80 - 64.8) / 40;
    expect(Math.abs(samples.unsolved / SAMPLES - share)).toBeLessThan(allowed(share));
    expect(samples.solved + samples.unsolved).toBe(SAMPLES);
    const { onV, onA } = voltsAt(samples, "l-0");
    expect(onV.length).toBe(samples.solved);
    expect(Math.max(...Array.from(onV, (v, n) => v * onA[n]!))).toBeLessThanOrEqual(64.8 + 1e-6);
    const anything = jointRatio(samples, () => true);
    expect([anything.ofSolved, anything.hi]).toEqual([1, 1]);
    expect(anything.lo).toBeCloseTo(samples.solved / SAMPLES, 12);
  });
});
