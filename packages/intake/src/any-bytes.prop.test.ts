import { demoSurveyCsv, demoSurveyXlsx } from "@fusebook/fixtures";
import fc from "fast-check";
import { unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { readGrid, readPasted } from "./index.js";

const SEED = 416_212;
// A copy: slices of a Buffer share its memory.
const workbook = new Uint8Array(demoSurveyXlsx());
const csv = new TextEncoder().encode(demoSurveyCsv());

const PLACE = /^(?:line \d+, column \d+|[A-Z]+\d+)$/;
let read = 0;

/** A grid with as many headings as cells in each row, or a refusal that says where, what and what to do. */
const isJudged = async (bytes: Uint8Array): Promise<void> => {
  const outcome = await readGrid(bytes, "file");
  if (outcome.kind === "refused") {
    expect(outcome.faults.length).toBeGreaterThan(0);
    for (const fault of outcome.faults) {
      expect(fault.place).toContain("file");
      expect(fault.message).toMatch(/; .{10,}/);
    }
    return;
  }
  const { headings, rows } = outcome.grid;
  expect(new Set(headings.map((heading) => heading.toLowerCase())).size).toBe(headings.length);
  expect(rows.every((row) => row.length === headings.length)).toBe(true);
  const stray = rows.flat().find((cell) => cell.text !== "" && !PLACE.test(cell.place));
  expect(stray).toBeUndefined();
  read += 1;
};

const edits = (length: number) => fc.array(fc.tuple(fc.nat(length - 1), fc.nat(255)), { minLength: 1, maxLength: 12 });
const edited = (bytes: Uint8Array, changes: readonly (readonly [number, number])[]): Uint8Array => {
  const copy = bytes.slice();
  for (const [at, value] of changes) copy[at] = value;
  return copy;
};

describe("any bytes whatsoever become a grid or a refusal with a remedy, never a crash", () => {
  it("any bytes", async () => {
    await fc.assert(fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), isJudged), { seed: SEED, numRuns: 2_000 });
  });

  it("a workbook cut short", async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(workbook.length - 1), (cut) => isJudged(workbook.slice(0, cut))),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("a workbook with bytes changed", async () => {
    await fc.assert(
      fc.asyncProperty(edits(workbook.length), (changes) => isJudged(edited(workbook, changes))),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("a workbook whose parts have bytes changed, packed again", async () => {
    const parts = Object.entries(unzipSync(workbook));
    read = 0;
    await fc.assert(
      fc.asyncProperty(fc.nat(parts.length - 1), edits(4_000), (which, changes) => {
        const broken = parts.map(([name, part], i) => [
          name,
          i === which
            ? edited(
                part,
                changes.map(([at, value]) => [at % part.length, value] as const),
              )
            : part,
        ]);
        return isJudged(zipSync(Object.fromEntries(broken), { level: 0 }));
      }),
      { seed: SEED, numRuns: 300 },
    );
    // Some must be read and some refused, or the property says little.
    expect(read).toBeGreaterThan(30);
    expect(read).toBeLessThan(290);
  });

  it("a text table with bytes changed", async () => {
    await fc.assert(
      fc.asyncProperty(edits(csv.length), (changes) => isJudged(edited(csv, changes))),
      {
        seed: SEED,
        numRuns: 200,
      },
    );
  });

  it("any pasted text of separators, quotes and words", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'a1,;\t|"\n\r =-é'), maxLength: 80 }), (text) => {
        expect(["grid", "refused"]).toContain(readPasted(text).kind);
      }),
      { seed: SEED, numRuns: 2_000 },
    );
  });
});
