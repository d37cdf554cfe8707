import { describe, expect, it } from "vitest";
import type { Milp } from "./milp.js";
import { milpFaults } from "./milp-faults.js";
import { requestFaults } from "./request-faults.js";
import { objectiveOf, violationsOf } from "./violations.js";

const column = (name: string, more: Partial<Milp["columns"][number]> = {}) => ({
  name,
  cost: 1,
  lower: 0,
  upper: 1,
  isInteger: true,
  ...more,
});
const SOUND: Milp = {
  name: "sound",
  columns: [column("x"), column("y", { isInteger: false })],
  rows: [
    {
      name: "r",
      lower: 1,
      upper: 1.5,
      terms: [
        [0, 1],
        [1, 1],
      ],
    },
  ],
};
const codesOf = (milp: Milp) => milpFaults(milp).map(({ code, path }) => `${path} ${code}`);

describe("a model checked as data", () => {
  it("finds nothing in a sound one", () => {
    expect(milpFaults(SOUND)).toEqual([]);
    expect(milpFaults({ name: "empty", columns: [], rows: [] })).toEqual([]);
  });

  it("names each fault by path", () => {
    const columns = [
      column(" "),
      column("x", { cost: Number.NaN }),
      column("x", { lower: 2, upper: 1 }),
      column("z", { lower: 0.2, upper: 0.8 }),
      column("w", { upper: Number.NaN }),
    ];
    const rows = [
      {
        name: "r",
        lower: Infinity,
        upper: Infinity,
        terms: [
          [9, 1],
          [0, Infinity],
          [0, 1],
        ] as const,
      },
    ];
    expect(codesOf({ name: "bad", columns, rows })).toEqual([
      "columns[0] name-missing",
      "columns[2] name-twice",
      "columns[1] not-a-number",
      "columns[2] ends-crossed",
      "columns[3] ends-hold-no-whole-number",
      "columns[4] not-a-number",
      "rows[0] not-a-number",
      "rows[0].terms[0] no-such-column",
      "rows[0].terms[1] not-a-number",
      "rows[0].terms[2] column-twice-in-row",
    ]);
  });

  it("finds costs that could add up past what stays exact", () => {
    const most = column("x", { cost: 2 ** 50, upper: 9 });
    expect(codesOf({ name: "dear", columns: [most], rows: [] })).toEqual(["columns money-not-exact"]);
  });

  it("names what a request asks of places that are not there, by path", () => {
    const faults = requestFaults(SOUND, {
      costs: [1],
      start: [0, Number.NaN],
      rowBounds: [{ at: 1, lower: 0, upper: 1 }],
      columnBounds: [
        { at: 0, lower: 1, upper: 0 },
        { at: 1, lower: Number.NaN, upper: 0 },
      ],
      timeS: -1,
    });
    expect(faults.map(({ code, path }) => `${path} ${code}`)).toEqual([
      "costs wrong-length",
      "start[1] not-a-number",
      "rowBounds[0] no-such-row",
      "columnBounds[0] ends-crossed",
      "columnBounds[1] not-a-number",
      "timeS not-a-number",
    ]);
  });
});

describe("values held against a model", () => {
  it("names what they break, and by how much", () => {
    expect(violationsOf(SOUND, [1, 0.5])).toEqual([]);
    expect(violationsOf(SOUND, [0.5, 0.25])).toEqual([
      { kind: "not-whole", name: "x", by: 0.5 },
      { kind: "row", name: "r", by: 0.25 },
    ]);
    expect(violationsOf(SOUND, [2, 0])).toMatchObject([
      { kind: "column", name: "x", by: 1 },
      { kind: "row", by: 0.5 },
    ]);
    expect(violationsOf(SOUND, [1])).toMatchObject([{ kind: "column", name: "y" }, { kind: "row" }]);
  });

  it("judges by the ends a solve was asked with", () => {
    expect(violationsOf(SOUND, [0, 0], { rowBounds: [{ at: 0, lower: 0, upper: 9 }] })).toEqual([]);
    expect(violationsOf(SOUND, [1, 0], { columnBounds: [{ at: 0, lower: 0, upper: 0 }] })).toMatchObject([
      { name: "x" },
    ]);
  });

  it("adds up costs, the model's or others", () => {
    expect(objectiveOf(SOUND, [1, 0.5])).toBe(1.5);
    expect(objectiveOf(SOUND, [1, 0.5], [10, 4])).toBe(12);
  });
});
