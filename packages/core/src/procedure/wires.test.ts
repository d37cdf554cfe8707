import { demoRecord } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { applyPlan, frontOf, type Plan } from "../plan/index.js";
import { indexRecord } from "../record/index.js";
import {
  cautionWords,
  estimateOf,
  isStepCode,
  partsListOf,
  procedureOf,
  rollBackWords,
  type Step,
  stepWords,
  toolsOf,
} from "./index.js";

const record = demoRecord();
const before = indexRecord(record);
const idle = frontOf(before, record.jobs?.[0], { check: null }).plans.find((one) => one.modulesTouched === 0)!;
const at = (module: string, channel: number) => ({ module, channel }) as never;

/** Fits a D12 over the galley and moves the shade to its ninth channel; the hall lamp goes to the spare of the wet bay. */
const base: Plan = {
  ...idle,
  id: "p-by-hand",
  modules: idle.modules.map((choice) =>
    choice.module === "m2"
      ? {
          ...choice,
          to: "D12" as never,
          isReplaced: true,
          isTouched: true,
          enables: ["b1", "b2"] as never,
          positions: "10110010",
        }
      : choice,
  ),
  modulesTouched: 1,
  moves: [
    { circuit: "c2.02" as never, from: at("m2", 2), to: at("m2", 9) },
    { circuit: "c3.02" as never, from: at("m3", 2), to: at("m5", 8) },
  ],
  wiresMoved: 2,
};

const made = (plan: Plan) => {
  const after = indexRecord(applyPlan(record, plan));
  const procedure = procedureOf(before, plan, after);
  const steps = procedure.sections.flatMap((section) => section.steps);
  const ids = steps.map((step) => step.id);
  return {
    after,
    procedure,
    steps,
    ids,
    at: (id: string): number => {
      const place = ids.indexOf(id);
      expect(place, id).toBeGreaterThanOrEqual(0);
      return place;
    },
    step: (id: string): Step => {
      const found = steps.find((step) => step.id === id);
      if (found === undefined) throw new Error(`no step ${id}`);
      return found;
    },
    words: (id: string) => {
      const words = stepWords(steps.find((step) => step.id === id)!, before, after);
      return `${words.text} ${words.detail ?? ""}`;
    },
  };
};
const inOrder = (places: readonly number[]) => expect([...places].sort((a, b) => a - b)).toEqual(places);

describe("wires that move on the demo coach", () => {
  const work = made(base);

  it("are labelled after the dead test and before they are unplugged, moved while dead, and get their fuse last", () => {
    for (const circuit of ["c2.02", "c3.02"])
      inOrder([
        work.at("dead-test"),
        work.at("prove-meter-again"),
        work.at(`label-wire-${circuit}`),
        work.at(`unplug-wire-${circuit}`),
        work.at(`move-wire-${circuit}`),
        work.at("clear-away"),
        work.at("energise-s-house"),
        work.at(`change-program-${circuit}`),
        work.at("run-tests"),
      ]);
    inOrder([work.at("change-program-c2.02"), work.at("feed-m2"), work.at("energise-m2")]);
    inOrder([work.at("change-program-c3.02"), work.at("energise-circuit-c3.02"), work.at("energise-s-solar")]);
  });

  it("come out of the old connector before the new part goes in, and the harness is seated after they are in", () => {
    inOrder(
      [
        "label-wire-c2.02",
        "mark-connectors-m2",
        "take-fuses-m2",
        "remove-m2",
        "unplug-wire-c2.02",
        "set-bank-m2",
        "fit-m2",
        "move-wire-c2.02",
        "seat-harness-m2",
        "sort-fuses-m2",
        "label-channels-m2",
        "label-m2",
        "check-screws-m2",
      ].map((id) => work.at(id)),
    );
  });

  it("name both ends with their pins, and the fuse that goes along", () => {
    const said = work.words("move-wire-c2.02");
    expect(said).toContain("channel 9 of Module 2, over the galley (");
    expect(said).toContain("It comes from channel 2 of Module 2");
    expect(said).toContain("Its fuse goes with it: lay a 7.5 A fuse");
    expect(work.words("label-wire-c2.02")).toContain("where it goes, channel 9");
  });

  it("say the new size where the new channel allows no fuse so large", () => {
    const smaller = made({
      ...base,
      fuses: [{ circuit: "c2.02" as never, fromA: 7.5, toA: 5, because: "fuse-over-channel" }],
    });
    expect(smaller.words("move-wire-c2.02")).toContain("a 5 A fuse in the holder at this channel, in place of 7.5 A");
    expect(smaller.ids).not.toContain("change-fuse-c2.02");
  });

  it("leave a channel labelled spare where nothing takes it, and not where something does", () => {
    expect(work.step("label-channels-m2").parameters).toEqual({ spare: "2", taken: "9" });
    expect(work.words("label-channels-m2")).toContain('Write "spare"');
    expect(work.words("label-channels-m2")).toContain("channel 9: Galley window shade, 7.5 A");
    expect(work.step("label-channels-m3").parameters).toEqual({ spare: "2" });
    expect(work.step("label-channels-m5").parameters).toEqual({ taken: "8" });
    const swap = made({
      ...idle,
      moves: [
        { circuit: "c1.01" as never, from: at("m1", 1), to: at("m1", 2) },
        { circuit: "c1.02" as never, from: at("m1", 2), to: at("m1", 1) },
      ],
      wiresMoved: 2,
    });
    expect(swap.step("label-channels-m1").parameters).toEqual({ taken: "1, 2" });
    // Two that change places: both are off, each at its label, before the first goes in.
    for (const off of ["unplug-wire-c1.01", "unplug-wire-c1.02"])
      for (const on of ["move-wire-c1.01", "move-wire-c1.02"]) expect(swap.at(off)).toBeLessThan(swap.at(on));
    expect(swap.ids).toContain("energise-circuit-c1.01");
    expect(swap.ids).not.toContain("take-fuses-m1");
  });

  it("have somebody at the load that may move where its fuse goes in, and announce it there and not at the battery", () => {
    const loads = (step: Step) => String(step.cautions.find((one) => one.code === "something-moves")?.parameters.loads);
    expect(loads(work.step("energise-m2"))).toContain("Galley window shade");
    const toPump = made({
      ...idle,
      moves: [{ circuit: "c2.02" as never, from: at("m2", 2), to: at("m5", 8) }],
      wiresMoved: 1,
    });
    expect(loads(toPump.step("energise-circuit-c2.02"))).toBe("Galley window shade");
    expect(loads(toPump.step("energise-s-house"))).not.toContain("Galley window shade");
    expect(loads(toPump.step("watch-movers"))).toBe("Galley window shade");
  });

  it("open the places of both ends, once, and read the feed of each dead", () => {
    for (const place of ["p-galley-cabinet", "p-hall-closet", "p-wet-bay"])
      expect(work.ids.filter((id) => id === `open-place-${place}`)).toHaveLength(1);
    expect(work.step("dead-test").expect).toHaveLength(3 + 2);
  });

  it("name the buttons whose program must follow", () => {
    expect(work.words("change-program-c2.02")).toContain("Galley, shade button");
    expect(work.words("change-program-c3.02")).toContain("Hall button");
  });

  it("never move a detector, whatever the plan says", () => {
    const wrong = made({
      ...idle,
      moves: [{ circuit: "c3.04" as never, from: at("m3", 4), to: at("m5", 8) }],
      wiresMoved: 1,
    });
    expect(wrong.step("leave-detector-c3.04").cautions.map((one) => one.code)).toEqual(["life-safety"]);
    expect(wrong.ids.filter((id) => id.endsWith("wire-c3.04"))).toEqual([]);
    expect(wrong.words("leave-detector-c3.04")).toMatch(/^STOP at Gas detector/);
  });
});

describe("feeds of their own and thicker wires on the demo coach", () => {
  const plan: Plan = {
    ...idle,
    steadyFeeds: [
      {
        load: "l-bath-fan" as never,
        circuit: "c3.01" as never,
        from: at("m3", 1),
        node: before.modules.get("m3")!.feedNode as never,
        fuseA: 5,
      },
    ],
    rewires: [
      {
        circuit: "c5.01" as never,
        fromGauge: "18 AWG",
        toGauge: "14 AWG",
        toAreaMm2: 2.08,
        because: "wire-under-fuse",
      },
    ],
    wiresMoved: 2,
  };
  const work = made(plan);

  it("stay without a fuse until the coach is live, and are announced by what they feed", () => {
    inOrder([work.at("steady-feed-l-bath-fan"), work.at("energise-s-house"), work.at("energise-feed-l-bath-fan")]);
    inOrder([work.at("rewire-c5.01"), work.at("energise-s-house"), work.at("energise-circuit-c5.01")]);
    expect(work.step("energise-feed-l-bath-fan").cautions.map((one) => one.code)).toEqual(["something-moves"]);
    expect(work.words("energise-feed-l-bath-fan")).toContain("5 A fuse");
  });

  it("leave the lamp that shares the circuit on its channel, and that channel is not called spare", () => {
    expect(work.words("unplug-wire-l-bath-fan")).toContain("off its splice");
    expect(work.ids).not.toContain("label-channels-m3");
  });

  it("warn of what may lie behind the panels, and keep the old wire to go back to", () => {
    for (const id of ["rewire-c5.01", "steady-feed-l-bath-fan"])
      expect(work.step(id).cautions.map((one) => one.code)).toEqual(["hidden-lines"]);
    expect(work.words("rewire-c5.01")).toContain("14 AWG");
    expect(work.step("rewire-c5.01").rollBack).toContain("old wire is still there");
  });

  it("count their parts at the policy's prices and name the price that is missing", () => {
    const priced = indexRecord({ ...record, policy: { ...record.policy, steadyFeedParts: 24.5, rewirePartsPerM: 2 } });
    const lengthM = before.circuits.get("c5.01")!.out!.lengthM as number;
    const lines = partsListOf(plan, priced);
    expect(lines.find((line) => line.what.startsWith("Holder"))?.eachCents).toBe(2450);
    expect(lines.find((line) => line.what.startsWith("Wire 14 AWG"))?.eachCents).toBe(Math.round(lengthM * 200));
    expect(estimateOf(plan, before).needs.some((need) => need.startsWith("price of Holder"))).toBe(true);
  });

  it("ask for the tools of that work", () => {
    expect(toolsOf(work.procedure)).toContain("Fish tape, clips, grommets and wire of the sizes named");
    expect(toolsOf(made(base).procedure)).toContain("What the controller's program is changed with");
  });
});

describe("modules fitted again elsewhere", () => {
  const kinds = (record.moduleKinds ?? []).map((kind) => (kind.id === "R8" ? { ...kind, price: 100 } : kind));
  const modules = (record.modules ?? []).map((module) => (module.id === "m1" ? { ...module, isDead: true } : module));
  const dead = { ...record, moduleKinds: kinds, modules };
  const index = indexRecord(dead);
  const plan: Plan = {
    ...idle,
    modules: idle.modules.map((choice) =>
      choice.module === "m1" || choice.module === "m2"
        ? {
            ...choice,
            to: (choice.module === "m1" ? "R8" : "D8") as never,
            isReplaced: true,
            isTouched: true,
            positions: "100000",
          }
        : choice,
    ),
    modulesTouched: 2,
    partsCents: 28900,
    costCents: 28900,
  };

  it("cost nothing, are named as such, and come out before they go in", () => {
    expect(partsListOf(plan, index)).toMatchObject([
      { kind: "R8", quantity: 1, isReused: true, fromStock: false },
      { kind: "D8", quantity: 1, eachCents: 28900 },
    ]);
    const procedure = procedureOf(index, plan, indexRecord(applyPlan(dead, plan)));
    const ids = procedure.sections.flatMap((section) => section.steps).map((step) => step.id);
    expect(ids.indexOf("remove-m2")).toBeLessThan(ids.indexOf("fit-m1"));
    expect(ids).not.toContain("keep-old-m2");
    expect(ids).toContain("keep-old-m1");
  });

  it("are bought where the plan counted them as bought", () => {
    const bought = { ...plan, partsCents: 38900, costCents: 38900 };
    expect(partsListOf(bought, index).filter((line) => line.isReused === true)).toEqual([]);
  });
});

describe("words of wire steps", () => {
  it("are whole sentences with every name filled in, each step with a way back but the stop", () => {
    for (const plan of [base, { ...idle, moves: base.moves, wiresMoved: 2 }]) {
      const { steps, after } = made(plan);
      for (const step of steps) {
        expect(isStepCode(step.code)).toBe(true);
        const words = stepWords(step, before, after);
        for (const said of [
          words.text,
          words.detail ?? "x.",
          ...step.cautions.map(cautionWords),
          step.rollBack ?? "x.",
        ]) {
          expect(said).not.toMatch(/undefined|NaN|\[object|\.\./);
          expect(said).toMatch(/[.!?]$/);
        }
      }
    }
    for (const code of [
      "label-wire",
      "unplug-wire",
      "move-wire",
      "rewire",
      "steady-feed",
      "change-program",
      "energise-circuit",
      "energise-feed",
      "label-channels",
    ] as const)
      expect(rollBackWords(code)).toBeTruthy();
  });
});
