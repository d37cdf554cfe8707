import { demoBaseRecord, demoRecordText, demoSurveyCsv } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "./commands.js";
import { type MemoryIo, memoryIo } from "./memory-io.js";
import { runLine } from "./run.js";

const run = async (
  line: readonly string[],
  files: Record<string, Uint8Array | string> = {},
): Promise<{ code: number; io: MemoryIo }> => {
  const io = memoryIo(files);
  return { code: await runLine(line, COMMANDS, io), io };
};
const said = (io: MemoryIo): string => io.said.join("\n");
const complained = (io: MemoryIo): string => io.complained.join("\n");

const coach = (more: object): string =>
  JSON.stringify({ format: "fusebook/1", id: "x", coach: { name: "Test coach" }, ...more });

describe("the command line", () => {
  it.each(COMMANDS.map((each) => each.name))("%s --help teaches by example and names the exit codes", async (name) => {
    const { code, io } = await run([name, "--help"]);
    expect(code).toBe(0);
    expect(said(io)).toMatch(new RegExp(`Examples\\n {2}fusebook ${name}`));
    expect(said(io)).toContain("Exit code: 0 fine");
    expect(said(io)).toContain("--json");
  });

  it("lists every command, and leaves licensed work to licensed people", async () => {
    const { code, io } = await run(["--help"]);
    expect(code).toBe(0);
    for (const { name } of COMMANDS) expect(said(io)).toContain(`  ${name} `);
    expect(said(io)).toContain("licensed work");
  });

  it("gives 2 for an unknown command and says which was meant", async () => {
    const { code, io } = await run(["chek"]);
    expect(code).toBe(2);
    expect(complained(io)).toContain("did you mean check");
  });

  it("gives 2 for an unknown option, a missing file and a wrong unit, and points to the help", async () => {
    for (const line of [
      ["check", "a.json", "--sevrity", "stop"],
      ["check", "none.json"],
      ["check", "a.json", "--units", "furlongs"],
      ["check"],
    ]) {
      const { code, io } = await run(line, { "a.json": demoRecordText() });
      expect(code).toBe(2);
      expect(complained(io)).toContain("--help shows how");
    }
  });
});

describe("check", () => {
  it("gives 1 where something is to be mended, 0 where nothing fails at the severity asked", async () => {
    expect((await run(["check", "a.json"], { "a.json": demoRecordText() })).code).toBe(1);
    expect((await run(["check", "a.json", "--severity", "stop"], { "a.json": coach({}) })).code).toBe(0);
  });

  it("gives stable keys with --json", async () => {
    const { io } = await run(["check", "a.json", "--json"], { "a.json": demoRecordText() });
    const answer = JSON.parse(said(io));
    expect(Object.keys(answer)).toEqual(["record", "coach", "counts", "findings"]);
    expect(Object.keys(answer.counts)).toEqual(["stop", "mend", "watch", "note", "open"]);
    for (const key of [
      "code",
      "severity",
      "verdict",
      "subject",
      "parameters",
      "evidence",
      "source",
      "settledBy",
      "words",
    ])
      expect(answer.findings[0]).toHaveProperty(key);
  });
});

describe("import", () => {
  it("writes the record, lists what it could not read, and keeps a file that is there", async () => {
    const files = { "s.csv": demoSurveyCsv(), "base.json": JSON.stringify(demoBaseRecord()) };
    const io = memoryIo(files);
    expect(await runLine(["import", "s.csv", "--into", "base.json", "-o", "c.json"], COMMANDS, io)).toBe(0);
    expect(said(io)).toContain("kept as text");
    expect(said(io)).toContain("18 AGW");
    const before = io.files.get("c.json");
    expect(await runLine(["import", "s.csv", "--into", "base.json", "-o", "c.json"], COMMANDS, io)).toBe(2);
    expect(io.files.get("c.json")).toBe(before);
    expect(await runLine(["import", "s.csv", "-o", "s.csv", "--replace"], COMMANDS, io)).toBe(2);
    expect(complained(io)).toContain("never written over");
  });

  it("shows how it would take each column, and takes the user's word over it", async () => {
    const { io } = await run(["import", "s.csv", "--show-mapping", "--map", "Remarks=unread"], {
      "s.csv": demoSurveyCsv(),
    });
    expect(said(io)).toMatch(/Remarks +unread +100 %/);
    const wrong = await run(["import", "s.csv", "--show-mapping", "--map", "Remarks=colour"], {
      "s.csv": demoSurveyCsv(),
    });
    expect(wrong.code).toBe(2);
    expect(complained(wrong.io)).toContain("there is no field colour");
  });
});

describe("bad records", () => {
  it("refuses a newer format and leaves the file as it is", async () => {
    const text = coach({ format: "fusebook/9" });
    const { code, io } = await run(["check", "a.json"], { "a.json": text });
    expect(code).toBe(2);
    expect(complained(io)).toMatch(/newer program.*nothing was changed/s);
    expect(new TextDecoder().decode(io.files.get("a.json"))).toBe(text);
  });

  it("names every fault by path", async () => {
    const { code, io } = await run(["check", "a.json"], {
      "a.json": coach({ circuits: [{ id: "c1", channel: "two" }, { id: 7 }], loads: "none" }),
    });
    expect(code).toBe(2);
    for (const path of ["circuits[0].channel", "circuits[1].id", "loads"]) expect(complained(io)).toContain(path);
  });

  it("says the line and column of broken JSON", async () => {
    const { code, io } = await run(["check", "a.json"], { "a.json": '{\n  "format": "fusebook/1",\n  oops' });
    expect(code).toBe(2);
    expect(complained(io)).toMatch(/line 3, column 3/);
  });

  it("reports a ring of cables and says what to do", async () => {
    const supplies = [
      {
        id: "s",
        kind: "battery",
        name: "Bank",
        node: "a",
        returnNode: "g",
        openCircuitV: 12.6,
        internalResistanceOhm: 0.01,
      },
    ];
    const nodes = ["a", "b", "c", "g"].map((id) => ({ id, kind: "stud", name: id }));
    const cables = [
      ["a", "b"],
      ["b", "c"],
      ["c", "a"],
    ].map(([from, to], i) => ({ id: `k${i}`, from, to, gauge: "6 AWG", lengthM: 1 }));
    const { io } = await run(["check", "a.json"], { "a.json": coach({ supplies, nodes, cables }) });
    expect(said(io)).toContain("this cable closes a ring");
    expect(said(io)).toContain("each end needs its own fuse");
  });

  it("reports wires of no or negative length as findings, by path", async () => {
    const nodes = ["a", "b", "c"].map((id) => ({ id, kind: "stud", name: id, rail: "positive" }));
    const cables = [
      { id: "k1", from: "a", to: "b", gauge: "6 AWG", lengthM: 1 },
      { id: "k2", from: "b", to: "c", gauge: "6 AWG", lengthM: -1 },
      { id: "k3", from: "c", to: "a", gauge: "6 AWG", lengthM: 0 },
    ];
    const { io } = await run(["check", "a.json", "--json"], { "a.json": coach({ nodes, cables }) });
    const found = JSON.parse(said(io)).findings.map(
      (each: { code: string; subject: { path: string } }) => `${each.code} ${each.subject.path}`,
    );
    expect(found.some((each: string) => each.startsWith("length-not-positive cables[1]"))).toBe(true);
    expect(found.some((each: string) => each.startsWith("length-not-positive cables[2]"))).toBe(true);
  });
});

describe("tables, schema and bank", () => {
  it("lists published tables with how each was seen, and says FROM MEMORY on one that was not", async () => {
    expect(said((await run(["tables"])).io)).toMatch(/cfr183-t5 +seen/);
    expect(said((await run(["tables", "blade-times"])).io)).toContain("FROM MEMORY");
    expect((await run(["tables", "nonsense"])).code).toBe(2);
  });

  it("prints the schema as draft 2020-12", async () => {
    expect(JSON.parse(said((await run(["schema"])).io)).$schema).toContain("2020-12");
  });

  it("sets a bank and reads it back to the same address", async () => {
    const files = { "a.json": demoRecordText() };
    const set = await run(["bank", "a.json", "--kind", "D8", "--address", "9", "--enable", "b1", "--json"], files);
    expect(set.code).toBe(0);
    const { positions } = JSON.parse(said(set.io));
    const read = await run(["bank", "a.json", "--kind", "D8", "--positions", positions.value, "--json"], files);
    const back = JSON.parse(said(read.io));
    expect(back.addresses.value).toEqual([9]);
    expect(back.blocks.value).toEqual(["b1"]);
  });
});
