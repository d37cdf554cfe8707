import { importSurvey, proposeMapping } from "@fusebook/core/record";
import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { CSV, gridFrom, isRefused, ROWS, row, text, textsOf, utf16, workbook } from "../testing/sample-files.js";
import { readGrid, readPasted } from "./index.js";

describe("text files as people save them", () => {
  it.each([
    ["UTF-8", strToU8(CSV)],
    ["UTF-8 with a byte-order mark", strToU8(`\uFEFF${CSV}`)],
    ["UTF-16 little end first, marked", utf16(CSV, true, true)],
    ["UTF-16 big end first, marked", utf16(CSV, false, true)],
    ["UTF-16 little end first, unmarked", utf16(CSV, true, false)],
    ["UTF-16 big end first, unmarked", utf16(CSV, false, false)],
    ["semicolons", strToU8(CSV.replace('"fan, bath"', "X").replaceAll(",", ";").replace("X", "fan, bath"))],
    ["tabs", strToU8(CSV.replace('"fan, bath"', "X").replaceAll(",", "\t").replace("X", "fan, bath"))],
    ["bars", strToU8(CSV.replace('"fan, bath"', "X").replaceAll(",", "|").replace("X", "fan, bath"))],
    ["old line ends", strToU8(CSV.replaceAll("\r\n", "\r"))],
  ])("%s: the same rows, with headings in line 1", async (_, bytes) => {
    const grid = await gridFrom(bytes, "survey.csv");
    expect(grid.headings).toEqual(["Ckt", "Load", "Amps"]);
    expect(grid.headingRow).toBe(1);
    expect(textsOf(grid)).toEqual(ROWS);
    expect(grid.rows[1]?.[2]?.place).toBe("line 3, column 3");
    expect(grid.warnings).toEqual([]);
  });

  it("reads Windows-1252 where UTF-8 does not fit, and warns", async () => {
    const grid = await gridFrom(
      new Uint8Array([...strToU8("Ckt,Load\n1-1,caf"), 0xe9, ...strToU8(" lamp\n")]),
      "s.csv",
    );
    expect(textsOf(grid)).toEqual([["1-1", "café lamp"]]);
    expect(grid.warnings.map((item) => [item.place, item.code])).toEqual([["s.csv", "encoding-guessed"]]);
    expect(grid.warnings[0]?.message).toContain("check letters with accents");
  });

  it("takes semicolons with decimal commas for what they are, through to the record", async () => {
    const grid = await gridFrom(strToU8("Ckt;Load;Amps;Length (m)\n1-1;pump;7,5;4,25\n1-2;lamp;0,35;10,5\n"), "s.csv");
    expect(grid.decimalSign).toBe(",");
    const { record, report } = importSurvey(undefined, grid, proposeMapping(grid));
    expect(record.loads?.map((load) => load.currentA)).toEqual([7.5, 0.35]);
    expect(record.circuits?.map((circuit) => circuit.out?.lengthM)).toEqual([4.25, 10.5]);
    expect(report.unread).toEqual([]);
  });

  it("keeps line breaks inside quotes, and still counts lines", async () => {
    const grid = await gridFrom(strToU8('Ckt,Notes\n1-1,"one\ntwo"\n1-2,three\n'), "s.csv");
    expect(textsOf(grid)).toEqual([
      ["1-1", "one\ntwo"],
      ["1-2", "three"],
    ]);
    expect(grid.rows[1]?.[0]?.place).toBe("line 4, column 1");
  });

  it("finds headings under title lines, skips blank lines, and keeps the titles", async () => {
    const grid = await gridFrom(strToU8("My coach\n\nwalked in May,,\nCkt,Load,Amps\n\n1-1,pump,7\n"), "s.csv");
    expect(grid.headingRow).toBe(4);
    expect(grid.above.map((cell) => [cell.text, cell.place])).toEqual([
      ["My coach", "line 1, column 1"],
      ["walked in May", "line 3, column 1"],
    ]);
    expect(textsOf(grid)).toEqual([["1-1", "pump", "7"]]);
  });

  it("says so where there are no headings, and judges columns by their cells", async () => {
    const grid = await gridFrom(strToU8("1-1,15A,14 AWG,pump\n1-2,10A,16 AWG,bath fan\n"), "s.csv");
    expect(grid.headingRow).toBeUndefined();
    expect(grid.warnings.map((item) => item.code)).toEqual(["no-headings"]);
    expect(proposeMapping(grid).map((column) => column.field)).toEqual(["circuit", "fuseA", "gauge", "loads"]);
  });

  it("gives a second heading of the same name its own", async () => {
    const grid = await gridFrom(strToU8("Ckt,Load,Amps,Notes,Amps\n1-1,pump,7,x,8\n"), "s.csv");
    expect(grid.headings).toEqual(["Ckt", "Load", "Amps", "Notes", "Amps (2)"]);
  });

  it("tells of a quote that is never closed, with its line", async () => {
    const grid = await gridFrom(strToU8('Ckt,Load\n1-1,pump\n1-2,"5" pipe fan\n'), "s.csv");
    expect(grid.warnings.map((item) => [item.place, item.code])).toContainEqual(["line 3", "csv-quotes"]);
  });

  it("reads pasted cells, and says what to do where nothing was pasted", () => {
    const outcome = readPasted("Ckt\tLoad\n1-1\tpump\n");
    expect(outcome.kind === "grid" ? textsOf(outcome.grid) : []).toEqual([["1-1", "pump"]]);
    isRefused(readPasted("  \n"), "empty-file", "pasted text", "copy the rows with their headings");
  });

  it("keeps formula-looking text as text, from file to record", async () => {
    const grid = await gridFrom(strToU8('Ckt,Load,Notes\n1-1,=1+1,"=HYPERLINK(""http://x"",""y"")"\n'), "s.csv");
    const { record } = importSurvey(undefined, grid, proposeMapping(grid));
    expect(record.loads?.[0]?.name).toBe("=1+1");
    expect(record.circuits?.[0]?.notes).toBe('=HYPERLINK("http://x","y")');
  });
});

describe("files that are no survey are refused with what to do", () => {
  it.each([
    ["an empty file", new Uint8Array(), "empty-file", "check that it was saved"],
    ["blank lines only", strToU8("\n\n , \n"), "no-rows", "check that the right file was saved"],
    [
      "an old or locked workbook",
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
      "old-or-locked-workbook",
      "save it as XLSX without a password",
    ],
    ["a PDF", strToU8("%PDF-1.7 ..."), "pdf", "save the table as CSV or XLSX"],
    ["a picture", new Uint8Array([0x89, 0x50, 0x4e, 0x47]), "picture", "keep the picture as a photo"],
    [
      "bytes that are no text",
      new Uint8Array([1, 0, 0, 0, 2, 0, 0, 0, 65, 0, 0, 7]),
      "not-text",
      "save the survey as CSV or XLSX",
    ],
    ["a record", strToU8('{ "format": "fusebook/1", "id": "x" }'), "a-record", "open it as the record"],
    ["a web page", strToU8("<html><table></table></html>"), "a-web-page", "save it as XLSX or CSV"],
    [
      "a zip archive of something else",
      zipSync({ "a.txt": strToU8("a") }),
      "no-sheet",
      "save the survey as XLSX or CSV",
    ],
    [
      "an open-document sheet",
      zipSync({ mimetype: strToU8("x"), "content.xml": strToU8("<x/>") }),
      "other-workbook",
      "save the sheet as XLSX or CSV",
    ],
  ])("%s", async (_, bytes, code, remedy) => {
    isRefused(await readGrid(bytes, "folder/the file"), code, "the file", remedy);
  });

  it("a file above 64 MB, before anything of it is read", async () => {
    isRefused(
      await readGrid(new Uint8Array(64 * 1024 * 1024 + 1), "big.csv"),
      "file-too-big",
      "big.csv",
      "keep one coach to a file",
    );
  });

  it("more than 200,000 rows, and more than 256 columns", async () => {
    isRefused(
      await readGrid(strToU8(`Ckt,Load\n${"1-1,x\n".repeat(200_001)}`), "s.csv"),
      "too-many-rows",
      "s.csv",
      "keep one coach to a file",
    );
    isRefused(
      await readGrid(strToU8(`${"h,".repeat(300)}h\n`), "s.csv"),
      "too-many-columns",
      "s.csv",
      "one row a circuit",
    );
  });
});

/** About 10 s of one core, measured; the bound leaves room for a busy machine. */
const BOUND_MS = 180_000;

describe("large surveys", () => {
  const line = (i: number) => [`${Math.floor(i / 8) + 1}-${(i % 8) + 1}`, `lamp ${i}`, "0.8", "14 AWG", "18"];
  const HEADINGS = ["Ckt", "Load", "Amps", "Wire", "Length (ft)"];

  it(
    "100,000 rows of CSV are read, and become 100,000 circuits, in bounded time",
    async () => {
      const csv = [HEADINGS, ...Array.from({ length: 100_000 }, (_, i) => line(i))]
        .map((cells) => cells.join(","))
        .join("\n");
      const grid = await gridFrom(strToU8(csv), "long.csv");
      expect(grid.rows).toHaveLength(100_000);
      const { record, report } = importSurvey(undefined, grid, proposeMapping(grid));
      expect(record.circuits).toHaveLength(100_000);
      expect(report.unread).toEqual([]);
    },
    BOUND_MS,
  );

  it("100,000 rows of a workbook are read", async () => {
    const rows = Array.from({ length: 100_000 }, (_, i) => {
      const [key = "", load = "", amps = "", wire = "", length = ""] = line(i);
      const at = i + 2;
      return row(
        at,
        text(`A${at}`, key),
        text(`B${at}`, load),
        `<c r="C${at}"><v>${amps}</v></c>`,
        text(`D${at}`, wire),
        `<c r="E${at}"><v>${length}</v></c>`,
      );
    });
    const headings = row(1, ...HEADINGS.map((heading, i) => text(`${"ABCDE"[i]}1`, heading)));
    const grid = await gridFrom(workbook([{ name: "S", data: headings + rows.join("") }]), "long.xlsx");
    expect(grid.rows).toHaveLength(100_000);
    expect(grid.rows[99_999]?.[1]).toEqual({ text: "lamp 99999", place: "B100001" });
  });

  it("a 50 MB CSV of long notes is read", async () => {
    const notes = "n".repeat(5_000);
    const csv = `Ckt,Notes\n${Array.from({ length: 10_500 }, (_, i) => `${Math.floor(i / 8) + 1}-${(i % 8) + 1},${notes}`).join("\n")}`;
    const bytes = strToU8(csv);
    expect(bytes.length).toBeGreaterThan(50 * 1024 * 1024);
    expect((await gridFrom(bytes, "fat.csv")).rows).toHaveLength(10_500);
  });
});
