import { describe, expect, it } from "vitest";
import { circuitOn, lamp, smallCoach, wireOf } from "./small-coach.js";
import { testsOf } from "./tests-of.js";

const idsOf = (parts?: Readonly<Record<string, unknown>>) => testsOf(smallCoach(parts)).map((test) => test.id);
const testOf = (id: string, parts?: Readonly<Record<string, unknown>>) =>
  testsOf(smallCoach(parts)).find((test) => test.id === id);
const amountOf = (id: string, parts?: Readonly<Record<string, unknown>>) => {
  const expected = testOf(id, parts)?.expected;
  if (expected === undefined || !("span" in expected)) return undefined;
  return expected;
};

const pump = { id: "l-pump", name: "Water pump", class: "pump", currentA: 4 };
const detector = { id: "l-gas", name: "Gas detector", class: "detector", currentA: 0.1 };
const board = { id: "l-board", name: "Fridge board", class: "electronics", currentA: 1 };
const plain = (id: string, load: string) => ({
  id,
  fusePosition: { name: "F1", node: "n-pos" },
  fuse: { ratedA: 5 },
  out: wireOf(0.1),
  return: wireOf(0.1, "n-neg"),
  loads: [load],
});

describe("the tests of a coach", () => {
  it("asks a dimmed lamp's channel for its address, switching, volts, amperes and dimming, in that order", () => {
    expect(idsOf()).toEqual(["t-m1-address", "t-c1-switches", "t-c1-voltage-at-load", "t-c1-current", "t-c1-dims"]);
  });
  it("expects at the lamp the battery less its current through every ohm on the way", () => {
    // 0.01 battery + 0.01 fuse + 0.02 channel + 0.1 out + 0.05 back = 0.19 ohm; 2 A lose 0.38 V, 1.8 A 0.342 V, 2.2 A 0.418 V.
    const expected = amountOf("t-c1-voltage-at-load");
    expect(expected?.nominal).toBeCloseTo(12.22, 6);
    expect(expected?.span.lo).toBeCloseTo(12.182, 6);
    expect(expected?.span.hi).toBeCloseTo(12.258, 6);
    expect(expected?.unit).toBe("V");
    expect(amountOf("t-c1-current")?.span.lo).toBeCloseTo(1.8, 6);
    expect(amountOf("t-c1-current")?.span.hi).toBeCloseTo(2.2, 6);
  });
  it("does not load the feed with the other channels: a pump beside it changes nothing", () => {
    const expected = amountOf("t-c1-voltage-at-load", {
      circuits: [circuitOn(1, "l-lamp"), circuitOn(3, "l-pump")],
      loads: [lamp, pump],
    });
    expect(expected?.nominal).toBeCloseTo(12.22, 6);
  });
  it("counts what is always on: one ampere or so more through the battery's own resistance", () => {
    const parts = { circuits: [circuitOn(1, "l-lamp"), plain("c-f1", "l-board")], loads: [lamp, board] };
    // The board draws 12 W (1 A at 12 V), a little under 1 A here: between 9 and 10 mV more are lost in the battery.
    const expected = amountOf("t-c1-voltage-at-load", parts);
    expect(expected?.nominal).toBeGreaterThan(12.22 - 0.01);
    expect(expected?.nominal).toBeLessThan(12.22 - 0.009);
    expect(testOf("t-c1-voltage-at-load", parts)?.on).toEqual(["c1", "c-f1"]);
    expect(idsOf(parts)).not.toContain("t-c-f1-switches");
  });
  it("goes by module and channel, plain fuses last, whatever the order of the record", () => {
    const circuits = idsOf({
      circuits: [plain("c-f1", "l-board"), circuitOn(3, "l-pump"), circuitOn(1, "l-lamp")],
      loads: [lamp, pump, board],
    }).filter((id) => id.endsWith("current"));
    expect(circuits).toEqual(["t-c1-current", "t-c3-current", "t-c-f1-current"]);
  });
  it("asks nothing of a spare", () => {
    expect(idsOf({ circuits: [{ id: "c1", module: "m1", channel: 1, isSpare: true }], loads: [] })).toEqual([
      "t-m1-address",
    ]);
  });
  it("asks a pump on a dimming module to stay steady, never to dim, and says that liquid moves", () => {
    const parts = { circuits: [circuitOn(1, "l-pump")], loads: [pump] };
    expect(idsOf(parts)).toContain("t-c1-stays-steady");
    expect(idsOf(parts)).not.toContain("t-c1-dims");
    expect(testOf("t-c1-switches", parts)?.asks).toContain("Liquid will move");
  });
  it("asks no dimming of a lamp outside the enabled block, nor while the block is off", () => {
    expect(idsOf({ circuits: [circuitOn(3, "l-lamp")] })).not.toContain("t-c3-dims");
    expect(
      idsOf({ modules: [{ id: "m1", kind: "K4", feedNode: "n-pos", address: 7, positionsFound: "00" }] }),
    ).not.toContain("t-c1-dims");
  });
  it("keeps a dimming test unexpected where the switches were not read, by path", () => {
    const test = testOf("t-c1-dims", { modules: [{ id: "m1", kind: "K4", feedNode: "n-pos", address: 7 }] });
    expect(test?.needs).toEqual(["modules[0].positionsFound"]);
  });
  it("lets an unsigned job's wish win over the load's own", () => {
    const parts = {
      jobs: [{ id: "j1", title: "Steady", wishes: [{ load: "l-lamp", wish: "must-stay-steady" }] }],
    };
    expect(idsOf(parts)).toContain("t-c1-stays-steady");
    expect(idsOf(parts)).not.toContain("t-c1-dims");
  });
  it("never switches a detector off: it is read for power, with the warning", () => {
    const parts = { circuits: [circuitOn(1, "l-gas")], loads: [detector] };
    expect(idsOf(parts)).not.toContain("t-c1-switches");
    expect(idsOf(parts)).not.toContain("t-c1-dims");
    expect(testOf("t-c1-voltage-at-load", parts)?.asks).toContain("Do not switch it off");
  });
  it("probes the load with the least voltage: the one behind 0.2 ohm of tail", () => {
    const far = { ...lamp, id: "l-far", name: "Far lamp", tail: wireOf(0.2) };
    for (const loads of [
      ["l-far", "l-lamp"],
      ["l-lamp", "l-far"],
    ]) {
      const parts = { circuits: [{ ...circuitOn(1, "l-lamp"), loads }], loads: [lamp, far] };
      expect(testOf("t-c1-voltage-at-load", parts)?.load).toBe("l-far");
      // 4 A through the shared 0.19 ohm lose 0.76 V, 2 A through the tail 0.4 V.
      expect(amountOf("t-c1-voltage-at-load", parts)?.nominal).toBeCloseTo(11.44, 6);
    }
  });
  it("probes the detector where a lamp shares its circuit, and switches neither", () => {
    const far = { ...lamp, tail: wireOf(0.2) };
    const parts = { circuits: [{ ...circuitOn(1, "l-lamp"), loads: ["l-gas", "l-lamp"] }], loads: [far, detector] };
    expect(testOf("t-c1-voltage-at-load", parts)?.load).toBe("l-gas");
    expect(idsOf(parts)).not.toContain("t-c1-switches");
  });
  it("names what is missing where nothing can be expected", () => {
    const dark = testOf("t-c1-current", { loads: [{ id: "l-lamp", name: "Lamp", class: "led-linear" }] });
    expect(dark?.needs.length).toBeGreaterThan(0);
    expect(dark?.needs.every((path) => path.startsWith("loads[0]."))).toBe(true);
    expect(testOf("t-c1-switches", { circuits: [{ ...circuitOn(1, "l-lamp"), loads: [] }] })?.needs).toEqual([
      "circuits[0].loads",
    ]);
    expect(testOf("t-m1-address", { modules: [{ id: "m1", kind: "K4", feedNode: "n-pos" }] })?.needs).toEqual([
      "modules[0].address",
    ]);
  });
  it("expects neither volts nor amperes where the circuit's own wire is not known", () => {
    const parts = { circuits: [{ ...circuitOn(1, "l-lamp"), out: { gauge: "14 AWG" } }] };
    expect(testOf("t-c1-voltage-at-load", parts)?.needs).toEqual(["circuits[0].out.lengthM"]);
    expect(testOf("t-c1-current", parts)?.needs).toEqual(["circuits[0].out.lengthM"]);
  });
});

describe("the tests of a wire that was moved", () => {
  const spare = { id: "c3", module: "m1", channel: 3, isSpare: true };
  const moved = (circuits: readonly unknown[], chosen: unknown, more: Readonly<Record<string, unknown>> = {}) => ({
    circuits,
    jobs: [{ id: "j1", title: "Move", chosen }],
    ...more,
  });
  const fromTo = (from: number, to: number, circuit = `c${from}`) => ({
    circuit,
    from: { module: "m1", channel: from },
    to: { module: "m1", channel: to },
  });
  const lampOn = (channel: number) => ({ ...circuitOn(channel, "l-lamp"), id: "c1" });

  it("ask that this load alone answers on the new channel, and that the old one is dead", () => {
    const parts = moved([lampOn(2)], { modules: [], moves: [fromTo(1, 2)] });
    expect(idsOf(parts)).toEqual([
      "t-m1-address",
      "t-c1-answers",
      "t-c1-switches",
      "t-c1-voltage-at-load",
      "t-c1-current",
      "t-c1-dims",
      "t-m1.1-channel-dead",
    ]);
    expect(testOf("t-c1-answers", parts)?.expected).toEqual({ said: "yes" });
    expect(testOf("t-m1.1-channel-dead", parts)?.where).toContain("channel 1");
  });
  it("are not asked before the wire has moved, nor once the job is signed", () => {
    const chosen = { modules: [], moves: [fromTo(1, 2)] };
    expect(idsOf(moved([lampOn(1)], chosen))).not.toContain("t-c1-answers");
    const signed = { jobs: [{ id: "j1", title: "Move", chosen, signed: { at: "2026-05-02", by: "x" } }] };
    expect(idsOf({ ...moved([lampOn(2)], chosen), ...signed })).not.toContain("t-c1-answers");
  });
  it("ask both loads of a swap to answer, and call neither channel dead", () => {
    const parts = moved(
      [lampOn(3), { ...circuitOn(1, "l-pump"), id: "c3" }],
      { modules: [], moves: [fromTo(1, 3), fromTo(3, 1, "c3")] },
      { loads: [lamp, pump] },
    );
    expect(idsOf(parts)).toContain("t-c1-answers");
    expect(idsOf(parts)).toContain("t-c3-answers");
    expect(idsOf(parts).filter((id) => id.endsWith("channel-dead"))).toEqual([]);
    expect(testOf("t-c3-answers", parts)?.asks).toContain("Liquid will move");
  });
  it("ask a load on a feed of its own to have power whatever is pressed, and do not switch it", () => {
    const parts = moved(
      [lampOn(1), spare, { ...plain("c-own", "l-pump") }],
      { modules: [], steadyFeeds: [{ load: "l-pump", circuit: "c3" }] },
      { loads: [lamp, pump] },
    );
    expect(idsOf(parts)).toContain("t-c-own-always-fed");
    expect(idsOf(parts)).not.toContain("t-c-own-switches");
    expect(idsOf(parts)).toContain("t-c-own-current");
    expect(idsOf(parts)).toContain("t-m1.3-channel-dead");
  });
});
