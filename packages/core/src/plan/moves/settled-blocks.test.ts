import { describe, expect, it } from "vitest";
import { indexRecord, type Job, policyOf, readRecord } from "../../record/index.js";
import { demandOf } from "../demand.js";
import { milpOf, movesProblemOf, planOfChoice } from "./index.js";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** One relay module with a lamp on every channel, all wished dim; kind E dims each channel by itself. */
function problemOf(channels: number, constraints: unknown) {
  const numbers = Array.from({ length: channels }, (_, i) => i + 1);
  const ratings = {
    channels,
    ratedSwitchedA: exact(10),
    ratedDimmedA: exact(5),
    ratedTotalA: exact(90),
    installMin: 20,
  };
  const read = readRecord({
    format: "fusebook/1",
    id: "each",
    coach: { name: "Each", isInvented: true },
    moduleKinds: [
      { id: "R", name: "R", output: "relay", price: 1, ...ratings },
      {
        id: "E",
        name: "E",
        output: "pwm",
        price: 9,
        ...ratings,
        dimBlocks: numbers.map((n) => ({ id: `b${n}`, channels: [n] })),
      },
    ],
    modules: [{ id: "m", kind: "R" }],
    circuits: numbers.map((n) => ({ id: `c${n}`, module: "m", channel: n, loads: [`l${n}`] })),
    loads: numbers.map((n) => ({
      id: `l${n}`,
      name: `l${n}`,
      class: "led-resistor",
      currentA: exact(1),
      wish: "nice-to-dim",
    })),
  });
  if (read.kind === "refused") throw new Error(read.faults.map((each) => each.message).join("\n"));
  const index = indexRecord(read.record);
  const job = { id: "j", title: "j", constraints } as Job;
  return movesProblemOf(index, policyOf(index.record), demandOf(index, job));
}

describe("a kind that is set channel by channel", () => {
  it("is one pattern however many channels it has, and enables the blocks of the channels that dim", () => {
    const problem = problemOf(10, {});
    expect(problem.modules[0]?.patterns.map((pattern) => pattern.key)).toEqual(["as found", "E[as needed]"]);
    const form = milpOf(problem);
    expect(form.milp.columns.length).toBe(2);
    const plan = planOfChoice(problem, form.decode([0, 1]));
    expect(plan.modules[0]?.enables.length).toBe(10);
    expect(plan.dims.length).toBe(10);
  });
  it("keeps to the very blocks that the user has settled, few or many", () => {
    for (const channels of [4, 10]) {
      const problem = problemOf(channels, { fixedChoices: [{ module: "m", kind: "E", enables: ["b1", "b3"] }] });
      expect(problem.faults).toEqual([]);
      expect(problem.modules[0]?.patterns.map((pattern) => pattern.key)).toEqual(["E[b1 b3]"]);
      expect(planOfChoice(problem, { patterns: [0], placings: [] }).dims).toEqual(["l1", "l3"]);
    }
  });
});
