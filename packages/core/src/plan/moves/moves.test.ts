import { describe, expect, it } from "vitest";
import { type CoachRecord, indexRecord, type Job, policyOf, readRecord } from "../../record/index.js";
import { applyPlan } from "../apply.js";
import { demandOf } from "../demand.js";
import type { Plan } from "../plan.js";
import {
  type Choice,
  choiceFaults,
  milpOf,
  movesProblemOf,
  planOfChoice,
  problemFaults,
  type RecordProblem,
  scoreOf,
} from "./index.js";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });
const items = (record: Record<string, unknown>, name: string) => record[name] as Record<string, unknown>[];
const byId = (record: Record<string, unknown>, name: string, id: string) =>
  items(record, name).find((item) => item.id === id) as Record<string, unknown>;

const set = (record: Record<string, unknown>, name: string, id: string, fields: object): void =>
  void Object.assign(byId(record, name, id), fields);

/** Two relay modules of four channels: on m1 two lamps wished dim, a pump between them and a spare channel; m2 empty but for one lamp. Kind D dims channels 1 and 2 together. */
function coach(change: (record: Record<string, unknown>) => void = () => {}): CoachRecord {
  const record: Record<string, unknown> = {
    format: "fusebook/1",
    id: "small",
    coach: { name: "Small", isInvented: true },
    policy: { labourRatePerHour: 60, moveWithinMin: 15, moveBetweenMin: 45, steadyFeedParts: 10 },
    nodes: [{ id: "n", kind: "stud", name: "feed" }],
    moduleKinds: [
      {
        id: "R",
        name: "R",
        channels: 4,
        output: "relay",
        ratedSwitchedA: 10,
        ratedTotalA: 30,
        price: 50,
        installMin: 20,
      },
      {
        id: "D",
        name: "D",
        channels: 4,
        output: "pwm",
        ratedSwitchedA: exact(10),
        ratedDimmedA: exact(5),
        ratedTotalA: exact(20),
        maxFuseA: exact(7.5),
        price: 100,
        installMin: 20,
        bank: {
          switches: 1,
          options: [
            { enables: [], set: [{ switch: 1, position: 0 }] },
            { enables: ["b"], set: [{ switch: 1, position: 1 }] },
          ],
        },
        dimBlocks: [{ id: "b", channels: [1, 2] }],
      },
    ],
    modules: [
      { id: "m1", name: "One", kind: "R", address: 1, feedNode: "n" },
      { id: "m2", name: "Two", kind: "R", address: 2, feedNode: "n" },
    ],
    circuits: [
      { id: "c1", module: "m1", channel: 1, loads: ["lamp1"], label: "Lamp left" },
      { id: "c2", module: "m1", channel: 2, loads: ["pump"], canMove: true, verified: { by: "meter" }, label: "Pump" },
      { id: "c3", module: "m1", channel: 3, loads: ["lamp2"], canMove: true, fuse: { ratedA: exact(7.5) } },
      { id: "c4", module: "m1", channel: 4, isSpare: true },
      { id: "c5", module: "m2", channel: 1, loads: ["lamp3"] },
      ...[2, 3, 4].map((channel) => ({ id: `s${channel}`, module: "m2", channel, isSpare: true })),
    ],
    loads: [
      { id: "lamp1", name: "Lamp 1", class: "led-resistor", currentA: exact(2), wish: "nice-to-dim" },
      { id: "pump", name: "Pump", class: "pump", currentA: exact(4) },
      { id: "lamp2", name: "Lamp 2", class: "led-resistor", currentA: exact(2), wish: "nice-to-dim", wishWeight: 3 },
      { id: "lamp3", name: "Lamp 3", class: "led-resistor", currentA: exact(2) },
    ],
  };
  change(record);
  const read = readRecord(record);
  if (read.kind === "refused") throw new Error(read.faults.map((each) => `${each.path}: ${each.message}`).join("\n"));
  return read.record;
}

const jobOf = (constraints: unknown, wishes?: unknown): Job => ({ id: "j", title: "j", constraints, wishes }) as Job;

function problemOf(record: CoachRecord, job?: Job): RecordProblem {
  const index = indexRecord(record);
  return movesProblemOf(index, policyOf(record), demandOf(index, job));
}

/** Every choice that keeps to the problem's rules. */
function everyChoice(problem: RecordProblem): Choice[] {
  let lists: number[][] = [[]];
  const sizes = [
    ...problem.modules.map((each) => each.patterns.length),
    ...problem.circuits.map((each) => each.placings.length),
  ];
  for (const size of sizes) lists = lists.flatMap((list) => Array.from({ length: size }, (_, i) => [...list, i]));
  return lists
    .map((list) => ({ patterns: list.slice(0, problem.modules.length), placings: list.slice(problem.modules.length) }))
    .filter((choice) => choiceFaults(problem, choice).length === 0);
}

/** The cheapest plan of the highest value. */
function mostLight(problem: RecordProblem): Plan {
  const [best] = everyChoice(problem)
    .map((choice) => ({ choice, score: scoreOf(problem, choice) }))
    .sort(
      (a, b) => b.score.value - a.score.value || a.score.cost - b.score.cost || a.score.wiresMoved - b.score.wiresMoved,
    );
  if (best === undefined) throw new Error("nothing can be done");
  const plan = planOfChoice(problem, best.choice);
  // What the problem reckons and what the plan adds up from its parts are the same.
  expect([plan.costCents, plan.wishValue * 1000, plan.minutes, plan.wiresMoved, plan.modulesTouched]).toEqual([
    best.score.costCents,
    best.score.value,
    best.score.minutes,
    best.score.wiresMoved,
    best.score.modulesTouched,
  ]);
  return plan;
}

/** A fan on the channel of m1 that was spare. */
function taken(raw: Record<string, unknown>): void {
  set(raw, "circuits", "c4", { isSpare: undefined, loads: ["fan"] });
  items(raw, "loads").push({ id: "fan", name: "Fan", class: "fan", currentA: exact(1) });
}

describe("moves", () => {
  it("swap a pump out of a dim block for a lamp, at the price of two moves", () => {
    const plan = mostLight(problemOf(coach()));
    expect(plan.dims).toEqual(["lamp1", "lamp2"]);
    expect(plan.moves).toEqual([
      { circuit: "c2", from: { module: "m1", channel: 2 }, to: { module: "m1", channel: 3 } },
      { circuit: "c3", from: { module: "m1", channel: 3 }, to: { module: "m1", channel: 2 } },
    ]);
    // 100.00 and 20 + 15 + 15 minutes at 1.00.
    expect([plan.costCents, plan.minutes, plan.wiresMoved, plan.wishValue]).toEqual([15000, 50, 2, 4]);
  });
  it("stay where the program does not let them move, where a control is fixed, and where the job rules moves out", () => {
    const still = (record: CoachRecord, job?: Job) => mostLight(problemOf(record, job)).moves;
    expect(still(coach((raw) => set(raw, "circuits", "c2", { canMove: false })))).toEqual([]);
    expect(still(coach(), jobOf({ rulesOut: ["moves"] }))).toEqual([]);
    expect(still(coach(), jobOf({ lockedLoads: ["pump"] }))).toEqual([]);
    expect(still(coach(), jobOf({ lockedModules: ["m1"] }))).toEqual([]);
    const fixed = coach((raw) => {
      raw.controls = [{ id: "k", name: "k", program: "fixed", does: [{ action: "switch", circuits: ["c2"] }] }];
    });
    expect(still(fixed)).toEqual([]);
    expect(still(coach((raw) => set(raw, "loads", "pump", { class: "detector" })))).toEqual([]);
  });
  it("go to another module only in reach, and open both places", () => {
    const far = coach((raw) => {
      raw.places = [
        { id: "p1", name: "p1", accessMin: 3 },
        { id: "p2", name: "p2", accessMin: 4 },
      ];
      byId(raw, "modules", "m1").place = "p1";
      byId(raw, "modules", "m2").place = "p2";
      byId(raw, "circuits", "c3").canMove = false;
      taken(raw);
      byId(raw, "circuits", "c2").reach = ["m2"];
    });
    const plan = mostLight(problemOf(far));
    expect(plan.moves).toEqual([
      { circuit: "c2", from: { module: "m1", channel: 2 }, to: { module: "m2", channel: 2 } },
    ]);
    expect([plan.dims, plan.minutes]).toEqual([["lamp1"], 20 + 45 + 3 + 4]);
    const near = coach((raw) => {
      byId(raw, "circuits", "c3").canMove = false;
      taken(raw);
    });
    expect(mostLight(problemOf(near)).dims).toEqual([]);
  });
  it("never put a module over its total, nor a feed node over its rating", () => {
    const record = (change: (raw: Record<string, unknown>) => void) =>
      mostLight(
        problemOf(
          coach((raw) => {
            raw.supplies = [{ id: "s", kind: "battery", name: "s", node: "bus" }];
            raw.nodes = ["bus", "n", "o"].map((id) => ({ id, kind: "stud", name: id }));
            raw.cables = ["n", "o"].map((id) => ({ id: `w-${id}`, from: "bus", to: id }));
            byId(raw, "modules", "m2").feedNode = "o";
            byId(raw, "circuits", "c3").canMove = false;
            taken(raw);
            byId(raw, "circuits", "c2").reach = ["m2"];
            change(raw);
          }),
        ),
      ).moves.length;
    expect(record(() => {})).toBe(1);
    // Two amps hang on m2; the pump draws four.
    expect(record((raw) => set(raw, "nodes", "o", { ratedA: exact(6) }))).toBe(1);
    expect(record((raw) => set(raw, "nodes", "o", { ratedA: exact(5.9) }))).toBe(0);
    const oneOfD = (raw: Record<string, unknown>, ratedTotalA: number): void => {
      set(raw, "moduleKinds", "D", { isObtainable: false, inStock: 1 });
      set(raw, "moduleKinds", "R", { ratedTotalA: exact(ratedTotalA) });
    };
    expect(record((raw) => oneOfD(raw, 6))).toBe(1);
    expect(record((raw) => oneOfD(raw, 5.9))).toBe(0);
  });
});

describe("beside moves", () => {
  const stuck = (change: (raw: Record<string, unknown>) => void = () => {}) =>
    coach((raw) => {
      byId(raw, "circuits", "c1").loads = ["lamp1", "outlet"];
      byId(raw, "circuits", "c1").out = { gauge: "14 AWG", lengthM: exact(3) };
      byId(raw, "circuits", "c2").isSpare = true;
      byId(raw, "circuits", "c2").loads = [];
      byId(raw, "circuits", "c3").canMove = false;
      items(raw, "loads").push({
        id: "outlet",
        name: "Outlet",
        class: "outlet",
        currentA: exact(1),
        maySteadyFeed: true,
      });
      change(raw);
    });
  it("a load that must not dim gets a fused feed of its own, so that the lamp on its circuit may dim", () => {
    const record = stuck();
    const plan = mostLight(problemOf(record));
    expect(plan.dims).toEqual(["lamp1"]);
    expect(plan.steadyFeeds).toEqual([
      { load: "outlet", circuit: "c1", from: { module: "m1", channel: 1 }, node: "n", fuseA: 15 },
    ]);
    // 100.00 + 10.00 and 20 + 60 minutes.
    expect([plan.costCents, plan.wiresMoved]).toEqual([19000, 1]);
    const after = applyPlan(record, plan);
    expect(after.circuits?.find((circuit) => circuit.id === "c1")?.loads).toEqual(["lamp1"]);
    expect(after.circuits?.find((circuit) => circuit.id === "outlet-feed")).toMatchObject({
      fusePosition: { node: "n" },
      fuse: { ratedA: 15 },
      out: { gauge: "14 AWG" },
      loads: ["outlet"],
    });
  });
  it("no feed without the record's word, without a feed node, or where it is ruled out", () => {
    const feeds = (record: CoachRecord, job?: Job) => mostLight(problemOf(record, job)).steadyFeeds.length;
    expect(feeds(stuck((raw) => set(raw, "loads", "outlet", { maySteadyFeed: undefined })))).toBe(0);
    expect(feeds(stuck((raw) => set(raw, "modules", "m1", { feedNode: undefined })))).toBe(0);
    expect(feeds(stuck(), jobOf({ rulesOut: ["steady-feeds"] }))).toBe(0);
    const own = stuck((raw) =>
      Object.assign(byId(raw, "loads", "outlet"), { maySteadyFeed: undefined, hasOwnSwitch: true }),
    );
    expect(feeds(own)).toBe(1);
  });
  it("a wire is made thicker where it alone keeps the fuse that the channel and the load want from being fitted", () => {
    const record = coach((raw) => {
      byId(raw, "moduleKinds", "D").maxFuseA = exact(10);
      byId(raw, "moduleKinds", "D").ratedDimmedA = exact(9);
      Object.assign(byId(raw, "circuits", "c1"), {
        fuse: { ratedA: exact(15) },
        out: { gauge: "18 AWG", lengthM: exact(2), insulationC: 60 },
      });
      byId(raw, "loads", "lamp1").currentA = exact(8);
      for (const id of ["c2", "c3"]) byId(raw, "circuits", id).canMove = false;
      byId(raw, "circuits", "c2").isSpare = true;
      byId(raw, "circuits", "c2").loads = [];
    });
    // NEC 240.4(D): 7 A at most for 18 AWG, 10 A for 16 AWG.
    const plan = mostLight(problemOf(record));
    expect(plan.rewires).toMatchObject([{ circuit: "c1", fromGauge: "18 AWG", toGauge: "16 AWG" }]);
    expect(plan.fuses).toMatchObject([{ circuit: "c1", fromA: 15, toA: 10 }]);
    expect(plan.minutes).toBe(20 + 2 + 30 + 5 * 2);
    expect(plan.costNeeds).toContain("policy.rewirePartsPerM");
    expect(applyPlan(record, plan).circuits?.[0]).toMatchObject({ out: { gauge: "16 AWG" }, fuse: { ratedA: 10 } });
    expect(mostLight(problemOf(record, jobOf({ rulesOut: ["rewires"] }))).dims).toEqual([]);
  });
  it("a module taken out is fitted elsewhere for its minutes alone, unless it is dead or reuse is ruled out", () => {
    const record = (change: (raw: Record<string, unknown>) => void = () => {}) =>
      coach((raw) => {
        // m2 has the dimming kind already, m1 wants it; the lamps of m2 want nothing.
        byId(raw, "modules", "m2").kind = "D";
        byId(raw, "modules", "m2").positionsFound = "0";
        set(raw, "moduleKinds", "D", { isObtainable: false });
        byId(raw, "circuits", "c2").isSpare = true;
        byId(raw, "circuits", "c2").loads = [];
        change(raw);
      });
    const plan = mostLight(problemOf(record()));
    expect(plan.modules.map((choice) => choice.to)).toEqual(["D", "R"]);
    // R comes out of m1 and goes into m2; D the other way; nothing is bought, a lamp's wire goes next to the other's.
    expect([plan.partsCents, plan.minutes]).toEqual([0, 20 + 20 + 15]);
    expect(mostLight(problemOf(record(), jobOf({ rulesOut: ["reuse"] }))).dims).toEqual([]);
    const dead = mostLight(problemOf(record((raw) => set(raw, "modules", "m2", { isDead: true }))));
    expect(dead.modules.map((choice) => choice.to)).toEqual(["R", "R"]);
  });
});

describe("the record after", () => {
  it("has the circuits on their new channels, nothing seen there, and what was left spare", () => {
    const record = coach((raw) => {
      byId(raw, "circuits", "c3").canMove = false;
      byId(raw, "circuits", "c2").reach = ["m2"];
    });
    const problem = problemOf(record, jobOf({ fixedChoices: [{ circuit: "c2", toModule: "m2" }] }));
    expect(problem.faults).toEqual([]);
    const after = indexRecord(applyPlan(record, mostLight(problem)));
    const moved = after.circuits.get("c2");
    expect(moved).toMatchObject({ module: "m2", channel: 2, name: "Pump", reach: ["m1"] });
    expect([moved?.verified, moved?.label]).toEqual([undefined, undefined]);
    for (const module of ["m1", "m2"]) {
      const channels = after.circuitsOfModule.get(module)?.map((circuit) => circuit.channel);
      expect(channels, module).toEqual([1, 2, 3, 4]);
    }
    // The spare entry whose channel was taken stands for the channel that was left.
    expect(after.circuits.get("s2")).toEqual({ id: "s2", module: "m1", channel: 2, isSpare: true, loads: [] });
  });
});

describe("the model", () => {
  it("is kept to by the values of every choice that keeps to the problem", () => {
    const problem = problemOf(coach((raw) => set(raw, "circuits", "c2", { reach: ["m2"] })));
    const form = milpOf(problem);
    const every = new Set(everyChoice(problem).map((choice) => JSON.stringify(choice)));
    expect(every.size).toBeGreaterThan(10);
    for (const text of every) {
      const choice = JSON.parse(text) as Choice;
      const values = form.encode(choice);
      expect(form.decode(values)).toEqual(choice);
      for (const row of form.milp.rows) {
        const sum = row.terms.reduce((total, [column, coefficient]) => total + coefficient * (values[column] ?? 0), 0);
        expect(sum >= row.lower && sum <= row.upper, row.name).toBe(true);
      }
    }
  });
  it("counts money and value in whole units", () => {
    const { milp, layout } = milpOf(problemOf(coach()));
    for (const at of [layout.rows.cost, layout.rows.value, layout.rows.wires])
      for (const [, coefficient] of milp.rows[at]?.terms ?? []) expect(Number.isInteger(coefficient)).toBe(true);
  });
});

describe("faults of the asking with moves, by path", () => {
  const codes = (record: CoachRecord, job: Job) =>
    problemFaults(problemOf({ ...record, jobs: [job] }, job), job).map((fault) => `${fault.code} ${fault.path}`);
  it("names a reach to no module, a fixed control, a detector said to move", () => {
    const record = coach((raw) => {
      byId(raw, "circuits", "c2").reach = ["m9"];
      byId(raw, "loads", "lamp2").class = "detector";
      byId(raw, "loads", "lamp2").wish = undefined;
      raw.controls = [{ id: "k", name: "k", program: "fixed", does: [{ action: "switch", circuits: ["c2"] }] }];
    });
    expect(codes(record, jobOf({}))).toEqual([
      "reach-names-no-module circuits[1].reach[0]",
      "move-contradicts-control circuits[1].canMove",
      "detector-does-not-move circuits[2].canMove",
    ]);
  });
  it("names locks that contradict each other, choices that say nothing, contradict, or cannot be", () => {
    const record = coach((raw) => set(raw, "circuits", "c2", { reach: ["m2"] }));
    const job = jobOf({
      budget: -1,
      lockedLoads: ["pump", "l9"],
      lockedModules: ["m2"],
      fixedChoices: [
        { circuit: "c2", toModule: "m2" },
        { module: "m2", kind: "D" },
        { module: "m1", kind: "X" },
        { module: "m1" },
        { module: "m1", kind: "D" },
        { module: "m1", kind: "R" },
        { circuit: "c1", toModule: "m2" },
      ],
    });
    expect(codes(record, job)).toEqual([
      "budget-not-valid jobs[0].constraints.budget",
      "unknown-load jobs[0].constraints.lockedLoads[1]",
      "locks-contradict jobs[0].constraints.fixedChoices[0]",
      "locks-contradict jobs[0].constraints.fixedChoices[1]",
      "choice-names-unknown jobs[0].constraints.fixedChoices[2].kind",
      "choice-says-nothing jobs[0].constraints.fixedChoices[3]",
      "choices-contradict jobs[0].constraints.fixedChoices[5]",
      "locks-contradict jobs[0].constraints.fixedChoices[6]",
    ]);
  });
  it("keeps to a choice that can be, and names one that cannot", () => {
    const fitted = problemOf(coach(), jobOf({ fixedChoices: [{ module: "m1", kind: "D", enables: [] }] }));
    expect(fitted.modules[0]?.patterns.map((pattern) => pattern.key)).toEqual(["D[]"]);
    const record = coach();
    expect(codes(record, jobOf({ fixedChoices: [{ circuit: "c1", toModule: "m2" }] }))).toEqual([
      "choice-cannot-be jobs[0].constraints.fixedChoices[0]",
    ]);
  });
});
