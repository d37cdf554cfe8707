import { demoRecord } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { type CoachRecord, indexRecord } from "../../record/index.js";
import { allOnState } from "../coach-states.js";
import { solveCoach } from "../solve-coach.js";
import { drawRatio, keyNumber, sampleNumber } from "./chance.js";
import { drawRecord } from "./draw-record.js";
import { drawnValue } from "./input-bank.js";
import { quantilesOf } from "./quantiles.js";
import { sampleCoach } from "./sample-coach.js";
import { drawKeyOf } from "./uncertain-input.js";
import { uncertainInputs } from "./uncertain-inputs.js";

const ratiosOf = (key: string, seed: number, samples: number): number[] =>
  Array.from({ length: samples }, (_, s) => drawRatio(keyNumber(key), sampleNumber(seed, s)));

describe("draws", () => {
  it("are even from 0 to 1: 64 names, 4,096 samples each, no bin of 16 off by more than chance allows", () => {
    // Chi-square with 15 degrees of freedom lies over 44.3 once in ten thousand (table of the distribution).
    let over = 0;
    for (let k = 0; k < 64; k++) {
      const bins = new Array(16).fill(0);
      for (const ratio of ratiosOf(`circuits[${k}].out.lengthM`, 7, 4096)) bins[Math.floor(16 * ratio)]++;
      if (bins.reduce((sum, n) => sum + (n - 256) ** 2 / 256, 0) > 44.3) over++;
    }
    expect(over).toBe(0);
  });

  it("of two names, of two seeds and of following samples have nothing to do with each other", () => {
    const correlation = (a: readonly number[], b: readonly number[]) => {
      const sum = a.reduce((all, one, n) => all + (one - 0.5) * (b[n]! - 0.5), 0);
      return (12 * sum) / a.length;
    };
    // The standard error is one over the root of the count; five of them.
    const most = 5 / Math.sqrt(4096);
    for (let k = 0; k < 200; k++) {
      const one = ratiosOf(`loads[${k}].currentA`, 3, 4096);
      expect(Math.abs(correlation(one, ratiosOf(`loads[${k + 1}].currentA`, 3, 4096)))).toBeLessThan(most);
      expect(Math.abs(correlation(one, ratiosOf(`loads[${k}].currentA`, 4, 4096)))).toBeLessThan(most);
      expect(Math.abs(correlation(one.slice(1), one.slice(0, -1)))).toBeLessThan(most);
    }
  });
});

describe("quantiles", () => {
  it("lie straight between neighbours at place p (n - 1), whatever the order; of nothing there are none", () => {
    expect(quantilesOf([4, 1, 3, 2], [0, 0.5, 1])).toEqual([1, 2.5, 4]);
    expect(quantilesOf([10, 20], [0.25, -1, 2])).toEqual([12.5, 10, 20]);
    expect(quantilesOf([7], [0.05, 0.95])).toEqual([7, 7]);
    expect(quantilesOf([], [0.5])).toEqual([]);
  });
});

describe("uncertain inputs", () => {
  const index = indexRecord(demoRecord());
  const inputs = uncertainInputs(index);

  it("are named once each, hold their nominal figure and are as wide as something", () => {
    expect(inputs.length).toBeGreaterThan(200);
    expect(new Set(inputs.map((one) => `${one.path}#${one.aspect}`)).size).toBe(inputs.length);
    for (const { nominal, span } of inputs) {
      expect(span.lo).toBeLessThan(span.hi);
      expect(nominal).toBeGreaterThanOrEqual(span.lo);
      expect(nominal).toBeLessThanOrEqual(span.hi * (1 + 1e-12));
    }
  });

  it("wires of one gauge and insulation share a draw, and every value lies in its own span", () => {
    const reels = new Map<string, typeof inputs>();
    for (const input of inputs)
      if (input.sharedKey) reels.set(input.sharedKey, [...(reels.get(input.sharedKey) ?? []), input]);
    expect([...reels.values()].some((reel) => reel.length > 5)).toBe(true);
    for (const reel of reels.values()) {
      const places = reel.map((one) => (drawnValue(one, 9, 4) - one.span.lo) / (one.span.hi - one.span.lo));
      for (const place of places) expect(place).toBeCloseTo(places[0]!, 9);
    }
    for (const input of inputs) {
      expect(drawnValue(input, 9, 4)).toBeGreaterThanOrEqual(input.span.lo);
      expect(drawnValue(input, 9, 4)).toBeLessThanOrEqual(input.span.hi);
    }
    expect(drawKeyOf({ path: "a.b", aspect: "lay" })).toBe("a.b#lay");
  });

  it("kept inputs are the figures that made the samples", () => {
    const samples = sampleCoach(index, allOnState(index), {
      seed: 2,
      samples: 20,
      keepInputs: (input) => input.path.endsWith("currentA"),
    });
    if (samples.kind !== "known") throw new Error("known is wanted");
    const kept = samples.value.inputs!;
    expect(kept.length).toBeGreaterThan(20);
    for (const { input, values } of kept) {
      expect(values.length).toBe(20);
      expect(values[11]).toBe(drawnValue(input, 2, samples.value.sampleNumbers[11]!));
    }
  });
});

describe("a drawn record", () => {
  it("is the same for the same seed, another for another, and leaves the record it came from as it was", () => {
    const record = demoRecord();
    const before = JSON.stringify(record);
    const one = drawRecord(record, 5);
    expect(drawRecord(record, 5)).toEqual(one);
    expect(drawRecord(record, 6)).not.toEqual(one);
    expect(JSON.stringify(record)).toBe(before);
  });

  it("leaves nothing that moves the network in doubt", () => {
    const truth = indexRecord(drawRecord(demoRecord(), 5));
    expect(uncertainInputs(truth).map((one) => one.path)).toEqual([]);
  });
});

describe("the worked example of docs/method/network.md", () => {
  const exactly = (value: number) => ({ value, basis: "measured", plusMinus: 0 });
  const wire = { gauge: "14 AWG", lengthM: exactly(5), insulationC: 105 };
  const record = {
    format: "fusebook/1",
    coach: { name: "example", nominalV: 12 },
    policy: { ambientC: 20 },
    nodes: ["plus", "minus"].map((id) => ({ id, kind: "terminal", name: id })),
    supplies: [
      {
        ...{ id: "s", kind: "battery", name: "battery", node: "plus", returnNode: "minus" },
        openCircuitV: exactly(12.6),
        internalResistanceOhm: exactly(0.01),
      },
    ],
    circuits: [
      {
        id: "c",
        fusePosition: { node: "plus", name: "F1" },
        fuse: { resistanceOhm: exactly(0.005) },
        out: wire,
        return: { ...wire, node: "minus" },
        loads: ["l"],
      },
    ],
    loads: [{ id: "l", name: "lamp", class: "led-linear", currentA: { value: 4, basis: "measured", plusMinus: 0.2 } }],
  } as unknown as CoachRecord;
  const index = indexRecord(record);
  const state = allOnState(index);

  it("solve: 12.6 V - 4 A (10 + 5 + 2 * 42.256 mohm) = 12.202 V", () => {
    // By hand: area of 14 AWG 2.0809 mm2 by ASTM B258, 1/58 * 1.02 * 5 / 2.0809 = 42.256 mohm a wire.
    const solution = solveCoach(index, state);
    const load = solution.kind === "known" ? solution.value.loads.get("l" as never) : undefined;
    if (load?.kind !== "known") throw new Error("known is wanted");
    expect(load.value.onV).toBeCloseTo(12.202, 3);
    expect(load.value.dropV).toBeCloseTo(0.35805, 5);
  });

  it("samples: its inputs, and the drop at 5, 50 and 95 %: 0.338, 0.356 and 0.374 V", () => {
    expect(uncertainInputs(index).map((one) => `${one.path}${one.aspect ? ` (${one.aspect})` : ""}`)).toEqual([
      "circuits[0].out.gauge",
      "circuits[0].out.gauge (lay)",
      "circuits[0].return.gauge",
      "circuits[0].return.gauge (lay)",
      "loads[0].currentA",
    ]);
    const samples = sampleCoach(index, state, { seed: 1, samples: 20_000 });
    const load = samples.kind === "known" ? samples.value.loads.get("l" as never) : undefined;
    if (load?.kind !== "known") throw new Error("known is wanted");
    const [low, middle, high] = quantilesOf(load.value.dropV, [0.05, 0.5, 0.95]);
    // By hand: drop = I (5 mohm + 2 * 5 m * lay / (58 area)) with I even on 3.8 to 4.2 A, area on 2.0809 mm2 +- 2 %, lay on 1 to 1.025, on a grid of
    // 400 x 60 x 25 points. Five standard errors of 20,000 samples are under a millivolt there.
    expect(Math.abs(low! - 0.3377)).toBeLessThan(0.001);
    expect(Math.abs(middle! - 0.3555)).toBeLessThan(0.001);
    expect(Math.abs(high! - 0.3738)).toBeLessThan(0.001);
  });
});
