import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { demoRecord } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "./commands.js";
import { realIo } from "./io.js";
import { type MemoryIo, memoryIo } from "./memory-io.js";
import { runLine } from "./run.js";

// biome-ignore lint/suspicious/noExplicitAny: a record is spoiled field by field, against its own type
type Draft = any;

/** The demo coach with one thing spoiled. */
const spoiled = (change: (draft: Draft) => void = () => {}): string => {
  const draft = structuredClone(demoRecord()) as Draft;
  change(draft);
  return JSON.stringify(draft);
};
/** The load of circuit c1.01, six ceiling lamps. */
const lamp = (draft: Draft): Draft => draft.loads.find((load: Draft) => load.id === "l-saloon-ceiling-fore");
const circuit = (draft: Draft): Draft => draft.circuits.find((one: Draft) => one.id === "c1.01");

const profile = (spans: unknown): string => JSON.stringify({ id: "mine", spans });

const FILES: Readonly<Record<string, string>> = {
  "demo.json": spoiled(),
  "contradicting.json": spoiled((draft) => {
    lamp(draft).drawReadings = [
      { voltageV: 12.6, currentA: 1 },
      { voltageV: 12, currentA: 3 },
    ];
  }),
  "no-model.json": spoiled((draft) => {
    for (const field of ["class", "currentA", "powerW"]) delete lamp(draft)[field];
  }),
  "wide.json": spoiled((draft) => {
    lamp(draft).currentA = { value: 0.5, basis: "measured", plusMinus: 2 };
    circuit(draft).out.lengthM = { value: 3, basis: "assumed", plusMinus: 9 };
    circuit(draft).return.sectionMm2 = { value: 1, basis: "assumed", plusMinus: 2 };
  }),
  "negative.json": spoiled((draft) => {
    lamp(draft).currentA = -3;
  }),
  "nan.json": spoiled((draft) => {
    lamp(draft).currentA = "NaN";
  }),
  "newer.json": spoiled((draft) => {
    draft.format = "fusebook/9";
  }),
  "no-battery.json": spoiled((draft) => {
    draft.supplies = [];
  }),
  "negative-reserve.json": spoiled((draft) => {
    draft.policy.reserveRatio = -0.2;
  }),
  "empty-profile-within.json": spoiled((draft) => {
    draft.endurance = { profiles: [{ id: "evening", spans: [] }] };
  }),
  "broken.json": "{ oops",
  "bare.json": JSON.stringify({ format: "fusebook/1", id: "x", coach: { name: "Bare" } }),
  "empty-profile.json": profile([]),
  "list-profile.json": "[1, 2]",
  "duty-profile.json": profile([{ hours: 2, on: [{ classes: ["led-resistor"], dutyRatio: 1.5 }] }]),
  "backward-profile.json": profile([{ hours: -2, on: [] }]),
  "stranger-profile.json": profile([{ hours: 2, on: [{ circuits: ["c9.99"] }] }]),
};

const run = async (line: string): Promise<{ code: number; said: string; complained: string; io: MemoryIo }> => {
  const io = memoryIo(FILES);
  const code = await runLine(line.split(" "), COMMANDS, io);
  return { code, said: io.said.join("\n"), complained: io.complained.join("\n"), io };
};

/** The commands that read a record, each with what else it needs on the line. */
const READERS = [
  "solve {} --on c1.01",
  "hours {} --profile evening",
  "dim {} c1.01",
  "fuse {} c1.01",
  "doubt {} c1.01 --samples 20",
];

describe("a file that is no record of this program: 2, the place and the remedy, nothing written", () => {
  it.each(READERS.map((line) => [line]))("%s", async (line) => {
    for (const [file, place, remedy] of [
      ["none.json", "none.json: no such file", "check the name"],
      ["broken.json", "line 1, column 3", "correct the text"],
      ["newer.json", "format:", "update this program"],
      ["nan.json", "loads[0].currentA", "correct it, or remove the field"],
    ] as const) {
      const { code, said, complained, io } = await run(line.replace("{}", file));
      expect(code, file).toBe(2);
      expect(said, file).toBe("");
      expect(complained, file).toContain(place);
      expect(complained, file).toContain(remedy);
      expect(io.files.size, file).toBe(Object.keys(FILES).length);
    }
  });
});

/** Lines that ask for what cannot be: the message holds every one of the words. */
const MISUSED: readonly (readonly [line: string, ...words: string[]])[] = [
  ["solve demo.json --on c1.01@150%", "--on c1.01@150%", "above 0 up to 100 %", "40%"],
  ["solve demo.json --on c1.01@NaN", "c1.01@NaN", "40%"],
  ["solve demo.json --on c9.99", "c9.99", "the record has", "fusebook dim"],
  ["solve bare.json --on c1.01", "c1.01", "no circuits yet"],
  ["solve demo.json --charge 120%", "--charge 120%", "0 to 100 %"],
  ["solve demo.json --state party", "--state party", "all or busy"],
  ["solve demo.json --samples NaN", "--samples NaN", "whole number"],
  ["solve demo.json --samples 10 --seed 1.5", "--seed 1.5", "whole number"],
  ["hours demo.json --reserve=-10%", "--reserve -10%", "0% to 100%"],
  ["hours demo.json --reserve -10%", "--reserve", "begins with a dash", "--reserve=-5"],
  ["hours demo.json --reserve NaN", "--reserve NaN", "0.5"],
  ["hours demo.json --from 150%", "--from 150%", "0% to 100%"],
  ["hours demo.json --battery-temp 500C", "--battery-temp 500C", "-40 C to 70 C"],
  ["hours demo.json --battery-temp cold", "--battery-temp cold", "5C or 40F"],
  ["hours demo.json --profile party", "--profile party", "evening, night, stored"],
  ["hours demo.json --profile none.json", "none.json", "no such file"],
  ["hours demo.json --profile empty-profile.json", "profile mine.spans", "say for how long what is on"],
  ["hours demo.json --profile list-profile.json", "list-profile.json", '"spans"'],
  ["hours demo.json --profile duty-profile.json", "spans[0].on[0].dutyRatio", "got 1.5", "0.5"],
  ["hours demo.json --profile backward-profile.json", "spans[0].hours", "got -2"],
  ["hours demo.json --profile stranger-profile.json", "circuits[0]", "no circuit c9.99"],
  ["hours empty-profile-within.json --profile evening", "endurance.profiles[0].spans", "say for how long"],
  ["dim demo.json c9.99", "c9.99", "modules m1"],
  ["dim bare.json c1.01", "c1.01", "it has no modules"],
  ["dim demo.json c1.01 --as D99", "--as D99", "R8, D8, D12"],
  ["dim demo.json c1.01 --steps 1e3", "--steps 1e3", "2 to 64"],
  ["fuse demo.json", "name one circuit", "--all"],
  ["fuse demo.json c9.99", "c9.99", "the record has"],
  ["fuse demo.json c1.04 --policies moon", "--policies moon", "nec"],
  ["doubt demo.json c9.99", "c9.99"],
  ["doubt demo.json --samples 0", "--samples 0", "10 to 100000"],
  ["doubt demo.json --seed -1", "--seed", "begins with a dash"],
];

describe("a line that asks for what cannot be: 2, one message with the place and what is wanted", () => {
  it.each(MISUSED)("%s", async (line, ...words) => {
    const { code, said, complained } = await run(line);
    expect(code).toBe(2);
    expect(said).toBe("");
    for (const word of words) expect(complained).toContain(word);
    expect(complained.split("\n")).toHaveLength(2);
    expect(complained).toContain("--help shows how");
  });
});

describe("a record with something wrong in it is answered as far as it goes, and the fault is named", () => {
  it("readings that contradict each other: `dim` and `check` name them, and nothing is fitted through them", async () => {
    const dim = await run("dim contradicting.json c1.01");
    expect(dim.said).toMatch(/contradict/i);
    const check = await run("check contradicting.json --json");
    expect(check.said).toContain("load-readings-contradict");
    expect(check.code).toBe(1);
  });

  it("a load with no model: its volts are missing by the field that is wanted, the rest of the coach is solved", async () => {
    const { code, said } = await run("solve no-model.json --json");
    expect(code).toBe(0);
    const { loads, supplies } = JSON.parse(said);
    const own = loads.find((one: Draft) => one.load === "l-saloon-ceiling-fore" || one.id === "l-saloon-ceiling-fore");
    expect(JSON.stringify(own)).toContain("loads[0].currentA");
    expect(supplies[0].currentA.value).toBeGreaterThan(10);
    for (const line of ["dim no-model.json c1.01", "fuse no-model.json c1.01"])
      expect((await run(line)).said).toMatch(/not (known|told)/);
  });

  it("a tolerance wider than its figure: `check` names the field, and no span runs below nothing", async () => {
    const { said } = await run("check wide.json --json");
    const named = JSON.parse(said).findings.filter((one: Draft) => one.code === "tolerance-over-value");
    expect(named.map((one: Draft) => one.subject.path).sort()).toEqual([
      "circuits[0].out.lengthM",
      "circuits[0].return.sectionMm2",
      "loads[0].currentA",
    ]);
    const solved = await run("solve wide.json --on c1.01 --spans");
    expect(solved.code).toBe(0);
    expect(solved.said).not.toMatch(/ -0| -\d/);
  });

  it("a current below nothing: `check` names it, `solve` calls it not on record instead of reckoning with it", async () => {
    expect((await run("check negative.json --json")).said).toContain('"rating-not-positive"');
    expect((await run("solve negative.json --on c1.01")).said).toContain("not on record: the current it draws");
  });

  it("no battery, or a reserve below nothing on the record: 1, with the field and the remedy", async () => {
    for (const [line, ...words] of [
      ["hours no-battery.json", "supplies", "write it down"],
      ["hours negative-reserve.json", "policy.reserveRatio", "wanted 0 to 1, got -0.2"],
      ["hours bare.json", "supplies"],
      ["solve no-battery.json", "not on record: supplies"],
    ] as const) {
      const { code, said, complained } = await run(line);
      expect(code, line).toBe(1);
      for (const word of words) expect(`${said}${complained}`, line).toContain(word);
    }
  });

  it("a picture never replaces a file unless told to", async () => {
    for (const line of ["hours demo.json --svg demo.json", "fuse demo.json c1.04 --svg demo.json"]) {
      const { code, complained, io } = await run(line);
      expect(code, line).toBe(2);
      expect(complained, line).toContain("there is a file already");
      expect(new TextDecoder().decode(io.files.get("demo.json"))).toBe(FILES["demo.json"]);
    }
  });

  it("a picture that cannot be written: 2, the folder that is not there, and to make it", async () => {
    const folder = await mkdtemp(join(tmpdir(), "fusebook-"));
    try {
      const io = memoryIo(FILES);
      const onDisk = { ...io, write: realIo().write };
      const file = join(folder, "nowhere", "picture.svg");
      for (const line of ["hours demo.json --svg", "fuse demo.json c1.04 --svg", "dim demo.json c1.01 --as D8 --svg"]) {
        expect(await runLine([...line.split(" "), file], COMMANDS, onDisk), line).toBe(2);
        expect(io.complained.splice(0).join("\n"), line).toMatch(
          /picture\.svg: not written: there is no folder .*make it first/,
        );
      }
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});
