import { type Milp, writeLp, writeMps } from "@fusebook/core/plan";
import { chanceOf } from "@fusebook/fixtures";
import { highsSolver } from "@fusebook/solver";
import loadHighs, { type Highs } from "highs";
import { beforeAll, describe, expect, it } from "vitest";
import { planInstance } from "./plan-instance.js";
import { ModelMaker, seededAssignment } from "./plan-solver-models.js";
import { retrofitModel } from "./plan-solver-retrofit.js";
import { secondOpinion } from "./plan-solver-second.js";

const solver = highsSolver();
let reader: Highs;
beforeAll(async () => {
  reader = await (loadHighs as unknown as () => Promise<Highs>)();
});

/**
 * What a general solver's own reader makes of a text: the least cost, or that there is none. Solvers keep rows to a millionth, so costs of columns that are
 * no whole numbers agree to about that: five decimals are compared below.
 */
function leastOfText(format: "lp" | "mps", data: string): number | "infeasible" {
  const model = reader.createModel({ format, data });
  try {
    model.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
    model.run();
    const status = model.getModelStatus();
    if (status === reader.constants.modelStatus.optimal) return model.getObjectiveValue();
    expect(status).toBe(reader.constants.modelStatus.infeasible);
    return "infeasible";
  } finally {
    model.dispose();
  }
}

/** A small model with every kind of column and row, and names no file can carry as they are. */
function everyKind(seed: number): Milp {
  const chance = chanceOf(seed);
  const make = new ModelMaker(`every kind / ${seed}`);
  const count = chance.whole(3, 7);
  for (let at = 0; at < count; at++) {
    const name =
      chance.pick([
        "fit K2 at bay",
        "x",
        "e1",
        "free",
        "st",
        "2nd",
        "kosten €",
        "a+b",
        "bounds",
        "x.y",
        "Infrared",
        "nan_",
      ]) + (chance.is(0.5) ? ` ${at}` : "_".repeat(at));
    const cost = chance.whole(-40, 60) / chance.pick([1, 1, 4]);
    const lower = chance.pick([0, 0, -3, -7, 2]);
    const upper = lower + chance.pick([0, 1, 4, 9]);
    const isLower = cost >= 0 && chance.is(0.2);
    if (chance.is(0.7)) make.whole(name, cost, lower, isLower ? Infinity : upper);
    else make.share(name, cost, lower, isLower ? Infinity : upper);
  }
  const free = make.share("anything", 0, -Infinity, Infinity);
  const below = make.whole("below", -1, -Infinity, 3);
  for (let at = chance.whole(2, 5); at > 0; at--) {
    const terms = Array.from(
      { length: count },
      (_, column) => [column, chance.whole(-5, 9) / chance.pick([1, 2])] as const,
    ).filter(([, c]) => c !== 0);
    const middle = chance.whole(-5, 25);
    const [lower, upper] = chance.pick([
      [middle, Infinity],
      [-Infinity, middle + 10],
      [middle - 6, middle + 6],
      [-Infinity, Infinity],
    ]);
    make.row(`rule ${at}: ${chance.pick(["budget", "need", "to"])}`, lower as number, terms, upper as number);
  }
  make.row(
    "same",
    chance.whole(-4, 9),
    [
      [0, 1],
      [1, 1],
      [free, 1],
    ],
    0,
  );
  const last = make.rows.pop();
  if (last !== undefined) make.row(last.name, last.lower, last.terms, last.lower);
  make.row(
    "held",
    -20,
    [
      [below, 1],
      [free, 0.5],
    ],
    Infinity,
  );
  make.row("held too", -40, [[free, 1]], 40);
  return make.milp;
}

const least = async (milp: Milp): Promise<number | "infeasible"> => {
  const session = await solver.open(milp);
  const answer = await session.solve();
  session.close();
  return answer.status === "optimal" ? (answer.objective as number) : "infeasible";
};

describe("a written model, read again by a general solver's own reader, is the same model", () => {
  it("sixty models of every kind of column and row: the same least cost from LP, free MPS, fixed MPS and the second solver", async () => {
    const second = await secondOpinion();
    let infeasible = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const milp = everyKind(seed);
      const expected = second(milp, 30);
      expect(expected, milp.name).toBeDefined();
      if (expected === "infeasible") infeasible += 1;
      for (const got of [
        await least(milp),
        leastOfText("lp", writeLp(milp)),
        leastOfText("mps", writeMps(milp)),
        leastOfText("mps", writeMps(milp, "fixed")),
      ])
        if (typeof expected === "number") expect(got, milp.name).toBeCloseTo(expected, 5);
        else expect(got, milp.name).toBe(expected);
    }
    expect(infeasible).toBeGreaterThan(2);
    expect(infeasible).toBeLessThan(40);
  });

  it("assignments and a retrofit of four modules as well", async () => {
    for (const milp of [1, 2, 3, 4, 5]
      .map(seededAssignment)
      .concat(retrofitModel(planInstance(4), "within", "weighted"))) {
      const expected = await least(milp);
      for (const got of [
        leastOfText("lp", writeLp(milp)),
        leastOfText("mps", writeMps(milp)),
        leastOfText("mps", writeMps(milp, "fixed")),
      ])
        if (typeof expected === "number") expect(got, milp.name).toBeCloseTo(expected, 5);
        else expect(got, milp.name).toBe(expected);
    }
  });
});
