import { circularMilsForDrop, leastGaugeFor, MARINE_K_OHM_CMIL_PER_FT, maxDropRatio } from "@fusebook/core/tables";
import { describe, expect, it } from "vitest";

const FEET = [10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 170] as const;

/** ABYC E-11 table IX, 3 % drop at 12 V, feet out and back, as a public reprint prints it (seen). The reprint writes 1/0 as 0. */
const TABLE_IX: readonly (readonly [number, readonly string[]])[] = [
  [5, ["18", "16", "14", "12", "12", "10", "10", "10", "8", "8", "8", "6", "6", "6", "6", "6", "6", "6", "6"]],
  [10, ["14", "12", "10", "10", "10", "8", "6", "6", "6", "6", "4", "4", "4", "4", "2", "2", "2", "2", "2"]],
  [15, ["12", "10", "10", "8", "8", "6", "6", "6", "4", "4", "2", "2", "2", "2", "2", "1", "1", "1", "1"]],
  [20, ["10", "10", "8", "6", "6", "6", "4", "4", "2", "2", "2", "2", "1", "1", "1", "1/0", "1/0", "1/0", "2/0"]],
];

/** Where the print and its own formula part: the formula wants one size more than the print has. */
const EXCEPTIONS: ReadonlyMap<string, string> = new Map([
  ["5 A x 170 ft", "4"],
  ["15 A x 60 ft", "4"],
]);

const sizeFor = (currentA: number, loopFt: number, basis: "awg" | "sae"): string => {
  const dropV = 12 * maxDropRatio("critical").value;
  const size = leastGaugeFor(circularMilsForDrop(MARINE_K_OHM_CMIL_PER_FT, currentA, loopFt, dropV), basis);
  return size.kind === "known" ? size.value : size.code;
};

const cells = TABLE_IX.flatMap(([currentA, sizes]) =>
  FEET.map((loopFt, at) => ({ currentA, loopFt, printed: sizes[at]!, name: `${currentA} A x ${loopFt} ft` })),
);

describe("ABYC E-11 table IX, 12 V, 3 %", () => {
  it("has 76 cells, and 74 of them are CM = K I L / E with K = 10.75 and SAE minimum areas", () => {
    expect(cells).toHaveLength(76);
    const agreeing = cells.filter((cell) => sizeFor(cell.currentA, cell.loopFt, "sae") === cell.printed);
    expect(agreeing).toHaveLength(74);
  });

  it("the two others are 5 A x 170 ft and 15 A x 60 ft: the print has 6, the formula wants 4", () => {
    const others = cells.filter((cell) => sizeFor(cell.currentA, cell.loopFt, "sae") !== cell.printed);
    expect(new Map(others.map((cell) => [cell.name, sizeFor(cell.currentA, cell.loopFt, "sae")]))).toEqual(EXCEPTIONS);
    expect(others.every((cell) => cell.printed === "6")).toBe(true);
    // 25 382 and 26 875 circular mils wanted against 24 538 of a 6 gauge SAE wire.
    expect(circularMilsForDrop(10.75, 5, 170, 0.36)).toBeCloseTo(25382, 0);
    expect(circularMilsForDrop(10.75, 15, 60, 0.36)).toBeCloseTo(26875, 0);
  });

  it("AWG areas instead give one size less than the print in 14 of the 76 cells: the area basis matters", () => {
    const sizes = ["18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "1/0", "2/0"];
    const step = (cell: (typeof cells)[number]) =>
      sizes.indexOf(sizeFor(cell.currentA, cell.loopFt, "awg")) - sizes.indexOf(cell.printed);
    const thinner = cells.filter((cell) => step(cell) < 0);
    expect(thinner).toHaveLength(14);
    expect(thinner.every((cell) => step(cell) === -1)).toBe(true);
    expect(cells.filter((cell) => step(cell) > 0).map((cell) => cell.name)).toEqual(["15 A x 60 ft"]);
  });
});
