import { describe, expect, it } from "vitest";
import { type Circuit, type CoachRecord, indexRecord, type Load, type ModuleKind, type Wish } from "../record/index.js";
import { type BlockSuitability, blockSuitability, dimmedRating } from "./block-suitability.js";
import { circuitRatedCurrent } from "./circuit-current.js";

const kind = {
  id: "k1",
  name: "eight channels",
  channels: 8,
  output: "pwm",
  ratedDimmedA: 6,
  dimBlocks: [{ id: "b1", channels: [1, 2] }],
} as unknown as ModuleKind;

const coach = (loads: object[], circuits: object[]) =>
  indexRecord({
    format: "fusebook/1",
    id: "r",
    coach: { name: "c" },
    moduleKinds: [kind],
    loads,
    circuits: circuits.map((each) => ({ module: "m1", ...each })),
  } as unknown as CoachRecord);

const judge = (
  loads: object[],
  circuits: object[],
  wishes?: ReadonlyMap<string, Wish>,
  as: ModuleKind = kind,
): BlockSuitability => {
  const index = coach(loads, circuits);
  const outcome = blockSuitability(index, index.circuitsOfModule.get("m1") ?? [], as, as.dimBlocks![0]!, wishes);
  if (outcome.kind !== "known") throw new Error(outcome.kind);
  return outcome.value;
};

const lamp = { id: "l1", name: "lamp", class: "led-resistor", currentA: 1 };
const fan = { id: "l2", name: "fan", class: "fan", currentA: 2 };
const spare = { id: "c2", channel: 2, isSpare: true };

describe("blockSuitability", () => {
  it("lets a block of lamps and spare channels dim", () => {
    expect(judge([lamp], [{ id: "c1", channel: 1, loads: ["l1"] }, spare])).toMatchObject({
      may: "yes",
      dims: ["l1"],
      rating: "holds",
      spoiledBy: [],
      mixed: [],
    });
  });

  it("names the fan on a lamp circuit that spoils the block, and the circuit as mixed", () => {
    const result = judge([lamp, fan], [{ id: "c1", channel: 1, loads: ["l1", "l2"] }, spare]);
    expect(result.may).toBe("no");
    expect(result.spoiledBy).toEqual([{ channel: 1, circuit: "c1", load: "l2", code: "moves" }]);
    expect(result.mixed).toEqual(["c1"]);
  });

  it("spoils the block for a lamp that the owner wants steady, by the job's wish too", () => {
    const circuits = [{ id: "c1", channel: 1, loads: ["l1"] }, spare];
    expect(judge([{ ...lamp, wish: "must-stay-steady" }], circuits).may).toBe("no");
    expect(judge([lamp], circuits, new Map<string, Wish>([["l1", "must-stay-steady"]])).spoiledBy[0]?.code).toBe(
      "wished-steady",
    );
  });

  it("reads nothing unknown as yes: no class, loads not listed, a load not in the record, a channel not recorded", () => {
    const one = { id: "c1", channel: 1, loads: ["l1"] };
    const unknownOf = (result: BlockSuitability) => [result.may, result.unknown[0]?.code];
    expect(unknownOf(judge([{ id: "l1", name: "?" }], [one, spare]))).toEqual(["unknown", "class-unknown"]);
    expect(unknownOf(judge([lamp], [one, { id: "c2", channel: 2 }]))).toEqual(["unknown", "loads-not-listed"]);
    expect(unknownOf(judge([], [one, spare]))).toEqual(["unknown", "load-not-in-record"]);
    expect(unknownOf(judge([lamp], [one]))).toEqual(["unknown", "channel-not-recorded"]);
  });

  it("ignores what hangs on channels outside the block", () => {
    const result = judge(
      [lamp, fan],
      [{ id: "c1", channel: 1, loads: ["l1"] }, spare, { id: "c3", channel: 3, loads: ["l2"] }],
    );
    expect(result.may).toBe("yes");
  });

  it("gives a driver as a condition, and counts it among what may dim", () => {
    const result = judge([{ ...lamp, class: "led-driver" }], [{ id: "c1", channel: 1, loads: ["l1"] }, spare]);
    expect(result.may).toBe("only-if");
    expect(result.conditions).toEqual([{ channel: 1, circuit: "c1", load: "l1", code: "repeated-inrush" }]);
    expect(result.dims).toEqual(["l1"]);
  });

  it("holds the current in the pulse against the dimmed rating, with its span", () => {
    const rating = (currentA: unknown) =>
      judge([{ ...lamp, currentA }], [{ id: "c1", channel: 1, loads: ["l1"] }, spare]).rating;
    const of = (value: number, plusMinus: number) => ({ value, plusMinus, basis: "measured" });
    expect(rating(of(5.5, 0.4))).toBe("holds");
    expect(rating(of(5.5, 0.6))).toBe("open");
    expect(rating(of(6.7, 0.6))).toBe("fails");
    expect(rating(undefined)).toBe("missing");
  });

  it("refuses a relay kind and asks for the output of a kind that does not say", () => {
    const index = coach([], []);
    const block = kind.dimBlocks![0]!;
    expect(blockSuitability(index, [], { ...kind, output: "relay" } as ModuleKind, block)).toMatchObject({
      kind: "refused",
      code: "kind-cannot-dim",
    });
    expect(blockSuitability(index, [], { ...kind, output: undefined } as ModuleKind, block)).toEqual({
      kind: "missing",
      needs: ["output"],
    });
  });
});

describe("circuitRatedCurrent", () => {
  it("adds all pieces of all loads, from amperes or from watts at the rated volts", () => {
    const exact = (value: number) => ({ value, plusMinus: 0, basis: "measured" });
    const index = coach(
      [
        { id: "l1", name: "a", quantity: 4, currentA: exact(0.5) },
        { id: "l2", name: "b", powerW: exact(24), ratedV: exact(12) },
      ],
      [{ id: "c1", channel: 1, loads: ["l1", "l2"] }],
    );
    const current = circuitRatedCurrent(index, index.circuits.get("c1") as Circuit);
    expect(current.kind).toBe("known");
    if (current.kind === "known") {
      expect(current.value.lo).toBeCloseTo(4, 12);
      expect(current.value.hi).toBeCloseTo(4, 12);
    }
  });

  it("names the fields that are missing, by path", () => {
    const index = coach(
      [
        { id: "l1", name: "a" },
        { id: "l2", name: "b", powerW: 24 },
      ] as Load[],
      [
        { id: "c1", channel: 1, loads: ["l1", "l2", "gone"] },
        { id: "c2", channel: 2 },
      ],
    );
    expect(circuitRatedCurrent(index, index.circuits.get("c1") as Circuit)).toEqual({
      kind: "missing",
      needs: ["loads[0].currentA", "loads[1].ratedV", "circuits[0].loads"],
    });
    expect(circuitRatedCurrent(index, index.circuits.get("c2") as Circuit)).toEqual({
      kind: "missing",
      needs: ["circuits[1].loads"],
    });
  });

  it("names the kind's rating where that is missing", () => {
    const index = coach([lamp], [{ id: "c1", channel: 1, loads: ["l1"] }]);
    const rating = dimmedRating(
      index,
      index.circuits.get("c1") as Circuit,
      { ...kind, ratedDimmedA: undefined } as ModuleKind,
    );
    expect(rating).toEqual({ kind: "missing", needs: ["moduleKinds[0].ratedDimmedA"] });
  });
});
