import { importSurvey, proposeMapping } from "@fusebook/core/record";
import { strToU8, zipSync } from "fflate";
import readXlsxFile from "read-excel-file/universal";
import { describe, expect, it } from "vitest";
import { type GridOutcome, readGrid, readPasted } from "./index.js";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';

interface MadeSheet {
  readonly name: string;
  readonly data: string;
  readonly after?: string;
  readonly state?: string;
}

/** A small but whole workbook; `more` are further parts, or parts put in place of ours. */
const workbook = (sheets: readonly MadeSheet[], more: Record<string, string | Uint8Array> = {}): Uint8Array => {
  const parts: Record<string, string | Uint8Array> = {
    "[Content_Types].xml": `${XML}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    "_rels/.rels": `${XML}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `${XML}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets>${sheets
      .map(
        (sheet, i) =>
          `<sheet name="${sheet.name}" sheetId="${i + 1}"${sheet.state ? ` state="${sheet.state}"` : ""} r:id="rId${i + 1}"/>`,
      )
      .join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `${XML}<Relationships xmlns="${PACKAGE}/relationships">${sheets
      .map(
        (_, i) =>
          `<Relationship Id="rId${i + 1}" Type="${RELATIONS}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
      )
      .join(
        "",
      )}<Relationship Id="rId90" Type="${RELATIONS}/styles" Target="styles.xml"/><Relationship Id="rId91" Type="${RELATIONS}/sharedStrings" Target="sharedStrings.xml"/></Relationships>`,
    "xl/styles.xml": `${XML}<styleSheet xmlns="${MAIN}"><numFmts count="2"><numFmt numFmtId="164" formatCode="0.0&quot; A&quot;"/><numFmt numFmtId="165" formatCode="yyyy\\-mm\\-dd"/></numFmts><cellXfs count="4"><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="9"/></cellXfs></styleSheet>`,
    "xl/sharedStrings.xml": `${XML}<sst xmlns="${MAIN}"><si><t>Ckt</t></si><si><r><t>Lo</t></r><r><t>ad</t></r></si><si><t>caf&#233; &amp; bar lamps</t></si></sst>`,
    ...more,
  };
  sheets.forEach((sheet, i) => {
    parts[`xl/worksheets/sheet${i + 1}.xml`] ??=
      `${XML}<worksheet xmlns="${MAIN}"><sheetData>${sheet.data}</sheetData>${sheet.after ?? ""}</worksheet>`;
  });
  return zipSync(
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]),
    ),
  );
};

const text = (place: string, words: string) => `<c r="${place}" t="inlineStr"><is><t>${words}</t></is></c>`;
const row = (number: number, ...cells: string[]) => `<row r="${number}">${cells.join("")}</row>`;

const gridFrom = async (bytes: Uint8Array, name: string) => {
  const outcome = await readGrid(bytes, name);
  if (outcome.kind === "refused") throw new Error(JSON.stringify(outcome.faults));
  return outcome.grid;
};
const textsOf = (grid: { readonly rows: readonly (readonly { readonly text: string }[])[] }) =>
  grid.rows.map((cells) => cells.map((cell) => cell.text));

/** A refusal with a place, what is wanted and what to do. */
const isRefused = (outcome: GridOutcome, code: string, place: string, remedy: string) => {
  expect(outcome.kind).toBe("refused");
  if (outcome.kind !== "refused") return;
  expect(outcome.faults).toHaveLength(1);
  expect(outcome.faults[0]).toMatchObject({ code, place });
  expect(outcome.faults[0]?.message).toContain(remedy);
};

const CSV = 'Ckt,Load,Amps\r\n3-01,water pump,7.5\r\n3-02,"fan, bath",1.2\r\n';
const ROWS = [
  ["3-01", "water pump", "7.5"],
  ["3-02", "fan, bath", "1.2"],
];
const utf16 = (words: string, isLittle: boolean, hasMark: boolean): Uint8Array => {
  const codes = [...(hasMark ? "\uFEFF" : ""), ...words].map((letter) => letter.charCodeAt(0));
  return new Uint8Array(codes.flatMap((code) => (isLittle ? [code & 255, code >> 8] : [code >> 8, code & 255])));
};

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

describe("workbooks", () => {
  const SHEET = [
    row(1, '<c r="A1" t="s"><v>0</v></c>', '<c r="B1" t="s"><v>1</v></c>', text("C1", "Amps")),
    row(2, text("A2", "3-01"), '<c r="B2" t="s"><v>2</v></c>', '<c r="C2"><v>7.5</v></c>'),
  ].join("");

  it("reads shared and inline strings and numbers, with cell names as places", async () => {
    const grid = await gridFrom(workbook([{ name: "Survey", data: SHEET }]), "s.xlsx");
    expect(grid.headings).toEqual(["Ckt", "Load", "Amps"]);
    expect(textsOf(grid)).toEqual([["3-01", "café & bar lamps", "7.5"]]);
    expect(grid.rows[0]?.[2]?.place).toBe("C2");
    expect(grid.warnings).toEqual([]);
  });

  it("agrees with a general-purpose workbook reader on what the cells hold", async () => {
    const bytes = workbook([{ name: "Survey", data: SHEET }]);
    const sheets = await readXlsxFile(bytes.slice().buffer as ArrayBuffer);
    const grid = await gridFrom(bytes, "s.xlsx");
    expect([grid.headings, ...textsOf(grid)]).toEqual(
      sheets[0]?.data.map((cells) => cells.map((cell) => String(cell))),
    );
  });

  it("keeps the sign that a number's format shows, dates as dates, and per cent", async () => {
    const data =
      row(1, text("A1", "Ckt"), text("B1", "Amps"), text("C1", "Checked"), text("D1", "Duty")) +
      row(
        2,
        text("A2", "1-1"),
        '<c r="B2" s="1"><v>7.5</v></c>',
        '<c r="C2" s="2"><v>46144</v></c>',
        '<c r="D2" s="3"><v>0.35</v></c>',
      );
    // 46144 days after 1899-12-30 is 2026-05-02.
    expect(textsOf(await gridFrom(workbook([{ name: "S", data }]), "s.xlsx"))).toEqual([
      ["1-1", "7.5 A", "2026-05-02", "35%"],
    ]);
  });

  it.each([20, 60, 200, 400, 900])(
    "cut short by %i bytes: refused with place and remedy, never a crash",
    async (bytes) => {
      const whole = workbook([{ name: "Survey", data: SHEET }]);
      isRefused(
        await readGrid(whole.slice(0, whole.length - bytes), "cut.xlsx"),
        "workbook-broken",
        "cut.xlsx",
        "save it again, or save the sheet as CSV",
      );
    },
  );

  it("with a sheet that is no XML: refused with remedy", async () => {
    const bytes = workbook([{ name: "S", data: "" }], {
      "xl/worksheets/sheet1.xml": '<worksheet><sheetData><row r="1"><c',
    });
    const outcome = await readGrid(bytes, "s.xlsx");
    expect(outcome.kind).toBe("refused");
    expect(outcome.kind === "refused" ? outcome.faults[0]?.message : "").toMatch(/save|check/);
  });

  it("fills merged header cells: a group above its columns, a heading down over two rows; each is told", async () => {
    const data = [
      row(1, text("A1", "Ckt"), text("B1", "Wire"), text("D1", "Load")),
      row(2, text("B2", "AWG"), text("C2", "Length (ft)"), text("D2", "Name"), text("E2", "Amps")),
      row(3, text("A3", "3-01"), text("B3", "14"), text("C3", "18"), text("D3", "pump"), text("E3", "7")),
    ].join("");
    const after = '<mergeCells><mergeCell ref="A1:A2"/><mergeCell ref="B1:C1"/><mergeCell ref="D1:E1"/></mergeCells>';
    const grid = await gridFrom(workbook([{ name: "S", data, after }]), "s.xlsx");
    expect(grid.headings).toEqual(["Ckt", "Wire AWG", "Wire Length (ft)", "Load Name", "Load Amps"]);
    expect(grid.headingRow).toBe(2);
    expect(grid.warnings.map((item) => [item.place, item.code])).toEqual([
      ["A1:A2", "merged-cells"],
      ["B1:C1", "merged-cells"],
      ["D1:E1", "merged-cells"],
    ]);
    expect(grid.warnings[0]?.message).toContain("unmerge them if that is wrong");
    expect(proposeMapping(grid).map((column) => column.field)).toEqual([
      "circuit",
      "gauge",
      "length",
      "loads",
      "currentA",
    ]);
  });

  it("fills a module merged down over its rows, and leaves a word merged across a row in its own column", async () => {
    const data = [
      row(1, text("A1", "Mod"), text("B1", "Ch"), text("C1", "Label"), text("D1", "Load")),
      row(2, text("A2", "3"), text("B2", "1"), text("C2", "SPARE")),
      row(3, text("B3", "2"), text("C3", "PUMP"), text("D3", "pump")),
    ].join("");
    const after = '<mergeCells><mergeCell ref="A2:A3"/><mergeCell ref="C2:D2"/></mergeCells>';
    const grid = await gridFrom(workbook([{ name: "S", data, after }]), "s.xlsx");
    expect(textsOf(grid)).toEqual([
      ["3", "1", "SPARE", ""],
      ["3", "2", "PUMP", "pump"],
    ]);
  });

  it("a merge over the whole sheet costs nothing", async () => {
    const data = row(1, text("A1", "Ckt"), text("B1", "Load")) + row(2, text("A2", "1-1"), text("B2", "pump"));
    const after = '<mergeCells><mergeCell ref="A2:XFD1048576"/></mergeCells>';
    expect((await gridFrom(workbook([{ name: "S", data, after }]), "s.xlsx")).rows).toHaveLength(1);
  });

  it("uses the value kept beside a formula and tells; a formula without one, or with an error, is unread with its place and remedy", async () => {
    const data = [
      row(1, text("A1", "Ckt"), text("B1", "Load"), text("C1", "Amps")),
      row(2, text("A2", "1-1"), text("B2", "pump"), '<c r="C2"><f>3+4.5</f><v>7.5</v></c>'),
      row(3, text("A3", "1-2"), text("B3", "fan"), '<c r="C3"><f>C2*2</f></c>'),
      row(4, text("A4", "1-3"), text("B4", "lamp"), '<c r="C4" t="e"><f>1/0</f><v>#DIV/0!</v></c>'),
      row(5, text("A5", "1-4"), text("B5", "TV"), '<c r="C5" t="str"><f>""</f><v></v></c>'),
    ].join("");
    const grid = await gridFrom(workbook([{ name: "S", data }]), "s.xlsx");
    expect(grid.rows[0]?.[2]).toEqual({ text: "7.5", formula: "=3+4.5", place: "C2" });
    expect(grid.warnings.map((item) => [item.place, item.code])).toEqual([
      ["C3", "formula-without-value"],
      ["C4", "formula-error"],
      ["C2", "formulas"],
    ]);
    expect(grid.warnings[0]?.message).toContain("type its value, or open and save the file in a spreadsheet program");
    const { record, report } = importSurvey(undefined, grid, proposeMapping(grid));
    expect(record.loads?.map((load) => load.currentA)).toEqual([7.5, undefined, undefined, undefined]);
    expect(report.unread.map(({ place, text: words, code }) => [place, words, code])).toEqual([
      ["C3", "=C2*2", "formula"],
      ["C4", "#DIV/0!", "formula"],
    ]);
  });

  it("takes the sheet most like a survey, not the longest, and tells; hidden sheets are left out", async () => {
    const prices = Array.from({ length: 60 }, (_, i) =>
      row(i + 1, text(`A${i + 1}`, `part ${i}`), `<c r="B${i + 1}"><v>${i}</v></c>`),
    ).join("");
    const grid = await gridFrom(
      workbook([
        { name: "Prices", data: prices },
        { name: "Circuits", data: SHEET },
        { name: "Old", data: SHEET + SHEET.replaceAll('r="2"', 'r="3"'), state: "hidden" },
      ]),
      "s.xlsx",
    );
    expect(grid.sheet).toBe("Circuits");
    expect(grid.warnings[0]).toMatchObject({ place: "Circuits", code: "several-sheets" });
    expect(grid.warnings[0]?.message).toContain('"Prices", "Circuits", "Old"');
  });

  it("a filled cell far past the table: refused with its name and remedy; a styled empty one costs nothing", async () => {
    const far = (cell: string) => workbook([{ name: "S", data: SHEET + row(1_048_576, cell) }]);
    isRefused(
      await readGrid(far(text("XFD1048576", "x")), "s.xlsx"),
      "too-far",
      "s.xlsx, sheet S, cell XFD1048576",
      "clear the cells past the table",
    );
    expect((await gridFrom(far('<c r="XFD1048576" s="1"/>'), "s.xlsx")).rows).toHaveLength(1);
  });

  /** The workbook with the declared unpacked size of one part changed: local header (offset 22) and central directory (offset 24). */
  const declaring = (bytes: Uint8Array, size: number, declared: number): Uint8Array => {
    const forged = bytes.slice();
    const view = new DataView(forged.buffer);
    for (let at = 0; at + 46 < forged.length; at += 1) {
      const sign = view.getUint32(at, true);
      if (sign === 0x04034b50 && view.getUint32(at + 22, true) === size) view.setUint32(at + 22, declared, true);
      if (sign === 0x02014b50 && view.getUint32(at + 24, true) === size) view.setUint32(at + 24, declared, true);
    }
    return forged;
  };
  const PART = 5_000_000;
  const packed = workbook([{ name: "S", data: SHEET }], { "xl/sharedStrings.xml": new Uint8Array(PART) });

  it.each([
    ["declares 300 MB", declaring(packed, PART, 300 * 1024 * 1024)],
    ["packs 1,000 to 1, as no sheet does", packed],
  ])("an archive that %s: refused before it is unpacked", async (_, bytes) => {
    isRefused(await readGrid(bytes, "bomb.xlsx"), "workbook-too-big", "bomb.xlsx", "save only the survey's sheet");
  });

  it("an archive that declares less than it unpacks to: never given more room than it declares", async () => {
    isRefused(
      await readGrid(declaring(packed, PART, 1000), "liar.xlsx"),
      "workbook-broken",
      "liar.xlsx",
      "save it again",
    );
  });
});

describe("large surveys", () => {
  const line = (i: number) => [`${Math.floor(i / 8) + 1}-${(i % 8) + 1}`, `lamp ${i}`, "0.8", "14 AWG", "18"];
  const HEADINGS = ["Ckt", "Load", "Amps", "Wire", "Length (ft)"];

  it("100,000 rows of CSV are read, and become 100,000 circuits, in bounded time", async () => {
    const csv = [HEADINGS, ...Array.from({ length: 100_000 }, (_, i) => line(i))]
      .map((cells) => cells.join(","))
      .join("\n");
    const grid = await gridFrom(strToU8(csv), "long.csv");
    expect(grid.rows).toHaveLength(100_000);
    const { record, report } = importSurvey(undefined, grid, proposeMapping(grid));
    expect(record.circuits).toHaveLength(100_000);
    expect(report.unread).toEqual([]);
  });

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
