import { describe, expect, it } from "vitest";
import { type CoachRecord, indexRecord } from "../record/index.js";
import {
  allOnState,
  busyState,
  type CoachSolution,
  type CoachState,
  onlyState,
  solveCoach,
  spanCoach,
} from "./index.js";

/** A figure known exactly. */
const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** One battery, one feeder, one relay module, one return stud; every resistance stated, so that answers can be had with a pencil. */
function bench(change: (draft: ReturnType<typeof draftOf>) => void = () => {}): CoachRecord {
  const draft = draftOf();
  change(draft);
  return draft as unknown as CoachRecord;
}

// biome-ignore lint/suspicious/noExplicitAny: a draft is changed field by field in the tests below
type Draft = any;

const draftOf = (): Draft => ({
  format: "fusebook/1",
  coach: { name: "Bench", nominalV: 12 },
  supplies: [
    {
      id: "s1",
      kind: "battery",
      name: "House",
      node: "bat",
      returnNode: "neg",
      openCircuitV: exact(12.6),
      internalResistanceOhm: exact(0.01),
    },
  ],
  nodes: ["bat", "bus", "neg", "gnd"].map((id) => ({
    id,
    kind: "stud",
    name: id,
    rail: id === "neg" || id === "gnd" ? "return" : "positive",
  })),
  cables: [
    { id: "feed", from: "bat", to: "bus", resistanceOhm: exact(0.002) },
    { id: "back", kind: "chassis", from: "gnd", to: "neg", resistanceOhm: exact(0.004) },
  ],
  moduleKinds: [{ id: "K", name: "K", channels: 8, onResistanceOhm: exact(0.015), quiescentA: exact(0) }],
  modules: [{ id: "m1", kind: "K", feedNode: "bus", returnNode: "gnd" }],
  circuits: [
    {
      id: "c1",
      module: "m1",
      channel: 1,
      fuse: { ratedA: 10, resistanceOhm: exact(0.005) },
      out: { resistanceOhm: exact(0.06) },
      connectors: [{ name: "far", resistanceOhm: exact(0.004) }],
      return: { resistanceOhm: exact(0.06), node: "gnd" },
      loads: ["l1"],
    },
  ],
  loads: [{ id: "l1", name: "Heater", class: "resistive-heater", ratedV: 12, currentA: exact(4) }],
});

const solved = (record: CoachRecord, state?: (index: ReturnType<typeof indexRecord>) => CoachState): CoachSolution => {
  const index = indexRecord(record);
  const found = solveCoach(index, (state ?? allOnState)(index));
  if (found.kind !== "known") throw new Error(JSON.stringify(found));
  return found.value;
};
const load = (solution: CoachSolution, id = "l1") => {
  const found = solution.loads.get(id as never);
  if (found?.kind !== "known") throw new Error(JSON.stringify(found));
  return found.value;
};

describe("a coach as a network", () => {
  it("one path by hand: 12.6 V over 3.16 ohm, and the drop split adds up to the whole", () => {
    const got = load(solved(bench()));
    // 0.01 + 0.002 + 0.005 + 0.015 + 0.06 + 0.004 + 3 + 0.06 + 0.004
    expect(got.onA).toBeCloseTo(12.6 / 3.16, 12);
    expect(got.dropV).toBeCloseTo((12.6 / 3.16) * 0.15, 12);
    expect(got.parts.map((part) => part.place)).toEqual([
      "feeder",
      "fuse",
      "module",
      "wire",
      "connector",
      "return",
      "ground",
    ]);
    expect(got.parts.reduce((sum, part) => sum + part.dropV, 0)).toBeCloseTo(got.dropV, 10);
  });

  it("a dimmed channel drops as much while it is on; duty sets the mean, its root the heating", () => {
    const index = indexRecord(bench());
    const full = load(solved(bench()));
    const dimmed = load(solved(bench(), () => ({ ...allOnState(index), dutyRatio: new Map([["c1" as never, 0.25]]) })));
    expect(dimmed.onA).toBeCloseTo(full.onA, 12);
    expect(dimmed.dropV).toBeCloseTo(full.dropV, 12);
    expect(dimmed.meanA).toBeCloseTo(full.onA / 4, 12);
    expect(dimmed.rmsA).toBeCloseTo(full.onA / 2, 12);
  });

  it("a length left out makes that load missing by path, but its current still counts in feeder and module", () => {
    const record = bench((draft) => {
      draft.circuits[0].out = { gauge: "14 AWG" };
    });
    const solution = solved(record);
    expect(solution.loads.get("l1" as never)).toEqual({ kind: "missing", needs: ["circuits[0].out.lengthM"] });
    expect(solution.leftOut).toEqual(["circuits[0].out.lengthM"]);
    for (const found of [
      solution.circuitA.get("c1" as never),
      solution.moduleA.get("m1" as never),
      solution.cableA.get("feed" as never),
    ])
      expect(found?.kind === "known" && found.value).toBeGreaterThan(3.9);
  });

  it("a current left out makes circuit, module and every cable it runs through missing; other loads stay known", () => {
    const record = bench((draft) => {
      draft.circuits.push({ ...draft.circuits[0], id: "c2", channel: 2, loads: ["l2"] });
      draft.loads.push({ id: "l2", name: "Unknown", class: "filament" });
    });
    const solution = solved(record);
    const needs = { kind: "missing", needs: ["loads[1].currentA"] };
    expect(solution.circuitA.get("c2" as never)).toEqual(needs);
    expect(solution.moduleA.get("m1" as never)).toEqual(needs);
    expect(solution.cableA.get("feed" as never)).toEqual(needs);
    expect(solution.loads.get("l1" as never)?.kind).toBe("known");
    const spans = spanCoach(indexRecord(record), allOnState(indexRecord(record)));
    if (spans.kind !== "known") throw new Error(JSON.stringify(spans));
    // Its 10 A fuse may carry 13.5 A for a while, and that may pull the volts of the other down: the least still counts only what is known.
    expect(spans.value.moduleAtLeastA.get("m1" as never)).toBeGreaterThan(3.5);
    expect(spans.value.moduleAtLeastA.get("m1" as never)).toBeLessThan(12.6 / 3.16);
  });

  it("a cable without a figure leaves the loads behind it missing by the cable's path", () => {
    const solution = solved(
      bench((draft) => {
        draft.cables[0] = { id: "feed", from: "bat", to: "bus", gauge: "6 AWG" };
      }),
    );
    expect(solution.loads.get("l1" as never)).toEqual({ kind: "missing", needs: ["cables[0].lengthM"] });
    expect(solution.cableDropV.get("feed" as never)).toEqual({ kind: "missing", needs: ["cables[0].lengthM"] });
  });

  it("an open disconnect cuts off what is behind it, and says so", () => {
    const solution = solved(
      bench((draft) => {
        draft.cables[0].disconnect = { name: "key", isClosed: false };
      }),
    );
    expect(solution.loads.get("l1" as never)).toMatchObject({ kind: "refused", code: "cut-off" });
    expect(solution.cableA.get("feed" as never)).toEqual({ kind: "known", value: 0 });
  });

  it("a low-side channel switches the return: its contact counts there, its positive comes from the bar", () => {
    const solution = solved(
      bench((draft) => {
        draft.moduleKinds[0].side = "low";
        draft.circuits[0].out.node = "bus";
      }),
    );
    const got = load(solution);
    expect(got.onA).toBeCloseTo(12.6 / 3.16, 12);
    expect(got.parts.map((part) => part.place)).toEqual([
      "feeder",
      "fuse",
      "wire",
      "connector",
      "return",
      "module",
      "ground",
    ]);
  });

  it("a plain fuse that is not on a module has no contact", () => {
    const solution = solved(
      bench((draft) => {
        draft.circuits[0].module = undefined;
        draft.circuits[0].fusePosition = { node: "bus", name: "F1" };
      }),
    );
    expect(load(solution).onA).toBeCloseTo(12.6 / 3.145, 12);
  });

  it("probes: fuse in and out, output, far end, both ends of the load", () => {
    const { nodeV } = solved(bench());
    const i = 12.6 / 3.16;
    expect(nodeV.get("bus")).toBeCloseTo(12.6 - 0.012 * i, 12);
    expect(nodeV.get("c1:fuse-out")).toBeCloseTo(12.6 - 0.017 * i, 12);
    expect(nodeV.get("c1:output")).toBeCloseTo(12.6 - 0.032 * i, 12);
    expect(nodeV.get("c1:far-end")).toBeCloseTo(12.6 - 0.096 * i, 12);
    expect(nodeV.get("l1:negative")).toBeCloseTo(0.064 * i, 12);
    expect(nodeV.get("s1:negative")).toBe(0);
  });

  it("two parallel feeders share by their conductances", () => {
    const solution = solved(
      bench((draft) => {
        draft.cables.push({ id: "feed2", from: "bat", to: "bus", resistanceOhm: exact(0.006) });
      }),
    );
    const one = solution.cableA.get("feed" as never);
    const two = solution.cableA.get("feed2" as never);
    if (one?.kind !== "known" || two?.kind !== "known") throw new Error("both are known");
    expect(one.value / two.value).toBeCloseTo(3, 10);
  });

  it("a load too hungry for its wire has no operating point and is named", () => {
    const record = bench((draft) => {
      draft.circuits[0].out.resistanceOhm = exact(2);
      draft.loads[0] = {
        id: "l1",
        name: "Amplifier",
        class: "electronics",
        ratedV: 12,
        powerW: exact(40),
        dropOutV: exact(9),
      };
    });
    const index = indexRecord(record);
    const found = solveCoach(index, allOnState(index));
    expect(found).toMatchObject({ kind: "refused", code: "no-operating-point" });
    expect(found.kind === "refused" && found.because).toContain("l1");
  });

  it("without a supply the answer is missing, with what is needed", () => {
    const index = indexRecord(bench((draft) => delete draft.supplies));
    expect(solveCoach(index, allOnState(index))).toEqual({ kind: "missing", needs: ["supplies"] });
    const unplaced = indexRecord(bench((draft) => delete draft.supplies[0].returnNode));
    expect(solveCoach(unplaced, allOnState(unplaced))).toEqual({ kind: "missing", needs: ["supplies[0].returnNode"] });
  });

  it("figures exactly known give point spans; wider ones give exact corners on a tree, and the corner is attained", () => {
    const sharp = indexRecord(bench());
    const point = spanCoach(sharp, allOnState(sharp));
    expect(
      point.kind === "known" &&
        [...point.value.circuitA.values()].map((one) => one.kind === "known" && one.value.method),
    ).toEqual(["point"]);
    const wide = indexRecord(
      bench((draft) => {
        draft.circuits[0].out.resistanceOhm = { value: 0.06, basis: "measured", plusMinus: 0.02 };
      }),
    );
    const spans = spanCoach(wide, allOnState(wide));
    const got = spans.kind === "known" ? spans.value.loads.get("l1" as never) : undefined;
    if (got?.kind !== "known") throw new Error(JSON.stringify(spans));
    expect(got.value.onV.method).toBe("exact-corners");
    expect(got.value.onV.span.lo).toBeCloseTo((3 * 12.6) / 3.18, 7);
    expect(got.value.onV.span.hi).toBeCloseTo((3 * 12.6) / 3.14, 7);
  });
});

describe("named states", () => {
  const busy = bench((draft) => {
    draft.circuits.push(
      { ...draft.circuits[0], id: "c2", channel: 2, loads: ["fan"] },
      { ...draft.circuits[0], id: "c3", channel: 3, loads: ["pump"] },
      { ...draft.circuits[0], id: "c4", channel: 4, loads: ["lamp", "fan2"] },
      { ...draft.circuits[0], id: "c5", channel: 5, loads: [], isSpare: true },
    );
    draft.loads.push(
      { id: "fan", name: "Fan", class: "fan", currentA: 2 },
      { id: "pump", name: "Pump", class: "pump", currentA: 7 },
      { id: "lamp", name: "Lamp", class: "led-linear", currentA: 1 },
      { id: "fan2", name: "Fan", class: "fan", currentA: 1 },
    );
  });
  it("everything on leaves out only spares", () => {
    expect([...allOnState(indexRecord(busy)).on]).toEqual(["c1", "c2", "c3", "c4"]);
  });
  it("busy: of the circuits that only move something, the greatest alone", () => {
    expect([...busyState(indexRecord(busy)).on].sort()).toEqual(["c1", "c3", "c4"]);
  });
  it("only: ids that are not on record are left out", () => {
    expect([...onlyState(indexRecord(busy), ["c2", "c9"], "fan").on]).toEqual(["c2"]);
  });
});
