import { describe, expect, it } from "vitest";
import type { Finding } from "../findings/index.js";
import { COMMON_PRACTICE } from "../quantity/index.js";
import { type CoachRecord, indexRecord, type Job, readRecord } from "../record/index.js";
import { applyPlan, frontOf, OBSTACLE_CODES, obstacleWords, planWords } from "./index.js";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** Two relay modules of two channels, each with two lamps that should dim; a kind D that dims both channels. */
function coach(change: (record: Record<string, unknown>) => void = () => {}): CoachRecord {
  const record: Record<string, unknown> = {
    format: "fusebook/1",
    id: "small",
    coach: { name: "Small", isInvented: true },
    policy: { labourRatePerHour: 60 },
    places: [{ id: "bay", name: "Bay", accessMin: 5 }],
    moduleKinds: [
      {
        id: "R",
        name: "R",
        channels: 2,
        output: "relay",
        ratedSwitchedA: 10,
        ratedTotalA: 20,
        price: 50,
        installMin: 20,
      },
      {
        id: "D",
        name: "D",
        channels: 2,
        output: "pwm",
        ratedSwitchedA: 10,
        ratedDimmedA: 5,
        ratedTotalA: 20,
        price: 100,
        installMin: 20,
        bank: {
          switches: 3,
          address: {
            kind: "weights",
            coding: "binary",
            firstAddress: 0,
            switches: [
              { switch: 1, weight: 1, onMeans: 1 },
              { switch: 3, weight: 2, onMeans: 0 },
            ],
          },
          options: [
            { enables: [], set: [{ switch: 2, position: 0 }] },
            { enables: ["b"], set: [{ switch: 2, position: 1 }] },
          ],
        },
        dimBlocks: [{ id: "b", channels: [1, 2] }],
      },
    ],
    modules: [
      { id: "m1", name: "One", kind: "R", place: "bay", address: 1, serial: "S1", answersTo: 1, positionsFound: "1" },
      { id: "m2", name: "Two", kind: "R", place: "bay", address: 2 },
    ],
    circuits: ["1.1", "1.2", "2.1", "2.2"].map((at) => ({
      id: `c${at}`,
      module: `m${at[0]}`,
      channel: Number(at[2]),
      loads: [`l${at}`],
      fuse: { ratedA: 10 },
    })),
    loads: ["1.1", "1.2", "2.1", "2.2"].map((at) => ({
      id: `l${at}`,
      name: `Lamp ${at}`,
      class: "led-resistor",
      currentA: exact(2),
      wish: "nice-to-dim",
    })),
  };
  change(record);
  const read = readRecord(record);
  if (read.kind === "refused")
    throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join("\n"));
  return read.record;
}

const items = (record: Record<string, unknown>, name: string) => record[name] as Record<string, unknown>[];
const unchecked = { check: null } as const;
const points = (record: CoachRecord, job?: Job) =>
  frontOf(indexRecord(record), job, unchecked).plans.map((plan) => [
    plan.costCents,
    plan.wishValue,
    plan.modulesTouched,
  ]);
const job = (constraints: unknown, wishes?: unknown): Job =>
  ({ id: "j", title: "j", constraints, ...(wishes === undefined ? {} : { wishes }) }) as Job;

const finding = (code: string, id: string, severity: Finding["severity"] = "mend"): Finding =>
  ({
    code,
    severity,
    verdict: "fails",
    subject: { path: id, id, name: id },
    parameters: {},
    evidence: [],
    source: COMMON_PRACTICE,
    settledBy: [],
  }) as unknown as Finding;

describe("the front", () => {
  it("counts access once for a place, parts in cents and labour by the minute", () => {
    // 100.00 + (20 + 5) min at 1.00; both: 200.00 + (20 + 20 + 5) min.
    expect(points(coach())).toEqual([
      [0, 0, 0],
      [12500, 2, 1],
      [24500, 4, 2],
    ]);
  });
  it("takes parts in stock for nothing, up to their count", () => {
    const record = coach((raw) => {
      items(raw, "moduleKinds")[1]!.inStock = 1;
    });
    expect(points(record)).toEqual([
      [0, 0, 0],
      [2500, 2, 1],
      [14500, 4, 2],
    ]);
  });
  it("never buys beyond stock what cannot be bought", () => {
    const record = coach((raw) => {
      Object.assign(items(raw, "moduleKinds")[1]!, { inStock: 1, isObtainable: false });
    });
    expect(points(record)).toEqual([
      [0, 0, 0],
      [2500, 2, 1],
    ]);
  });
  it("sets the bank from the module's own address and the blocks it enables", () => {
    const plan = frontOf(indexRecord(coach()), undefined, unchecked).plans.at(-1)!;
    // Address 1: weight 1 counted (ON), weight 2 not counted (ON, since OFF counts); address 2: the other way round. Block b: switch 2 ON.
    expect(plan.modules.map((choice) => choice.positions)).toEqual(["111", "010"]);
  });
  it("leaves out a block with a load whose class is unknown and says which load", () => {
    const record = coach((raw) => {
      delete items(raw, "loads")[1]!.class;
    });
    const front = frontOf(indexRecord(record), undefined, unchecked);
    expect(front.plans.map((plan) => plan.dims)).toEqual([[], ["l2.1", "l2.2"]]);
    const stops = front.plans[1]!.unmet.find((wish) => wish.load === "l1.1")!.stoppedBy;
    expect(stops.map((stop) => stop.code)).toContain("block-has-unknown-load");
    expect(stops.map((stop) => stop.parameters.load)).toContain("l1.2");
  });
  it("never dims a detector, keeps the block it is on off, and names it when its module is touched", () => {
    const record = coach((raw) => {
      Object.assign(items(raw, "loads")[1]!, { class: "detector", allowsPwm: true, wish: "must-dim" });
      items(raw, "modules")[0]!.isDead = true;
    });
    const front = frontOf(indexRecord(record), undefined, unchecked);
    for (const plan of front.plans) {
      expect(plan.dims).not.toContain("l1.2");
      expect(plan.dims).not.toContain("l1.1");
      expect(plan.detectors).toEqual(["l1.2"]);
    }
    expect(front.faults.map((fault) => fault.code)).toContain("wish-on-detector");
  });
  it("fits a smaller fuse where the new kind allows less, and refuses where none carries the load", () => {
    const record = coach((raw) => {
      items(raw, "moduleKinds")[1]!.maxFuseA = 5;
    });
    const plan = frontOf(indexRecord(record), undefined, unchecked).plans.at(-1)!;
    expect(plan.fuses.map((fuse) => [fuse.circuit, fuse.fromA, fuse.toA])).toContainEqual(["c1.1", 10, 5]);
    const heavy = coach((raw) => {
      items(raw, "moduleKinds")[1]!.maxFuseA = 5;
      Object.assign(items(raw, "loads")[0]!, { currentA: exact(4.5), isContinuous: true });
    });
    const front = frontOf(indexRecord(heavy), undefined, unchecked);
    expect(front.plans.every((each) => !each.dims.includes("l1.2" as never))).toBe(true);
    expect(front.plans[0]!.unmet.find((wish) => wish.load === "l1.2")!.stoppedBy.map((stop) => stop.code)).toContain(
      "fuse-over-channel",
    );
  });
  it("makes the least must outweigh all nice-to-haves together", () => {
    const record = coach((raw) => {
      items(raw, "loads")[2]!.wish = "must-dim";
      for (const at of [0, 1, 3]) items(raw, "loads")[at]!.wishWeight = 40;
    });
    const front = frontOf(indexRecord(record), undefined, unchecked);
    expect(front.mustFactor).toBe(1000);
    const least = front.picks.find((pick) => pick.name === "least-for-all-musts")!;
    expect(front.plans.find((plan) => plan.id === least.plan)!.dims).toEqual(["l2.1", "l2.2"]);
    expect(least.mustsLeft).toBe(0);
  });
  it("offers to set the bank anew where a load that must stay steady is on an enabled block", () => {
    const record = coach((raw) => {
      Object.assign(items(raw, "modules")[0]!, { kind: "D", positionsFound: "111" });
      items(raw, "loads")[0]!.wish = "must-stay-steady";
      items(raw, "loads")[1]!.wish = "none";
    });
    const front = frontOf(indexRecord(record), undefined, unchecked);
    expect(front.plans[0]!.spoiled).toEqual(["l1.1"]);
    const mended = front.plans.find((plan) => plan.spoiled.length === 0)!;
    // Ten minutes at the bank and five for the bay.
    expect([mended.costCents, mended.modules[0]!.positions, mended.modules[0]!.isReplaced]).toEqual([
      1500,
      "101",
      false,
    ]);
  });
  it("keeps within a budget and names it where it stops a wish", () => {
    const front = frontOf(indexRecord(coach()), job({ budget: 130 }), unchecked);
    expect(front.plans.map((plan) => plan.costCents)).toEqual([0, 12500]);
    const stops = front.plans[1]!.unmet.flatMap((wish) => wish.stoppedBy.map((stop) => stop.code));
    // Either module may be the one that is done, so each lamp is met by some plan of that price or stopped by the budget.
    expect(new Set(stops)).toContain("over-budget");
  });
  it("has the same plans with the same ids whatever the order of the record", () => {
    const turned = coach((raw) => {
      for (const name of ["modules", "circuits", "loads", "moduleKinds"]) items(raw, name).reverse();
    });
    const ids = (record: CoachRecord) =>
      frontOf(indexRecord(record), undefined, unchecked).plans.map((plan) => plan.id);
    const whole = (record: CoachRecord) => [ids(record)[0], ids(record).at(-1)];
    expect(whole(turned)).toEqual(whole(coach()));
    expect(ids(coach())).toEqual(ids(coach()));
  });
});

describe("faults of the asking, by path", () => {
  const codes = (record: CoachRecord, asked?: Job) =>
    frontOf(indexRecord(record), asked, unchecked).faults.map((fault) => `${fault.code} ${fault.path}`);
  it("names unknown loads, modules and kinds, contradictions and limits that are no limits", () => {
    const asked = job({ budget: -1, maxMinutes: -2, lockedModules: ["m9"], forbiddenKinds: ["Z"] }, [
      { load: "l9", wish: "must-dim" },
      { load: "l1.1", wish: "must-dim" },
      { load: "l1.1", wish: "must-stay-steady" },
    ]);
    const record = coach((raw) => {
      raw.jobs = [asked];
    });
    expect(codes(record, asked)).toEqual([
      "wish-for-unknown-load jobs[0].wishes[0].load",
      "wishes-contradict jobs[0].wishes[2]",
      "budget-not-valid jobs[0].constraints.budget",
      "time-not-valid jobs[0].constraints.maxMinutes",
      "unknown-module jobs[0].constraints.lockedModules[0]",
      "unknown-module-kind jobs[0].constraints.forbiddenKinds[0]",
    ]);
  });
  it("names a kind without a price, and never takes it for a cheap one", () => {
    const record = coach((raw) => {
      delete items(raw, "moduleKinds")[1]!.price;
    });
    expect(codes(record)).toEqual(["kind-without-price moduleKinds[1].price"]);
    expect(points(record)).toEqual([[0, 0, 0]]);
  });
  it("names a must on a locked module", () => {
    const record = coach((raw) => {
      items(raw, "modules")[0]!.isLocked = true;
      items(raw, "loads")[0]!.wish = "must-dim";
    });
    expect(codes(record)).toEqual(["must-on-locked-module modules[0].isLocked"]);
  });
  it("names a dead module that nothing may replace, and a budget that no plan keeps", () => {
    const dead = coach((raw) => {
      items(raw, "modules")[0]!.isDead = true;
    });
    expect(codes(dead, job({ forbiddenKinds: ["R", "D"] }))).toEqual(["dead-module-no-kind modules[0]"]);
    expect(codes(dead, job({ budget: 10 }))).toEqual(["nothing-within-limits jobs.constraints"]);
    expect(frontOf(indexRecord(dead), undefined, unchecked).plans.every((plan) => plan.modules[0]!.isReplaced)).toBe(
      true,
    );
  });
});

describe("plans are checked before they are offered", () => {
  const kindOf = (record: CoachRecord, id: string) => record.modules?.find((module) => module.id === id)?.kind;
  it("takes out a choice that makes a new finding by itself, and says so", () => {
    const front = frontOf(indexRecord(coach()), undefined, {
      check: (record) => (kindOf(record, "m1") === "D" ? [finding("load-drop", "l1.1")] : []),
    });
    expect(front.plans.map((plan) => plan.dims)).toEqual([[], ["l2.1", "l2.2"]]);
    expect(front.cuts.map((cut) => [cut.modules, cut.findings[0]!.subject])).toEqual([[["m1"], "l1.1"]]);
    expect(front.isComplete).toBe(true);
    expect(front.plans[1]!.unmet[0]!.stoppedBy.map((stop) => stop.code)).toContain("cut-by-check");
  });
  it("takes out only the combination where two choices make the finding together", () => {
    const front = frontOf(indexRecord(coach()), undefined, {
      check: (record) =>
        kindOf(record, "m1") === "D" && kindOf(record, "m2") === "D" ? [finding("feeder-total", "w1", "stop")] : [],
    });
    // The pair with b enabled on both goes, then each pair in which a block stays off: no pair is left on the front.
    expect(front.plans.map((plan) => plan.modulesTouched)).toEqual([0, 1]);
    expect(front.cuts.length).toBeGreaterThan(0);
    expect(front.isComplete).toBe(true);
  });
  it("does not hold against a plan what the record had before, nor a watch or a note", () => {
    const front = frontOf(indexRecord(coach()), undefined, {
      check: (record) => [
        finding("load-drop", "l1.1"),
        ...(kindOf(record, "m1") === "D" ? [finding("shared-return", "m1", "watch")] : []),
      ],
    });
    expect(front.cuts).toEqual([]);
    expect(front.plans.length).toBe(3);
  });
  it("stops at the limit of checks, says that it is not complete, and names what was not checked", () => {
    const front = frontOf(indexRecord(coach()), undefined, { check: () => [], mostChecks: 1 });
    expect(front.isComplete).toBe(false);
    expect(front.unchecked.length).toBe(1);
  });
});

describe("the record after a plan", () => {
  it("has the new kind and positions, and nothing that was seen of the old part", () => {
    const record = coach();
    const plan = frontOf(indexRecord(record), undefined, unchecked).plans.at(-1)!;
    const after = applyPlan(record, plan);
    expect(after.modules![0]).toEqual({
      id: "m1",
      name: "One",
      kind: "D",
      place: "bay",
      address: 1,
      positionsFound: "111",
    });
    expect(record.modules![0]!.serial).toBe("S1");
    expect(readRecord(after).kind).toBe("read");
  });
  it("is the very record where nothing is touched", () => {
    const record = coach();
    expect(applyPlan(record, frontOf(indexRecord(record), undefined, unchecked).plans[0]!)).toBe(record);
  });
});

describe("words", () => {
  it("has a sentence for every obstacle, without a gap where a parameter is missing", () => {
    const index = indexRecord(coach());
    for (const code of OBSTACLE_CODES) {
      const words = obstacleWords(
        { code, parameters: { module: "m1", kind: "D", kindName: "D", channel: 1, why: "moves" } },
        index,
      );
      expect(words.length, code).toBeGreaterThan(8);
      expect(words, code).not.toContain("undefined");
    }
  });
  it("says a plan in sentences that name module, kinds, switches and money", () => {
    const index = indexRecord(coach());
    const words = planWords(frontOf(index, undefined, unchecked).plans.at(-1)!, index).join(" ");
    expect(words).toContain("One: fit D in place of R, dim block b enabled, switches 111.");
    expect(words).toContain("together 245.00 USD before tax; about 45 minutes");
  });
});
