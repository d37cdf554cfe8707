import { frontOf, type Plan } from "@fusebook/core/plan";
import { indexRecord } from "@fusebook/core/record";
import { demoRecord } from "@fusebook/fixtures";
import { beforeAll, describe, expect, it } from "vitest";
import type { PacketView } from "../packet/packet-view.js";
import { packetInputsOf } from "./packet-inputs-of.js";
import { packetViewOf } from "./packet-view-of.js";

describe("the packet of a plan that moves wires, in words", () => {
  let view: PacketView;
  beforeAll(() => {
    const before = indexRecord(demoRecord());
    const idle = frontOf(before, before.record.jobs?.[0], { check: null }).plans.find(
      (plan) => plan.modulesTouched === 0,
    )!;
    const at = (module: string, channel: number) => ({ module, channel }) as never;
    const plan: Plan = {
      ...idle,
      id: "p-by-hand",
      modules: idle.modules.map((choice) =>
        choice.module === "m2"
          ? { ...choice, to: "D12" as never, isReplaced: true, isTouched: true, positions: "10110010" }
          : choice,
      ),
      modulesTouched: 1,
      moves: [
        { circuit: "c2.02" as never, from: at("m2", 2), to: at("m2", 9) },
        { circuit: "c3.02" as never, from: at("m3", 2), to: at("m5", 8) },
      ],
      steadyFeeds: [
        {
          load: "l-bath-fan" as never,
          circuit: "c3.01" as never,
          from: at("m3", 1),
          node: before.modules.get("m3")!.feedNode as never,
          fuseA: 5,
        },
      ],
      fuses: [{ circuit: "c2.02" as never, fromA: 7.5, toA: 5, because: "wire-changed" }],
      wiresMoved: 3,
    };
    view = packetViewOf(packetInputsOf({ before, plan, date: "2026-05-02", id: "p-1" }));
  }, 120_000);
  const strip = (title: string) => view.strips.find((each) => each.title.startsWith(title))!;

  it("says before the estimate which wire goes where", () => {
    expect(view.wireChanges.map(({ what, from, to }) => [what, from, to])).toEqual([
      ["Galley window shade", "Module 2, over the galley, channel 2", "Module 2, over the galley, channel 9"],
      ["Hall ceiling (2)", "Module 3, hall closet, channel 2", "Module 5, wet bay, channel 8"],
      ["Bath fan", "Module 3, hall closet, channel 1", expect.stringContaining("a feed of its own from")],
    ]);
    expect(view.proposed.statement[0]).toContain("2 circuits are moved to other channels");
    expect(view.proposed.statement[0]).toContain("1 load gets a feed of its own");
    expect(view.fuseChanges[0]!.because).toBe("the wire is another");
  });

  it("has a label strip for every module a wire leaves or reaches, the channel it left spare", () => {
    expect(strip("Module 2").labels[1]).toEqual({ head: "2", text: "spare" });
    expect(strip("Module 2").labels[8]).toEqual({ head: "9 · 5 A", text: "Galley window shade" });
    expect(strip("Module 3").labels[1]!.text).toBe("spare");
    expect(strip("Module 5").labels[7]!.text).toBe("Hall ceiling (2)");
  });

  it("takes the moved wire out of the pin map, since it goes by its own step", () => {
    const rows = view.pinMaps[0]!.rows.map((row) => row.circuit);
    expect(rows.filter((row) => row.includes("not by this map"))).toEqual([
      "2 Galley window shade: leaves this channel; not by this map, by its own step",
    ]);
  });

  it("tests the load on its new channel, the old channel dead, and the new feed, whatever module they are on", () => {
    const lines = view.tests.flatMap((group) => group.lines.map((line) => `${group.where}: ${line.what}`));
    expect(lines).toContain("Galley window shade: answers on its new channel");
    expect(lines).toContain("Hall ceiling (2): answers on its new channel");
    expect(lines).toContain("Bath fan: always has power");
    expect(lines.filter((line) => line.includes("old channel dead"))).toEqual([
      "Module 2, over the galley: old channel dead: channel 2",
      "Module 3, hall closet: old channel dead: channel 2",
    ]);
  });
});
