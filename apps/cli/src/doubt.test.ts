import { demoRecordText } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "./commands.js";
import { memoryIo } from "./memory-io.js";
import { runLine } from "./run.js";

const run = async (...words: string[]) => {
  const io = memoryIo({ "a.json": demoRecordText() });
  const code = await runLine(["doubt", "a.json", ...words], COMMANDS, io);
  return { code, io, said: io.said.join("\n"), complained: io.complained.join("\n") };
};

describe("fusebook doubt", () => {
  it("gives a whole coach a short ranked list: minutes, instrument, what, where", async () => {
    const { code, said } = await run("--samples", "200");
    expect(code).toBe(0);
    expect(said).toContain("Marsh Wren (invented)");
    const lines = said.split("\n");
    const first = lines.findIndex((line) => /^\s*1 {2}/.test(line));
    expect(lines[first]).toMatch(/\d+ min {2}(clamp meter|look|tape measure|ohmmeter|voltmeter)/);
    expect(lines.filter((line) => /^\s*\d+ {2}.* min {2}/.test(line)).length).toBeLessThanOrEqual(12);
  }, 120_000);

  it("gives one circuit the whole arithmetic, by label as by id, in seconds", async () => {
    const byId = await run("c-f17");
    expect(byId.said).toMatch(/exact span .* 5 % \/ half \/ 95 % below/);
    expect(byId.said).toMatch(/min to open \+ \d+ min to read = \d+ min/);
    expect(byId.said).toMatch(/width of the margin .* after = .* less/);
    expect(byId.said).toMatch(/chance that it settles it/);
    expect((await run("perch")).said).toBe(byId.said);
    // The load alone has the drop, and not the fuse of its circuit.
    const load = (await run("Perch heater")).said;
    expect([load.includes("[drop-over-limit]"), load.includes("[load-over-fuse]")]).toEqual([true, false]);
  }, 120_000);

  it("gives the same as data under stable keys, the same for the same seed", async () => {
    const told = await run("c-f17", "--json", "--seed", "4", "--samples", "100");
    const data = JSON.parse(told.said);
    expect(Object.keys(data)).toEqual(["record", "coach", "seed", "samples", "only", "doubts", "next"]);
    expect(data).toMatchObject({ seed: 4, samples: 100, only: ["c-f17"] });
    expect(data.doubts[0]).toMatchObject({ kind: "compared", code: "load-over-fuse", sense: "at-most", unit: "A" });
    expect(data.doubts[0].readings[0]).toMatchObject({ path: "loads[56].powerW", instrument: "clamp meter" });
    expect(data.next[0].verdicts.length).toBeGreaterThan(0);
    expect((await run("c-f17", "--json", "--seed", "4", "--samples", "100")).said).toBe(told.said);
  }, 120_000);

  it("draws it, and says no where there is nothing to draw", async () => {
    const { code, io } = await run("c-f17", "--samples", "100", "--svg", "doubt.svg");
    expect(code).toBe(0);
    expect(new TextDecoder().decode(io.files.get("doubt.svg"))).toMatch(/^<svg|^<\?xml/);
    const none = await run("s-house", "--svg", "x.svg");
    expect(none.code).toBe(2);
  }, 120_000);

  it("names what it does not know, with the nearest, and what a number must be", async () => {
    const wrong = await run("c-f71");
    expect(wrong.code).toBe(2);
    expect(wrong.complained).toMatch(/called "c-f71".*nearest: .*c-f/);
    expect((await run("--seed", "x")).complained).toContain("--seed x: a whole number");
    expect((await run("--samples", "3")).complained).toContain("from 10 to 100000");
  }, 120_000);
});
