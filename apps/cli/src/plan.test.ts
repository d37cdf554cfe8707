import { demoRecordText } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "./commands.js";
import { type MemoryIo, memoryIo } from "./memory-io.js";
import { runLine } from "./run.js";

// biome-ignore lint/suspicious/noExplicitAny: answers are read as a script would read them
type Json = any;

interface Ran {
  readonly code: number;
  readonly io: MemoryIo;
  readonly out: string;
  readonly err: string;
}

const demo = demoRecordText();
const changed = (change: (record: Json) => void): string => {
  const record = JSON.parse(demo) as Json;
  change(record);
  return JSON.stringify(record);
};

/** The demo coach with the galley and the hall closet alone: the same choices, checked in a fraction of the time. */
const small = changed((record) => {
  const kept = new Set(["m2", "m3"]);
  record.modules = record.modules.filter((module: Json) => kept.has(module.id));
  record.circuits = record.circuits.filter((circuit: Json) => kept.has(circuit.module));
  const loads = new Set(record.circuits.flatMap((circuit: Json) => circuit.loads ?? []));
  record.loads = record.loads.filter((load: Json) => loads.has(load.id));
  for (const circuit of record.circuits) if (circuit.id === "c3.02") circuit.reach = ["m2"];
  record.controls = record.controls.map((control: Json) => ({
    ...control,
    does: (control.does ?? []).map((each: Json) => ({
      ...each,
      circuits: (each.circuits ?? []).filter((id: string) => /^c[23]\./.test(id)),
    })),
  }));
  delete record.network;
});

async function plan(words: readonly string[], text = demo, io = memoryIo({ "a.json": text })): Promise<Ran> {
  const code = await runLine(["plan", "a.json", ...words], COMMANDS, io);
  return { code, io, out: io.said.join("\n"), err: io.complained.join("\n") };
}
const json = async (...words: string[]): Promise<Json> => JSON.parse((await plan([...words, "--json"], small)).out);

describe("what is asked of plan cannot be, and is refused by name and remedy", () => {
  it.each([
    [["--lock", "Modul 2"], "nearest: m2 (Module 2, over the galley)"],
    [["--lock", "gally shade"], "c2.02 (GALLEY SHADE)"],
    [["--forbid", "D9"], "D8 (D8, eight channels, two dim blocks)"],
    [["--forbid", "D9"], "or one of moves, steady-feeds, rewires, reuse"],
    [["--lock", "m2=D9"], "no module kind of that name"],
    [["--lock", "c2.02=m9"], "no module of that name"],
    [["--why", "Galey celing"], "l-galley-ceiling (Galley ceiling)"],
    [["--budget=-1"], "wanted an amount of money, 0 or more; leave it out for no limit"],
    [["--budget", "lots"], "--budget lots: wanted an amount of money"],
    [["--minutes", "3.5"], "wanted whole minutes"],
    [["--export", "xls", "m.xls"], "wanted lp or mps"],
    [["--export", "lp"], "name the file to write after the record"],
    [["other.json"], "a second file is only for --export"],
    [["-o", "out.json"], "say which plan to write"],
    [["--lock", "m2", "--lock", "m2=D12"], "m2 is locked as it is and is to get D12; unlock it or remove the choice"],
    [["--forbid", "D12", "--lock", "m2=D12"], "D12 is ruled out and is to be fitted at m2"],
    [["--lock", "m2=D8", "--lock", "m2=D12"], "says otherwise than"],
    [["--lock", "Hall ceiling", "--lock", "c3.02=m4"], "is locked to stay on m3 and is to go to m4"],
  ])("%j", async (words, said) => {
    const { code, err } = await plan(words);
    expect(err).toContain(said);
    expect(code).toBe(2);
  });

  it("a lock on the line that contradicts a choice in the job is refused with the choice's place", async () => {
    const text = changed((record) => {
      record.jobs[0].constraints.fixedChoices = [{ module: "m2", kind: "D12" }];
    });
    const { code, err } = await plan(["--lock", "m2"], text);
    expect(err).toContain("fixedChoices[0]: m2 is locked as it is and is to get D12");
    expect(code).toBe(2);
  });

  it("a kind with no price, a wish for a load that is not there and a budget below zero in the record are named by path, and give 1", async () => {
    const text = changed((record) => {
      delete record.moduleKinds.find((kind: Json) => kind.id === "D12").price;
      record.jobs[0].wishes = [{ load: "l-nothing", wish: "must-dim" }];
      record.jobs[0].constraints.budget = -5;
    });
    const { code, err } = await plan([], text);
    expect(err).toContain("moduleKinds[2].price: D12, twelve channels, three dim blocks has no price");
    expect(err).toContain("jobs[0].wishes[0].load: the record has no load l-nothing");
    expect(err).toContain("jobs[0].constraints.budget: a budget is 0 or more, got -5");
    expect(code).toBe(1);
  });
});

describe("what is locked or forbidden stays so in every plan", () => {
  it("a locked module is touched by none", async () => {
    const { plans } = await json("--lock", "m3");
    expect(plans.length).toBeGreaterThan(2);
    for (const each of plans) expect(each.modules.find((choice: Json) => choice.module === "m3").isTouched).toBe(false);
  });

  it("a module that is to get a kind gets it in all", async () => {
    const { plans } = await json("--lock", "Module 2, over the galley=D12");
    expect(plans.length).toBeGreaterThan(0);
    for (const each of plans)
      expect(each.modules.find((choice: Json) => choice.module === "m2")).toMatchObject({
        to: "D12",
        isReplaced: true,
      });
  });

  it("a forbidden kind is fitted by none, and forbidden moves are made by none", async () => {
    const { plans } = await json("--forbid", "D12", "--forbid", "moves");
    for (const each of plans) {
      expect(each.modules.filter((choice: Json) => choice.isReplaced && choice.to === "D12")).toEqual([]);
      expect(each.moves).toEqual([]);
    }
  });

  it("budget and minutes hold", async () => {
    const { plans } = await json("--budget", "600", "--minutes", "100");
    expect(plans.length).toBeGreaterThan(0);
    for (const each of plans) {
      expect(each.costCents).toBeLessThanOrEqual(60_000);
      expect(each.minutes).toBeLessThanOrEqual(100);
    }
  });
});

describe("what plan gives", () => {
  it("why a wish is not met: the rules, what is in each other's way and a way out, in sentences and as data", async () => {
    const { code, out } = await plan(["--why", "Galley ceiling", "--budget", "100"], small);
    expect(code).toBe(1);
    expect(out).toContain("these cannot all hold");
    expect(out).toContain("Raise the budget from 100.00 to");
    const why = await json("--why", "Galley ceiling", "--budget", "100");
    expect(why.outcome.kind).toBe("conflict");
    expect(why.outcome.waysOut[0].plan.costCents).toBeGreaterThan(10_000);
    expect(why.words.length).toBeGreaterThan(3);
  });

  it("gives 0 where the wish can be met after all", async () => {
    expect((await plan(["--why", "Galley ceiling"], small)).code).toBe(0);
  });

  it.each(["lp", "mps"])("the model as %s, whole, without looking for a plan", async (form) => {
    const { code, io, out } = await plan(["--export", form, `model.${form}`]);
    expect(code).toBe(0);
    const text = new TextDecoder().decode(io.files.get(`model.${form}`));
    expect(text).toMatch(form === "lp" ? /^\\ marsh-wren[\s\S]*End\s*$/ : /NAME[\s\S]*ENDATA\s*$/);
    expect(out).toMatch(/\d+ columns, \d+ rows/);
  });

  it("the front as a picture that says in words what it shows", async () => {
    const { io } = await plan(["--front", "--svg", "front.svg"], small);
    const svg = new TextDecoder().decode(io.files.get("front.svg"));
    expect(svg).toContain("Marsh Wren: plans that no other beats");
    expect(svg).toMatch(/most light/);
    expect(svg).toMatch(/wires? moved/);
  });

  it("the named picks alone, or with --front every plan, each with its wires", async () => {
    const [short, whole] = [await plan([], small), await plan(["--front"], small)];
    const rows = (out: string) => out.split("\n").filter((line) => /^p-/.test(line) && line.includes("min")).length;
    expect(short.out).toContain("--front lists them all");
    expect(rows(whole.out)).toBeGreaterThan(rows(short.out));
    expect(short.out.split("\n")[0]).toMatch(/lights +wires +modules/);
  });

  it("how far the search is, in lines of progress beside the answer", async () => {
    const { io, out } = await plan(["--budget", "600"], small);
    expect(io.shown.some((line) => /\d+ plans? found, .*\d+ checked/.test(line))).toBe(true);
    expect(out).not.toContain("Ctrl-C");
  });

  it("after Ctrl-C the best so far, said to be incomplete, and 1", async () => {
    const io = memoryIo({ "a.json": small });
    io.press();
    const { code, out } = await plan([], small, io);
    expect(out).toContain("the list is not complete");
    expect(out).not.toMatch(/undefined|NaN/);
    expect(code).toBe(1);
  });

  it("a chosen plan written into the job with its moves, which packet and prove take up", async () => {
    const { plans } = await json("--lock", "m2=D12", "--lock", "m3");
    const moving = plans.find((each: Json) => each.moves.length > 0);
    const words = ["--lock", "m2=D12", "--lock", "m3", "--pick", moving.id, "--after", "-o", "after.json"];
    const { io } = await plan(words, small);
    const after = JSON.parse(new TextDecoder().decode(io.files.get("after.json"))) as Json;
    expect(after.jobs[0].chosen.moves).toEqual(moving.moves);
    const proving = memoryIo({ "after.json": JSON.stringify(after) });
    await runLine(["prove", "after.json", "--json"], COMMANDS, proving);
    const ids = JSON.parse(proving.said.join("\n")).judged.map((each: Json) => each.test.id);
    for (const move of moving.moves) expect(ids).toContain(`t-${move.circuit}-answers`);
  });
});
