import { describe, expect, it } from "vitest";
import { readRecord } from "../read.js";
import type { CoachRecord } from "../schema/types.js";
import { type Grid, NO_CELL } from "./grid.js";
import { type ImportOptions, importSurvey } from "./import-survey.js";
import { overrideMapping, proposeMapping } from "./propose.js";

/** A grid as it comes from a text file: first line the headings. */
const gridOf = (lines: readonly (readonly string[])[], more: Partial<Grid> = {}): Grid => ({
  name: "survey.csv",
  headingRow: 1,
  headings: lines[0] ?? [],
  rows: lines
    .slice(1)
    .map((line, i) =>
      line.map((text, j) => (text === "" ? NO_CELL : { text, place: `line ${i + 2}, column ${j + 1}` })),
    ),
  above: [],
  decimalSign: ".",
  warnings: [],
  ...more,
});

const imported = (
  lines: readonly (readonly string[])[],
  record?: CoachRecord,
  options?: ImportOptions,
  more?: Partial<Grid>,
) => {
  const grid = gridOf(lines, more);
  return importSurvey(record, grid, proposeMapping(grid, record?.survey?.mappings), options);
};

const fieldsOf = (headings: readonly string[], rows: readonly (readonly string[])[] = []) =>
  proposeMapping(gridOf([headings, ...rows])).map((column) => column.field);

describe("proposing what columns mean", () => {
  it.each([
    [
      ["Ckt", "Fuse sz", "What it feeds", "Wire", "Length (ft)", "Notes"],
      ["circuit", "fuseA", "loads", "gauge", "length", "notes"],
    ],
    [
      ["CKT #", "Brkr", "Desc", "AWG", "run", "Room"],
      ["circuit", "fuseA", "loads", "gauge", "length", "place"],
    ],
    [
      ["Mod", "Ch", "Fuse", "Label", "Description", "Amps", "Dim?"],
      ["module", "channel", "fuseA", "label", "loads", "currentA", "wish"],
    ],
    [
      ["Panel", "Position", "Fuse #", "Fuse type", "Ga.", "Qty", "Watts"],
      ["module", "channel", "circuit", "fuseType", "gauge", "quantity", "powerW"],
    ],
    [
      ["Module", "Module location", "Addr", "Switch pos", "Chan", "Load"],
      ["module", "modulePlace", "address", "positions", "channel", "loads"],
    ],
    [
      ["Return", "Return ga", "Return length", "Verified?", "Colour", "Curtains"],
      ["return", "returnGauge", "returnLength", "verified", "notes", "unread"],
    ],
    [
      ["Load type", "Load", "Round trip ft", "Volts", "Max fuse", "Answers to"],
      ["class", "loads", "loopLength", "ratedV", "maxFuseA", "answersTo"],
    ],
  ])("%j", (headings, fields) => {
    expect(fieldsOf(headings)).toEqual(fields);
  });

  it("gives a field to one column only, the surer one", () => {
    expect(fieldsOf(["Notes", "Amps", "Draw amps measured"]).filter((field) => field === "currentA")).toHaveLength(1);
  });

  it("takes a Fuse column of names as the circuit's name, and one of numbers as the fuse's size", () => {
    expect(fieldsOf(["Fuse"], [["F1"], ["F2"], ["F3"]])).toEqual(["circuit"]);
    expect(fieldsOf(["Fuse"], [["15"], ["10"], ["7.5"]])).toEqual(["fuseA"]);
  });

  it("judges a table without headings by its cells", () => {
    const grid = gridOf(
      [
        ["a", "b", "c", "d", "e"],
        ["3-01", "15A", "14 AWG", "18 ft", "galley lights"],
        ["3-02", "10A", "16 AWG", "9 ft", "water pump"],
      ],
      {
        headingRow: undefined,
      },
    );
    expect(proposeMapping(grid).map((column) => column.field)).toEqual([
      "circuit",
      "fuseA",
      "gauge",
      "length",
      "loads",
    ]);
  });

  it("remembers what a heading was mapped to, with confidence 1", () => {
    const grid = gridOf([["Curtains", "Mod"]]);
    const proposal = proposeMapping(grid, [
      { headings: ["Curtains", "Mod"], columns: { Curtains: "place", Mod: "module" } },
    ]);
    expect(proposal.map(({ field, confidence }) => [field, confidence])).toEqual([
      ["place", 1],
      ["module", 1],
    ]);
  });

  it("lets a person override, and takes the field from the column that had it", () => {
    const mapping = overrideMapping(proposeMapping(gridOf([["Notes on load", "Load"]])), { "Notes on load": "loads" });
    expect(mapping.map((column) => column.field)).toEqual(["loads", "unread"]);
  });
});

describe("importing a survey", () => {
  const HEADINGS = [
    "Mod",
    "Ch",
    "Fuse",
    "Label",
    "What it feeds",
    "Qty",
    "Amps",
    "Wire",
    "Length (ft)",
    "Room",
    "Dim?",
    "Notes",
  ];
  const ROW = [
    "Mod 3",
    "7",
    "15A blade",
    "GALLEY LTS",
    "galley ceiling halogens",
    "4",
    "0.8 ea",
    "14ga",
    "18",
    "Galley",
    "yes",
    "warm at the fuse",
  ];

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

  it("lets a measured figure of the record stand against a marked one of the survey, and keeps the cell", () => {
    const once = imported([
      ["Ckt", "Load", "Amps"],
      ["1-1", "pump", "3.1 measured"],
    ]).record;
    const { record, report } = imported(
      [
        ["Ckt", "Load", "Amps"],
        ["1-1", "pump", "3"],
      ],
      once,
    );
    expect(record.loads?.[0]?.currentA).toEqual({ value: 3.1, basis: "measured" });
    expect(record.circuits?.[0]?.unread).toEqual({ Amps: "3" });
    expect(report.told.map((item) => item.code)).toEqual(["record-knows-better"]);
  });

  it("parts several loads and their figures by semicolon, and does not share out one figure by guess", () => {
    const { record } = imported([
      ["Ckt", "Load", "Amps"],
      ["1-1", "2x reading LED; bath fan", "0.2; 1.5"],
      ["1-2", "step light; step motor", "3"],
    ]);
    expect(record.loads?.map(({ id, quantity, class: kind, currentA }) => [id, quantity, kind, currentA])).toEqual([
      ["l-reading-led", 2, "led-driver", 0.2],
      ["l-bath-fan", undefined, "fan", 1.5],
      ["l-step-light", undefined, "led-driver", undefined],
      ["l-step-motor", undefined, "motor", undefined],
    ]);
    expect(record.circuits?.[1]?.unread).toEqual({ Amps: "3" });
  });

  it("gives loads of one name in several rows ids that do not depend on the order of rows", () => {
    const rows = [
      ["3-07", "ceiling light"],
      ["4-02", "Ceiling light"],
    ];
    const ids = (lines: readonly (readonly string[])[]) =>
      imported([["Ckt", "Load"], ...lines])
        .record.loads?.map((load) => load.id as string)
        .sort();
    expect(ids(rows)).toEqual(["l-ceiling-light-3-07", "l-ceiling-light-4-02"]);
    expect(ids(rows.toReversed())).toEqual(ids(rows));
  });

  it("takes spare and no label for what they say", () => {
    const { record } = imported([
      ["Ckt", "Label", "Load"],
      ["1-1", "none", "spare"],
    ]);
    expect(record.circuits?.[0]).toMatchObject({ isSpare: true, label: "" });
    expect(record.loads).toBeUndefined();
  });

  it("takes the label for the load's name where there is no loads column, and tells", () => {
    const { record, report } = imported([
      ["Mod", "Ch", "Label"],
      ["1", "1", "WATER PUMP"],
    ]);
    expect(record.loads?.[0]).toMatchObject({ id: "l-water-pump", class: "pump", classBasis: "assumed" });
    expect(report.told.map((item) => item.code)).toEqual(["name-from-label"]);
  });

  it("resolves a ditto mark to the cell above, and tells", () => {
    const { record, report } = imported([
      ["Ckt", "Wire"],
      ["1-1", "14 AWG"],
      ["1-2", '"'],
    ]);
    expect(record.circuits?.[1]?.out?.gauge).toBe("14 AWG");
    expect(report.told.map((item) => item.code)).toEqual(["ditto"]);
  });

  it.each([
    ["yes", "must-dim"],
    ["must", "must-dim"],
    ["nice to have", "nice-to-dim"],
    ["if cheap", "nice-to-dim"],
    ["no", "none"],
    ["must stay steady", "must-stay-steady"],
  ])("reads the wish %s as %s", (text, wish) => {
    expect(
      imported([
        ["Ckt", "Load", "Dim?"],
        ["1-1", "lamp", text],
      ]).record.loads?.[0]?.wish,
    ).toBe(wish);
  });

  it("reads switch positions as signs or words, and refuses a row with a lost leading zero for the kind", () => {
    const base: CoachRecord = {
      format: "fusebook/1",
      id: "x",
      coach: { name: "x" },
      moduleKinds: [{ id: "R8" as never, name: "R8", channels: 8, bank: { switches: 4 } }],
    };
    const at = (text: string) =>
      imported(
        [
          ["Mod", "Ch", "Mod type", "Switches"],
          ["1", "1", "R8", text],
        ],
        base,
      );
    expect(at("0101").record.modules?.[0]).toEqual({ id: "m1", kind: "R8", positionsFound: "0101" });
    expect(at("OFF ON OFF ON").record.modules?.[0]?.positionsFound).toBe("0101");
    expect(at("101").record.modules?.[0]?.positionsFound).toBeUndefined();
    expect(at("101").report.unread[0]?.why).toContain("a spreadsheet drops leading zeros");
    expect(at("up down up up").report.unread[0]?.text).toBe("up down up up");
  });

  it("keeps formula-looking text as text", () => {
    const { record } = imported([
      ["Ckt", "Load", "Notes"],
      ["1-1", "=SUM(A1:A9)", "@cmd|' /C calc'!A0"],
    ]);
    expect(record.loads?.[0]?.name).toBe("=SUM(A1:A9)");
    expect(record.circuits?.[0]?.notes).toBe("@cmd|' /C calc'!A0");
  });

  it("reads decimal commas where the file uses them, thousands included", () => {
    const { record } = imported(
      [
        ["Ckt", "Load", "Watts"],
        ["1-1", "heater element", "1.250,5"],
      ],
      undefined,
      {},
      { decimalSign: "," },
    );
    expect(record.loads?.[0]?.powerW).toBe(1250.5);
  });

  it("changes neither the record given nor the grid", () => {
    const before = imported([HEADINGS, ROW]).record;
    const copy = structuredClone(before);
    imported([HEADINGS, ROW.with(2, "20A")], before);
    expect(before).toEqual(copy);
  });

  it("guesses no class for a name that tells of two kinds, and tells", () => {
    const { record, report } = imported([
      ["Ckt", "Load"],
      ["1-1", "hood fan & light"],
    ]);
    expect(record.loads?.[0]?.class).toBeUndefined();
    expect(report.told.map((item) => item.code)).toEqual(["class-mixed"]);
  });

  it.each([
    ["awning light", "led-driver"],
    ["bath fan", "fan"],
    ["LP detector", "detector"],
    ["smoke alarm & hall light", "detector"],
    ["shade motor", "motor"],
    ["saloon shades", "actuator"],
    ["LED strip under cabinet", "led-resistor"],
    ["halogen spots", "filament"],
    ["tank heater", "resistive-heater"],
    ["water heater", "heater-control"],
    ["grey dump valve", "valve"],
    ["USB port", "outlet"],
    ["gen start", "inverter-remote"],
  ])("guesses %s as %s, never as a fact", (name, kind) => {
    const { record } = imported([
      ["Ckt", "Load"],
      ["1-1", name],
    ]);
    expect(record.loads?.[0]).toMatchObject({
      class: kind,
      classBasis: "assumed",
      notes: "class guessed from the name",
    });
  });

  it("takes a stated class as stated, and drops the guess that stood before", () => {
    const once = imported([
      ["Ckt", "Load"],
      ["1-1", "galley light"],
    ]).record;
    const { record } = imported(
      [
        ["Ckt", "Load", "Class"],
        ["1-1", "galley light", "filament"],
      ],
      once,
    );
    expect(record.loads?.[0]).toEqual({ id: "l-galley-light", name: "galley light", class: "filament" });
  });
});
