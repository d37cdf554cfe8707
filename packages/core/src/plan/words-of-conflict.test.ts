import { describe, expect, it } from "vitest";
import { indexRecord, newRecord } from "../record/index.js";
import {
  groupWords,
  PLAN_GROUP_CODES,
  type PlanGroup,
  type PlanInShort,
  type WhyNot,
  wayOutWords,
  whyNotWords,
} from "./index.js";

const index = indexRecord(newRecord({ id: "coach", name: "coach" }));
const parameters = {
  load: "l1",
  wish: "must-dim",
  name: "bus",
  module: "m1",
  kind: "k1",
  circuit: "c1",
  means: "moves",
  budgetCents: 10000,
  maxMinutes: 60,
  channel: 3,
  why: "moves",
  need: "loads[0].currentA",
};
const group = (code: PlanGroup["code"], nature: PlanGroup["nature"], more = {}): PlanGroup => ({
  name: code,
  nature,
  code,
  parameters: { ...parameters, ...more },
});
const plan: PlanInShort = {
  costCents: 12345,
  minutes: 90,
  wiresMoved: 1,
  fits: [],
  setsAnew: [],
  moves: [{ circuit: "c1" as never, from: "m1" as never, to: "m2" as never, minutes: 35 }],
  steadyFeeds: [],
  rewires: [],
};

describe("words of a conflict", () => {
  it("has a clause for everything a conflict may name", () => {
    for (const code of PLAN_GROUP_CODES)
      expect(groupWords(group(code, "physical"), index), code).toMatch(/^[^{}]{12,}$/);
  });

  it("says what giving up each choice comes to", () => {
    const said = (code: PlanGroup["code"], more = {}) =>
      wayOutWords({ groups: [group(code, "choice", more)], plan }, index);
    expect(said("budget")).toContain("Raise the budget from 100.00 to 123.45");
    expect(said("minutes")).toContain("Allow 90 minutes in place of 60");
    expect(said("module-locked")).toContain("Unlock m1");
    expect(said("move-not-said")).toContain("lets c1 move and move it to a channel of m2 (35 min)");
    expect(said("wish")).toContain("Do without dimming l1");
    expect(said("wish", { wish: "must-stay-steady", mayDim: 1 })).toContain("Let l1 dim");
    expect(said("kind-ruled-out")).toContain("Allow k1");
  });

  it("never offers to give up what is physical without saying that it is a mistake", () => {
    expect(wayOutWords({ groups: [group("reach", "physical")], plan }, index).toLowerCase()).toContain(
      "cannot be given up",
    );
  });

  it("says that no change of plan can where only facts stand against a wish", () => {
    const why: WhyNot = {
      load: "l1" as never,
      rules: [],
      kept: [],
      weighed: [],
      outcome: { kind: "physical", groups: [group("wish", "wish"), group("load-must-not-dim", "physical")] },
      solves: 1,
    };
    const words = whyNotWords(why, index);
    expect(words[0]).toContain("No change of plan can");
    expect(words.join("\n")).toContain("l1 must not dim: it turns or moves something");
  });
});
