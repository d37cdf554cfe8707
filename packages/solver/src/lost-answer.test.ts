import type { Milp } from "@fusebook/core/plan";
import { violationsOf } from "@fusebook/core/plan";
import { expect, it } from "vitest";
import { highsSolver } from "./highs-solver.js";

/** What remains of a tiny coach's model when everything is taken away that the fault does not need: cost and upper end of each column, and the rows. */
const COLUMNS: readonly (readonly [number, number])[] = [
  [0, 1],
  [220, 1],
  [220, 1],
  [220, 1],
  [1340, 1],
  [0, 1],
  [220, 1],
  [1340, 1],
  [220, 1],
  [0, 1],
  [0, 1],
  [220, 1],
  [660, 1],
  [0, 1],
  [220, 1],
  [220, 1],
  [143, 1],
  [330, 1],
  [900, 2],
];
type Row = readonly [lower: number, upper: number, terms: readonly (readonly [number, number])[]];
const NONE = -Infinity;
const ROWS: readonly Row[] = [
  [
    1,
    1,
    [
      [9, 1],
      [10, 1],
      [11, 1],
      [12, 1],
    ],
  ],
  [
    NONE,
    0,
    [
      [9, 1],
      [0, -1],
      [2, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [10, 1],
      [4, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [10, 1],
      [11, 1],
      [1, -1],
      [4, -1],
    ],
  ],
  [
    1,
    1,
    [
      [13, 1],
      [14, 1],
      [15, 1],
    ],
  ],
  [
    NONE,
    0,
    [
      [13, 1],
      [14, 1],
      [0, -1],
      [1, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [15, 1],
      [2, -1],
      [3, -1],
      [4, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [14, 1],
      [1, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [15, 1],
      [2, -1],
      [4, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [14, 1],
      [15, 1],
      [1, -1],
      [2, -1],
      [3, -1],
      [4, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [13, 1],
      [14, 1],
      [15, 1],
      [0, -1],
      [1, -1],
      [2, -1],
      [4, -1],
    ],
  ],
  [
    1,
    1,
    [
      [0, 1],
      [1, 1],
      [2, 1],
      [3, 1],
      [4, 1],
    ],
  ],
  [
    NONE,
    0,
    [
      [9, 1],
      [10, 1],
      [11, 1],
      [13, 1],
      [15, 1],
      [0, -3],
      [1, -1],
      [2, -2],
      [4, -4],
    ],
  ],
  [
    1,
    1,
    [
      [5, 1],
      [6, 1],
      [7, 1],
    ],
  ],
  [
    NONE,
    0,
    [
      [8, 1],
      [16, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [12, 1],
      [16, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [1, 1],
      [2, 1],
      [3, 1],
      [4, 1],
      [17, -1],
    ],
  ],
  [
    NONE,
    0,
    [
      [1, -1],
      [2, -1],
      [3, -1],
      [4, -1],
      [6, -1],
      [7, -1],
      [8, 1],
    ],
  ],
  [
    NONE,
    0,
    [
      [18, -1],
      [1, 1],
      [2, 1],
      [3, 1],
      [6, 1],
      [8, -1],
    ],
  ],
  [
    NONE,
    60,
    [
      [1, 20],
      [2, 20],
      [3, 20],
      [4, 40],
      [6, 20],
      [7, 40],
      [8, 20],
      [11, 20],
      [12, 60],
      [14, 20],
      [15, 20],
      [16, 13],
      [17, 30],
    ],
  ],
];
/** Columns that are 1 in an answer that costs nothing: costs are never negative, so it is the best. */
const ANSWER = [0, 5, 9, 13];

const MODEL: Milp = {
  name: "lost-answer",
  columns: COLUMNS.map(([cost, upper], i) => ({ name: `x${i}`, cost, lower: 0, upper, isInteger: true })),
  rows: ROWS.map(([lower, upper, terms], i) => ({ name: `r${i}`, lower, upper, terms })),
};

it("finds the answer that a reduction before solving loses", async () => {
  const values = MODEL.columns.map((_, i) => (ANSWER.includes(i) ? 1 : 0));
  expect(violationsOf(MODEL, values)).toEqual([]);
  const solver = highsSolver();
  const session = await solver.open(MODEL);
  const answer = await session.solve();
  expect([answer.status, answer.objective]).toEqual(["optimal", 0]);
  solver.close();
});
