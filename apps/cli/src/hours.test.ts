import { demoRecord, demoRecordText } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "./commands.js";
import { memoryIo } from "./memory-io.js";
import { runLine } from "./run.js";

async function run(line: string, files: Readonly<Record<string, string>> = {}) {
  const io = memoryIo({ "coach.json": demoRecordText(), ...files });
  const code = await runLine(line.trim().split(" "), COMMANDS, io);
  return { code, out: io.said.join("\n"), err: io.complained.join("\n"), files: io.files };
}

const profile = (spans: unknown) => JSON.stringify({ id: "mine", spans });

describe("fusebook hours", () => {
  it("tells the night on battery with its least and most, what takes it, the parasitic draw, and marks what is from memory", async () => {
    const { code, out } = await run("hours coach.json");
    expect(code).toBe(0);
    expect(out).toMatch(/Marsh Wren \(invented\): night, dusk to morning, keeping 50 % \(common practice, no source\)/);
    expect(out).toMatch(/as it is +[\d.]+ h +[\d.]+ h +[\d.]+ h +(open|yes|no)/);
    expect(out).toContain("Module 1, wiring bay");
    expect(out).toMatch(/FROM MEMORY/);
    expect(out).toMatch(/flat in \d+ days/);
  });

  it("shows a gain after a plan that dims, and writes the picture", async () => {
    const { code, out, files } = await run("hours coach.json --plan most-light --svg charge.svg");
    expect(code).toBe(0);
    expect(out).toMatch(/The plan gives [\d.]+ (min|h) more; \d+ more circuits are dimmed/);
    const svg = new TextDecoder().decode(files.get("charge.svg"));
    expect(svg).toMatch(/^<svg /);
    expect(svg).toContain("after plan p-");
  });

  it("--json has stable keys, no map and no infinity in it", async () => {
    const { code, out } = await run("hours coach.json --profile stored --json");
    expect(code).toBe(0);
    const told = JSON.parse(out);
    expect(Object.keys(told)).toEqual(["record", "before", "plan", "after", "gainHours", "parasitic"]);
    expect(told.plan).toBeNull();
    expect(told.before.value.hours.span.lo).toBeLessThanOrEqual(told.before.value.hours.nominal);
    expect(told.before.value.energy[0]).toHaveProperty("onceAh");
    expect(told.parasitic.value.hoursToFlat.nominal).toBeGreaterThan(0);
    expect(typeof told.before.value.dimmed).toBe("object");
  });

  it("--reserve, --from, --battery-temp are read as people write them and move the hours the right way", async () => {
    const hours = async (more: string) =>
      JSON.parse((await run(`hours coach.json --profile evening --json ${more}`)).out).before.value.hours.nominal;
    const plain = await hours("--from 100% --battery-temp 25C");
    expect(await hours("--from 1 --battery-temp 77F")).toBeCloseTo(plain, 2);
    expect(await hours("--from 100% --battery-temp 25C --reserve 80%")).toBeLessThan(plain);
    expect(await hours("--from 80% --battery-temp 25C")).toBeLessThan(plain);
    expect(await hours("--from 100% --battery-temp=-10C")).toBeLessThan(plain);
  });

  it("--sun counts what the record states and says so; it never lowers the hours", async () => {
    const hours = async (more: string) => JSON.parse((await run(`hours coach.json --json ${more}`)).out).before.value;
    const [without, withSun] = [await hours(""), await hours("--sun")];
    expect(withSun.sunCounted).toEqual(["s-solar"]);
    expect(withSun.hours.nominal).toBeGreaterThanOrEqual(without.hours.nominal);
    expect(withSun.hours.span.lo).toBe(without.hours.span.lo);
  });

  it.each([
    ["--profile nacht", {}, /--profile nacht: wanted evening, night, stored, or a file/],
    ["--profile p.json", { "p.json": profile([]) }, /profile mine\.spans: wanted one span of hours or more, got none/],
    [
      "--profile p.json",
      { "p.json": profile([{ hours: 2, on: [{ circuits: ["c9.99"] }] }]) },
      /spans\[0\]\.on\[0\]\.circuits\[0\]: the coach has no circuit c9\.99; take it out or write the circuit down/,
    ],
    [
      "--profile p.json",
      { "p.json": profile([{ hours: 0, on: [] }]) },
      /spans\[0\]\.hours: wanted more than 0 hours, got 0/,
    ],
    ["--profile p.json", { "p.json": "{" }, /p\.json: not JSON/],
    ["--profile p.json", { "p.json": '{"id":"x"}' }, /p\.json is not a profile: spans/],
    ["--reserve 150%", {}, /--reserve 150%: wanted 0 to 1 or 0% to 100%/],
    ["--reserve half", {}, /--reserve half: wanted 0 to 1/],
    ["--battery-temp 5", {}, /--battery-temp 5: wanted a temperature with its unit/],
    ["--plan nothing", {}, /wanted .*or the id of a plan/],
  ] as const)("misuse %s is exit 2 and names the place and the remedy", async (line, files, says) => {
    const { code, err } = await run(`hours coach.json ${line}`, files);
    expect(code).toBe(2);
    expect(err).toMatch(says);
  });

  it("a battery of unknown capacity, or one below nothing, is an answer that cannot be given: exit 1, by path, with what to do", async () => {
    const coach = structuredClone(demoRecord());
    delete coach.supplies![0]!.capacityAh;
    const missing = await run("hours thin.json", { "thin.json": JSON.stringify(coach) });
    expect(missing.code).toBe(1);
    expect(missing.err).toMatch(/the record lacks supplies\[0\]\.capacityAh; write it down from the battery's label/);
    coach.supplies![0]!.capacityAh = 0;
    const zero = await run("hours thin.json", { "thin.json": JSON.stringify(coach) });
    expect(zero.code).toBe(1);
    expect(zero.err).toMatch(/supplies\[0\]\.capacityAh: wanted more than 0 Ah, got 0/);
  });
});
