import { describe, expect, it } from "vitest";
import type { CoachRecord } from "../schema/types.js";
import { HEADINGS, imported, ROW } from "./sample-grid.js";

describe("cells of a survey", () => {
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
