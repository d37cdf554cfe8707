import { describe, expect, it } from "vitest";
import { overrideMapping, proposeMapping } from "./propose.js";
import { fieldsOf, gridOf } from "./sample-grid.js";

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

  it("takes the column of words that no heading tells of for what is fed, where no other column says it", () => {
    const proposal = proposeMapping(
      gridOf([
        ["Ckt", "Sticker", "Scribble", "Amps"],
        ["1-1", "A", "galley lamps", "3"],
        ["1-2", "B", "water pump", "7"],
      ]),
    );
    expect(proposal.map((column) => column.field)).toEqual(["circuit", "label", "loads", "currentA"]);
    expect(proposal[2]?.confidence).toBeLessThan(0.5);
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
