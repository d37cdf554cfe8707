import { describe, expect, it } from "vitest";
import { readRecord } from "../read.js";
import { HEADINGS, imported, ROW } from "./sample-grid.js";

describe("importing a survey", () => {
  it("fills circuit, module, load and place from one row", () => {
    const { record, report } = imported([HEADINGS, ROW]);
    expect(record.modules).toEqual([{ id: "m3", name: "Mod 3" }]);
    expect(record.places).toEqual([{ id: "p-galley", name: "Galley" }]);
    expect(record.circuits).toEqual([
      {
        id: "c3.07",
        module: "m3",
        channel: 7,
        surveyRow: "3.07",
        out: { gauge: "14ga", lengthM: 5.4864 },
        fuse: { type: "blade", ratedA: 15 },
        label: "GALLEY LTS",
        notes: "warm at the fuse",
        loads: ["l-galley-ceiling-halogens"],
      },
    ]);
    expect(record.loads).toEqual([
      {
        id: "l-galley-ceiling-halogens",
        name: "galley ceiling halogens",
        quantity: 4,
        class: "filament",
        classBasis: "assumed",
        notes: "class guessed from the name",
        currentA: 0.8,
        place: "p-galley",
        wish: "must-dim",
      },
    ]);
    expect(report.unread).toEqual([]);
    expect(report.proposedClasses).toEqual([
      {
        load: "l-galley-ceiling-halogens",
        name: "galley ceiling halogens",
        class: "filament",
        because: "halogens",
        place: "line 2",
      },
    ]);
    expect(readRecord(record).kind).toBe("read");
  });

  it("changes nothing when the same survey is imported again", () => {
    const once = imported([HEADINGS, ROW]).record;
    const again = imported([HEADINGS, ROW], once);
    expect(again.record).toEqual(once);
    expect(again.report.changes).toEqual([]);
  });

  it("updates a changed row and keeps every id", () => {
    const once = imported([HEADINGS, ROW]).record;
    const changed = ROW.with(2, "10A blade").with(4, "galley ceiling lamps, halogen").with(8, "21");
    const { record } = imported([HEADINGS, changed], once);
    expect(record.circuits?.[0]).toMatchObject({
      id: "c3.07",
      fuse: { ratedA: 10 },
      out: { lengthM: 6.4008 },
      loads: ["l-galley-ceiling-halogens"],
    });
    expect(record.loads).toHaveLength(1);
    expect(record.loads?.[0]?.name).toBe("galley ceiling lamps, halogen");
  });

  it.each([
    ["Mod 3", "7"],
    ["M3", "07"],
    ["#3", "Ch 7"],
    ["3", "7"],
    ["module 03", "chan 7"],
  ])("takes %s channel %s as one circuit, c3.07", (module, channel) => {
    expect(
      imported([
        ["Mod", "Ch"],
        [module, channel],
      ]).record.circuits?.[0]?.id,
    ).toBe("c3.07");
  });

  it.each([["3-07"], ["M3.7"], ["3/7"], ["3:07"], ["M3 ch 7"], ["mod 3 - 7"]])(
    "takes %s in one cell as module 3, channel 7",
    (text) => {
      expect(imported([["Ckt"], [text]]).record.circuits?.[0]).toMatchObject({ id: "c3.07", module: "m3", channel: 7 });
    },
  );

  it("takes a row without a module as a plain fuse, and a fuse block as no module", () => {
    const { record } = imported([
      ["Mod", "Ckt"],
      ["", "F12"],
      ["Fuse block", "F3"],
      ["Fuse block", "4"],
    ]);
    expect(record.circuits).toEqual([
      { id: "c-f12", fusePosition: { name: "F12" }, surveyRow: "F12" },
      { id: "c-f3", fusePosition: { name: "F3" }, surveyRow: "F3", notes: "Mod: Fuse block" },
      { id: "c-fuse-block-4", fusePosition: { name: "Fuse block 4" }, surveyRow: "Fuse block 4" },
    ]);
    expect(record.modules).toBeUndefined();
  });

  it("carries a module down over blank cells, and tells", () => {
    const { record, report } = imported([
      ["Mod", "Ch"],
      ["2", "1"],
      ["", "2"],
    ]);
    expect(record.circuits?.map((circuit) => circuit.id)).toEqual(["c2.01", "c2.02"]);
    expect(report.told).toEqual([
      { place: "line 3", code: "module-carried-down", message: 'no module in the row: taken as "2", from above' },
    ]);
  });

  it("starts a module's rows at a line that names only the module, and keeps the rest of its words", () => {
    const { record } = imported([
      ["Ch", "Label"],
      ["MODULE 4 - rear bay", ""],
      ["1", "PUMP"],
      ["2", "FAN"],
    ]);
    expect(record.circuits?.map((circuit) => circuit.id)).toEqual(["c4.01", "c4.02"]);
    expect(record.modules).toEqual([{ id: "m4", name: "MODULE 4", notes: "rear bay" }]);
  });

  it("keeps the first of two rows for one circuit, tells, and keeps the second as text", () => {
    const { record, report } = imported([
      ["Ckt", "Notes"],
      ["3-1", "FIRST"],
      ["3-01", "SECOND"],
    ]);
    expect(record.circuits?.map((circuit) => circuit.notes)).toEqual(["FIRST"]);
    expect(report.told.map((item) => item.code)).toEqual(["duplicate-row"]);
    expect(record.survey?.unread?.map((item) => item.text)).toEqual(["3-01", "SECOND"]);
  });

  it.each([
    ["TOTAL", "a total, not a circuit"],
    ["2026-03-07", "a spreadsheet turned the circuit's number into one"],
    ["7-Mar", "set the column to text and write it again"],
    ["ask the owner about the ones behind the fridge", "write the name alone"],
  ])("takes no circuit from a row that begins with %s, and tells", (key, why) => {
    const { record, report } = imported([
      ["Ckt", "Notes"],
      [key, "14"],
    ]);
    expect(record.circuits).toBeUndefined();
    expect(record.survey?.unread?.map((item) => item.text)).toEqual([key, "14"]);
    expect(report.told.map((item) => item.code)).toEqual(["row-without-key"]);
    expect(report.told[0]?.message).toContain(why);
  });

  it("keeps a row without a key as text", () => {
    const { record } = imported([
      ["Mod", "Ch", "Notes"],
      ["1", "1", "ok"],
      ["1", "", "45 total"],
    ]);
    expect(record.circuits).toHaveLength(1);
    expect(record.survey?.unread?.map((item) => [item.row, item.column, item.text])).toEqual([
      ["line 3", "Mod", "1"],
      ["line 3", "Notes", "45 total"],
    ]);
  });

  it.each([
    ["~3", { value: 3, basis: "assumed" }],
    ["3?", { value: 3, basis: "assumed" }],
    ["3.1 measured", { value: 3.1, basis: "measured" }],
    ["3.1 (clamp)", { value: 3.1, basis: "measured" }],
    ["350 mA", 0.35],
    [".35 amps", 0.35],
    ["0,35", 0.35],
    ["2-3 A", { value: 2.5, basis: "assumed", plusMinus: 0.5 }],
    ["3.1 ± 0.1 A", { value: 3.1, basis: "marked", plusMinus: 0.1 }],
  ])("reads %s amps with its basis", (text, figure) => {
    expect(
      imported([
        ["Ckt", "Load", "Amps"],
        ["1-1", "pump", text],
      ]).record.loads?.[0]?.currentA,
    ).toEqual(figure);
  });

  it("shares a total out over the pieces and says what was written; takes one piece where nothing is said, and tells", () => {
    const lines = (amps: string) => [
      ["Ckt", "Load", "Qty", "Amps"],
      ["1-1", "reading lamp", "4", amps],
    ];
    expect(imported(lines("3.2 total")).record.loads?.[0]?.currentA).toEqual({
      value: 0.8,
      basis: "marked",
      note: '"3.2 total" for all 4',
    });
    const bare = imported(lines("0.8"));
    expect(bare.record.loads?.[0]?.currentA).toBe(0.8);
    expect(bare.report.told.map((item) => item.code)).toEqual(["one-piece-taken"]);
  });

  it("takes a length without any unit as feet, assumed, and tells; as metres for a metric record", () => {
    const lines = [
      ["Ckt", "Length"],
      ["1-1", "18"],
    ];
    expect(imported(lines).record.circuits?.[0]?.out?.lengthM).toEqual({
      value: 5.4864,
      basis: "assumed",
      note: 'written "18" without a unit, taken as ft',
    });
    expect(imported(lines, undefined, { bareLengthUnit: "m" }).record.circuits?.[0]?.out?.lengthM).toMatchObject({
      value: 18,
      basis: "assumed",
    });
    expect(imported(lines).report.told.map((item) => item.code)).toEqual(["unit-taken"]);
  });

  it("halves a loop length into out and return", () => {
    const { record } = imported([
      ["Ckt", "Round trip (ft)"],
      ["1-1", "36"],
    ]);
    expect(record.circuits?.[0]).toMatchObject({
      out: { lengthM: { value: 5.4864 } },
      return: { lengthM: { value: 5.4864 } },
    });
  });

  it("keeps what cannot be read as text on the circuit, in the report with place and why, and in the survey's memory", () => {
    const { record, report } = imported([
      ["Ckt", "Load", "Amps", "Wire", "Curtains"],
      ["1-1", "pump", "loads!", "thin", "blue"],
    ]);
    expect(record.circuits?.[0]?.unread).toEqual({ Amps: "loads!", Wire: "thin", Curtains: "blue" });
    expect(report.unread.map(({ column, place, text }) => [column, place, text])).toEqual([
      ["Wire", "line 2, column 4", "thin"],
      ["Curtains", "line 2, column 5", "blue"],
      ["Amps", "line 2, column 3", "loads!"],
    ]);
    for (const item of report.unread) expect(item.why.length).toBeGreaterThan(10);
    expect(record.survey?.unread).toHaveLength(3);
  });

  it("forgets an unread cell once its row can be read", () => {
    const once = imported([
      ["Ckt", "Wire"],
      ["1-1", "thin"],
    ]).record;
    const { record } = imported(
      [
        ["Ckt", "Wire"],
        ["1-1", "16 AWG"],
      ],
      once,
    );
    expect(record.circuits?.[0]?.unread).toBeUndefined();
    expect(record.survey?.unread).toEqual([]);
  });
});
