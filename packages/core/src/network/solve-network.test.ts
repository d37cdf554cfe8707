import { describe, expect, it } from "vitest";
import type { NetworkLoad } from "./network.js";
import { solveNetwork } from "./solve-network.js";

const one = (model: NetworkLoad["model"], ohm = 0.1, emfV = 12) =>
  solveNetwork({
    nodeCount: 2,
    reference: 0,
    branches: [{ from: 0, to: 1, resistanceOhm: ohm, emfV }],
    loads: [{ from: 1, to: 0, model }],
  });

describe("operating point of a network", () => {
  it("a battery with internal resistance feeds a resistance", () => {
    const s = one({ kind: "resistance", resistanceOhm: 0.5 });
    expect(s.kind === "known" && s.value.nodeV[1]).toBeCloseTo(10, 12);
    expect(s.kind === "known" && s.value.loadA[0]).toBeCloseTo(20, 12);
  });
  it("a constant-power load takes the upper of its two points", () => {
    // 12 V, 1 ohm, 20 W: V = 6 + sqrt(36 - 20) = 10
    const s = one({ kind: "power", powerW: 20, dropOutV: 7 }, 1);
    expect(s.kind === "known" && s.value.nodeV[1]).toBeCloseTo(10, 10);
  });
  it("constant-power collapse is refused, never a number", () => {
    expect(one({ kind: "power", powerW: 40, dropOutV: 7 }, 1)).toMatchObject({
      kind: "refused",
      code: "no-operating-point",
    });
    // Between: a point at 6 + sqrt(36 - 35.5) = 6.7 V exists but is below the drop-out.
    expect(one({ kind: "power", powerW: 35.5, dropOutV: 7 }, 1)).toMatchObject({
      kind: "refused",
      code: "no-operating-point",
    });
  });
  it("electronics below their drop-out without any load stay out and draw nothing", () => {
    const s = one({ kind: "power", powerW: 20, dropOutV: 13 }, 1);
    expect(s.kind === "known" && s.value.loadA[0]).toBe(0);
  });
  it("an LED string draws by what is over its forward voltage", () => {
    const s = one({ kind: "led", forwardV: 9, resistanceOhm: 2.9 });
    expect(s.kind === "known" && s.value.loadA[0]).toBeCloseTo(1, 12);
  });
  it("a motor runs at one current and stalls as a resistance", () => {
    const runs = one({ kind: "motor", runningA: 5, stallOhm: 0.5 }, 0.5);
    expect(runs.kind === "known" && runs.value.nodeV[1]).toBeCloseTo(9.5, 12);
    const stalls = one({ kind: "motor", runningA: 15, stallOhm: 0.5 }, 0.5);
    expect(stalls.kind === "known" && stalls.value.loadA[0]).toBeCloseTo(12, 12);
  });
  it("a regulated supply holds its volts up to its limit, then its amperes", () => {
    const at = (ohm: number) =>
      solveNetwork({
        nodeCount: 2,
        reference: 0,
        branches: [{ from: 1, to: 0, resistanceOhm: ohm }],
        loads: [{ from: 1, to: 0, model: { kind: "regulated", setV: 13.6, outputOhm: 0.01, maxA: 10 } }],
      });
    const holds = at(2);
    expect(holds.kind === "known" && holds.value.nodeV[1]).toBeCloseTo((13.6 * 2) / 2.01, 10);
    const limits = at(1);
    expect(limits.kind === "known" && limits.value.nodeV[1]).toBeCloseTo(10, 10);
  });
  it("a load with an open return draws nothing and its ends float up", () => {
    const s = solveNetwork({
      nodeCount: 4,
      reference: 0,
      branches: [
        { from: 0, to: 1, resistanceOhm: 0.01, emfV: 12.6 },
        { from: 1, to: 2, resistanceOhm: 0.06 },
      ],
      loads: [{ from: 2, to: 3, model: { kind: "current", currentA: 3, kneeV: 6 } }],
    });
    expect(s.kind === "known" && s.value.loadA[0]).toBeCloseTo(0, 9);
  });
  it("islands are named", () => {
    const s = solveNetwork({
      nodeCount: 5,
      reference: 0,
      branches: [
        { from: 0, to: 1, resistanceOhm: 0.01, emfV: 12.6 },
        { from: 2, to: 3, resistanceOhm: 0.06 },
      ],
      loads: [{ from: 1, to: 0, model: { kind: "resistance", resistanceOhm: 3 } }],
    });
    expect(s.kind === "known" && s.value.islands).toEqual([[2, 3], [4]]);
  });
  it("balances with a micro-ohm bus bar and a milliampere load behind it", () => {
    const s = solveNetwork({
      nodeCount: 4,
      reference: 0,
      branches: [
        { from: 0, to: 1, resistanceOhm: 1e-3, emfV: 12.6 },
        { from: 1, to: 2, resistanceOhm: 1e-6 },
        { from: 2, to: 3, resistanceOhm: 1e-6 },
      ],
      loads: [
        { from: 2, to: 0, model: { kind: "power", powerW: 1200, dropOutV: 9 } },
        { from: 3, to: 0, model: { kind: "filament", currentA: 0.001, ratedV: 12 } },
      ],
    });
    expect(s.kind === "known" && s.value.balance.currentRelative).toBeLessThan(1e-12);
  });
  it("a wire of no or negative resistance is refused with its place", () => {
    expect(one({ kind: "resistance", resistanceOhm: 1 }, 0)).toMatchObject({ kind: "refused", code: "bad-network" });
    expect(one({ kind: "resistance", resistanceOhm: Number.NaN })).toMatchObject({
      kind: "refused",
      code: "bad-network",
    });
  });
});
