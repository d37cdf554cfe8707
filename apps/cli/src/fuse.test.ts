import { demoRecordText } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "./commands.js";
import { memoryIo } from "./memory-io.js";
import { runLine } from "./run.js";

const run = async (words: readonly string[], files: Record<string, string> = { "a.json": demoRecordText() }) => {
  const io = memoryIo(files);
  const code = await runLine(["fuse", ...words], COMMANDS, io);
  return { code, io, said: io.said.join("\n"), complained: io.complained.join("\n") };
};

describe("fusebook fuse", () => {
  it("tells one circuit by its label: gates from memory, start, short, conductors, devices before it, limits", async () => {
    const { code, said } = await run(["a.json", "PICTURE LT"]);
    expect(code).toBe(0);
    for (const part of [
      "c1.04 PICTURE LT (Picture lamp): 5 A blade fuse",
      "ISO 8820-3 blade (from memory)",
      "Dead short at the far end",
      "own wire of Picture lamp",
      "not told: needs the opening times on the fuse's own sheet",
      "Limits",
    ])
      expect(said.replace(/\s+/g, " ")).toContain(part);
  });

  it("an unknown circuit is a misuse that names the nearest", async () => {
    const { code, complained } = await run(["a.json", "PICTRE LT"]);
    expect(code).toBe(2);
    expect(complained).toContain("c1.04 (PICTURE LT)");
  });

  it("sets rule books side by side, and names them when one is not known", async () => {
    const { said } = await run(["a.json", "c1.04", "--policies", "nec,marine,road-vehicle"]);
    expect(said).toMatch(/\bnec\b[\s\S]*\bmarine\b[\s\S]*\broad-vehicle\b/);
    const { code, complained } = await run(["a.json", "c1.04", "--policies", "naval"]);
    expect([code, complained]).toEqual([
      2,
      expect.stringContaining("record, nec, marine, marine-bundled, road-vehicle"),
    ]);
  });

  it("--json keeps its keys, and a fuse that need not open has null for its time", async () => {
    const { said } = await run(["a.json", "c1.04", "--json"]);
    const answer = JSON.parse(said);
    expect(Object.keys(answer)).toEqual([
      "record",
      "coach",
      "circuit",
      "label",
      "loads",
      "fuse",
      "load",
      "start",
      "startPasses",
      "short",
      "ends",
      "before",
      "behindFuse",
      "interrupt",
      "limits",
    ]);
    expect(answer.fuse.gates[0]).toMatchObject({ ratio: 1.1, latestS: null });
    expect(answer.interrupt).toEqual({ kind: "missing", needs: ["circuits[3].fuse.interruptA"] });
  });

  it("--svg writes a picture with a title, and keeps a file that is there", async () => {
    const { io } = await run(["a.json", "c1.04", "--svg", "p.svg"]);
    const svg = new TextDecoder().decode(io.files.get("p.svg"));
    expect(svg.startsWith("<svg")).toBe(true);
    expect(svg).toContain("5 A blade fuse of c1.04 PICTURE LT");
    const { code } = await run(["a.json", "c1.04", "--svg", "p.svg"], { "a.json": demoRecordText(), "p.svg": "kept" });
    expect(code).toBe(2);
  });

  it("--all gives every circuit but spares a line; with a circuit named as well it is a misuse", async () => {
    const { said } = await run(["a.json", "--all"]);
    const lines = said.split("\n").filter((line) => /^c[-\d]/.test(line));
    expect(lines).toHaveLength(58);
    expect((await run(["a.json", "c1.04", "--all"])).code).toBe(2);
    expect((await run(["a.json"])).code).toBe(2);
  });

  it("a circuit of which nothing but its name is known says what it needs, and an empty coach says so", async () => {
    const bare = JSON.stringify({
      format: "fusebook/1",
      id: "x",
      coach: { name: "Bare" },
      circuits: [{ id: "c1", label: "LAMP" }],
    });
    const { code, said } = await run(["b.json", "c1"], { "b.json": bare });
    expect(code).toBe(0);
    expect(said).toContain("not told: needs the rating printed on it");
    const empty = JSON.stringify({ format: "fusebook/1", id: "x", coach: { name: "Empty" } });
    expect((await run(["e.json", "--all"], { "e.json": empty })).said).toContain("no circuit on the record yet");
  });

  it("--totals names both states, gives each module its demand, and says where the factors come from", async () => {
    const { code, said } = await run(["a.json", "--totals"]);
    expect(code).toBe(0);
    expect(said).toMatch(/busy evening\s+everything on/);
    expect(said).toContain("Demand factors (common practice, no source): light 0.8");
    // 2.1 + 2.1 + 2 + 1.67 + 0.2 + 0.75 A of lamps, 2.2 A of fans, a 7 A step motor.
    expect(said.replace(/\s+/g, " ")).toContain("18 A connected, demand 16.3 A");
    const answer = JSON.parse((await run(["a.json", "--totals", "--json"])).said);
    expect(answer.states.map((one: { state: string }) => one.state)).toEqual(["busy evening", "everything on"]);
  });
});
