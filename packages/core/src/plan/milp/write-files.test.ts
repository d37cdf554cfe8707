import { describe, expect, it } from "vitest";
import type { Milp } from "./milp.js";
import { writeLp } from "./write-lp.js";
import { writeMps } from "./write-mps.js";

/** Every kind of column and row, and names that the files cannot carry. */
const ALL_KINDS: Milp = {
  name: "every kind",
  columns: [
    { name: "fit K2", cost: 30000, lower: 0, upper: 1, isInteger: true },
    { name: "n", cost: -2, lower: -3, upper: 8, isInteger: true },
    { name: "m", cost: 0, lower: 0, upper: Infinity, isInteger: true },
    { name: "free", cost: 0.5, lower: -Infinity, upper: Infinity, isInteger: false },
    { name: "e1", cost: 0, lower: -Infinity, upper: 4, isInteger: false },
    { name: "fixed", cost: 1, lower: 2, upper: 2, isInteger: false },
    { name: "unused", cost: 0, lower: 0, upper: 1, isInteger: false },
  ],
  rows: [
    {
      name: "budget",
      lower: -Infinity,
      upper: 90000,
      terms: [
        [0, 30000],
        [1, 1.25],
      ],
    },
    {
      name: "need",
      lower: 1,
      upper: Infinity,
      terms: [
        [1, 1],
        [2, -1],
      ],
    },
    {
      name: "both",
      lower: -2,
      upper: 6,
      terms: [
        [2, 1],
        [3, 1],
      ],
    },
    {
      name: "same",
      lower: 3,
      upper: 3,
      terms: [
        [4, 1],
        [5, 1],
      ],
    },
    { name: "none", lower: -Infinity, upper: Infinity, terms: [[1, 1]] },
  ],
};

describe("a model as LP text", () => {
  it("writes each kind of column and row as the form has it", () => {
    expect(writeLp(ALL_KINDS).split("\n")).toEqual([
      "\\ every kind",
      "\\ fit_K2 = fit K2",
      "\\ n_free = free",
      "\\ n_e1 = e1",
      "Minimize",
      " obj: 30000 fit_K2 - 2 n + 0.5 n_free + 1 fixed",
      "Subject To",
      " budget: 30000 fit_K2 + 1.25 n <= 90000",
      " need: 1 n - 1 m >= 1",
      " both.lo: 1 m + 1 n_free >= -2",
      " both.up: 1 m + 1 n_free <= 6",
      " same: 1 n_e1 + 1 fixed = 3",
      "Bounds",
      " -3 <= n <= 8",
      " m >= 0",
      " n_free free",
      " -inf <= n_e1 <= 4",
      " fixed = 2",
      " 0 <= unused <= 1",
      "General",
      " n m",
      "Binary",
      " fit_K2",
      "End",
      "",
    ]);
  });

  it("keeps every line under 560 signs, however long the rows and the names", () => {
    const columns = Array.from({ length: 400 }, (_, at) => ({
      name: `${"a very long name ".repeat(20)}${at}`,
      cost: at + 1,
      lower: 0,
      upper: 1,
      isInteger: true,
    }));
    const text = writeLp({
      name: "long",
      columns,
      rows: [{ name: "r", lower: 1, upper: 2, terms: columns.map((_, at) => [at, 1.5]) }],
    });
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThan(560);
  });

  it("gives every column a name of its own where the file's names would meet", () => {
    const column = (name: string) => ({ name, cost: 1, lower: 0, upper: 1, isInteger: true });
    const text = writeLp({ name: "t", columns: [column("a b"), column("a_b"), column("a/b")], rows: [] });
    expect(text).toContain(" obj: 1 a_b + 1 a_b_2 + 1 a_b_3");
  });
});

describe("a model as MPS text", () => {
  it("writes the free form with the model's own names", () => {
    expect(writeMps(ALL_KINDS).split("\n")).toEqual([
      "* fit_K2 = fit K2",
      "* n_free = free",
      "* n_e1 = e1",
      "NAME every_kind FREE",
      "ROWS",
      " N COST",
      " L budget",
      " G need",
      " L both",
      " E same",
      " N none",
      "COLUMNS",
      "    M1        'MARKER'                 'INTORG'",
      " fit_K2 COST 30000",
      " fit_K2 budget 30000",
      " n COST -2",
      " n budget 1.25",
      " n need 1",
      " n none 1",
      " m need -1",
      " m both 1",
      "    M2        'MARKER'                 'INTEND'",
      " n_free COST 0.5",
      " n_free both 1",
      " n_e1 same 1",
      " fixed COST 1",
      " fixed same 1",
      " unused COST 0",
      "RHS",
      " RHS budget 90000",
      " RHS need 1",
      " RHS both 6",
      " RHS same 3",
      "RANGES",
      " RANGE both 8",
      "BOUNDS",
      " LO BOUND fit_K2 0",
      " UP BOUND fit_K2 1",
      " LO BOUND n -3",
      " UP BOUND n 8",
      " LO BOUND m 0",
      " PL BOUND m",
      " FR BOUND n_free",
      " MI BOUND n_e1",
      " UP BOUND n_e1 4",
      " FX BOUND fixed 2",
      " LO BOUND unused 0",
      " UP BOUND unused 1",
      "ENDATA",
      "",
    ]);
  });

  it("puts the fixed form's fields into columns 2, 5, 15 and 25", () => {
    const lines = writeMps(ALL_KINDS, "fixed").split("\n");
    expect(lines).toContain("* C0000001 = fit K2");
    expect(lines).toContain("    C0000001  R0000001         30000");
    expect(lines).toContain(" UP BOUND     C0000002             8");
    for (const line of lines.filter((each) => /^ (?: |[A-Z]{2} ) /.test(each) && !each.includes("MARKER"))) {
      expect(line.slice(4, 12).trim(), line).toMatch(/^(?:C\d{7}|BOUND|RHS|RANGE)$/);
      expect(line.slice(14, 22).trim(), line).toMatch(/^(?:[CR]\d{7}|COST)$/);
      expect(line.slice(12, 14) + line.slice(22, 24).trim(), line).toBe("  ");
    }
  });

  it("refuses a number that the fixed form's twelve signs cannot hold, and names the other form", () => {
    const milp: Milp = {
      name: "t",
      columns: [{ name: "x", cost: 1 / 3, lower: 0, upper: 1, isInteger: false }],
      rows: [],
    };
    expect(() => writeMps(milp, "fixed")).toThrow(/twelve|12 signs.*free form/);
    expect(writeMps(milp)).toContain(" x COST 0.3333333333333333");
  });
});
