import { importSurvey, proposeMapping } from "@fusebook/core/record";
import { unzipSync, zipSync } from "fflate";
import readXlsxFile from "read-excel-file/universal";
import { describe, expect, it } from "vitest";
import { gridFrom, isRefused, row, text, textsOf, workbook } from "../testing/sample-files.js";
import { readGrid } from "./index.js";

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

  it("with one bit of a figure turned: refused by its check sum, never read as another figure", async () => {
    const whole = zipSync(unzipSync(workbook([{ name: "Survey", data: SHEET }])), { level: 0 });
    const at = new TextDecoder("latin1").decode(whole).indexOf("<v>7.5</v>") + 3;
    expect(whole[at]).toBe("7".charCodeAt(0));
    const turned = whole.slice();
    turned[at] = "3".charCodeAt(0);
    expect(textsOf(await gridFrom(whole, "s.xlsx"))[0]?.[2]).toBe("7.5");
    isRefused(await readGrid(turned, "s.xlsx"), "workbook-broken", "s.xlsx", "save it again");
  });

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
