import type { Milp, MilpRow } from "@fusebook/core/plan";
import { describe, expect, it } from "vitest";
import { highsSolver } from "./highs-solver.js";
import { loadHighs } from "./load-highs.js";

const solver = highsSolver();
const inf = Number.POSITIVE_INFINITY;

/** Whole numbers from 0 to 9 at the costs given, under rows of the coefficients given. */
function wholes(
  costs: readonly number[],
  ...rows: readonly (readonly [lower: number, coefficients: readonly number[], upper: number])[]
): Milp {
  return {
    name: "wholes",
    columns: costs.map((cost, at) => ({ name: `x${at}`, cost, lower: 0, upper: 9, isInteger: true })),
    rows: rows.map(
      ([lower, coefficients, upper], at): MilpRow => ({
        name: `r${at}`,
        lower,
        upper,
        terms: coefficients.map((coefficient, column) => [column, coefficient] as const),
      }),
    ),
  };
}

const solved = async (milp: Milp, request = {}) => {
  const session = await solver.open(milp);
  try {
    return await session.solve(request);
  } finally {
    session.close();
  }
};

describe("a model solved in this thread", () => {
  it("gives whole numbers and adds money over them", async () => {
    // 3x + 5y >= 17 at 600 and 1000 cents: by trying all, 3 of x and 2 of y (19) cost 3800, 4 and 1 (17) cost 3400.
    expect(await solved(wholes([600, 1000], [17, [3, 5], inf]))).toEqual({
      status: "optimal",
      values: [4, 1],
      objective: 3400,
      bound: 3400,
      nodes: expect.any(Number),
    });
  });

  it("takes columns that are no whole numbers, free ones too", async () => {
    const milp: Milp = {
      name: "shares",
      columns: [
        { name: "x", cost: 1, lower: -inf, upper: inf, isInteger: false },
        { name: "n", cost: 1, lower: 0, upper: 9, isInteger: true },
      ],
      rows: [
        {
          name: "r",
          lower: -2.5,
          upper: inf,
          terms: [
            [0, 1],
            [1, 0.25],
          ],
        },
      ],
    };
    const answer = await solved(milp);
    expect(answer.status).toBe("optimal");
    expect(answer.objective).toBeCloseTo(-2.5, 9);
  });

  it("proves that there is no answer, also where no row stands or no column", async () => {
    expect(await solved(wholes([1], [0.2, [1], 0.8]))).toMatchObject({ status: "infeasible", bound: inf });
    expect(await solved(wholes([1, 1], [19, [1, 1], inf]))).toMatchObject({ status: "infeasible" });
    expect(await solved(wholes([-7]))).toMatchObject({ status: "optimal", objective: -63 });
    expect(
      await solved({ name: "none", columns: [], rows: [{ name: "r", lower: 1, upper: inf, terms: [] }] }),
    ).toMatchObject({ status: "infeasible" });
    expect(await solved({ name: "none", columns: [], rows: [] })).toMatchObject({ status: "optimal", objective: 0 });
  });

  it("tells a cost that falls without end from a model without an answer", async () => {
    const falling = (lower: number): Milp => ({
      name: "falling",
      columns: [
        { name: "x", cost: -1, lower: 0, upper: inf, isInteger: true },
        { name: "y", cost: 0, lower: 0, upper: 1, isInteger: true },
      ],
      rows: [{ name: "r", lower, upper: inf, terms: [[1, 1]] }],
    });
    await expect(solved(falling(0))).rejects.toMatchObject({
      code: "unbounded",
      message: expect.stringContaining("upper end"),
    });
    expect(await solved(falling(2))).toMatchObject({ status: "infeasible" });
  });

  it("holds every change for one solve only, and forgets what was asked before", async () => {
    const session = await solver.open(wholes([3, 5, 4, 6], [10, [2, 3, 1, 4], inf], [-inf, [1, 1, 1, 1], 6]));
    const first = await session.solve();
    const others = [
      { costs: [-3, -5, -4, -6] },
      { rowBounds: [{ at: 1, lower: -inf, upper: 2 }] },
      { columnBounds: [{ at: 3, lower: 0, upper: 0 }] },
      { start: [5, 0, 0, 0] },
    ];
    for (const request of others) {
      const once = await session.solve(request);
      expect(await session.solve()).toEqual(first);
      expect(await session.solve(request)).toEqual(once);
    }
    session.close();
  });

  it("is not misled by a start that breaks a row", async () => {
    const milp = wholes([600, 1000], [17, [3, 5], inf]);
    expect(await solved(milp, { start: [0, 0] })).toMatchObject({ status: "optimal", objective: 3400 });
    expect(await solved(milp, { start: [9, 9] })).toMatchObject({ status: "optimal", objective: 3400 });
  });

  it("answers a signal that is set already with the start, and a bound by the ends alone", async () => {
    const answer = await solved(wholes([600, 1000], [17, [3, 5], inf]), { signal: AbortSignal.abort(), start: [9, 9] });
    expect(answer).toEqual({ status: "stopped", values: [9, 9], objective: 14_400, bound: 0, nodes: 0 });
  });

  it("passes on what a listener throws, and works afterwards", async () => {
    // Forty things of odd weights under three limits: long enough for a first report.
    const weight = (row: number, at: number) => 101 + ((at * 7919 + row * 104729) % 887);
    const things = Array.from({ length: 40 }, (_, at) => at);
    const milp: Milp = {
      ...wholes(things.map((at) => -(weight(0, at) + weight(1, at) + weight(2, at)))),
      rows: [0, 1, 2].map((row) => ({
        name: `r${row}`,
        lower: -inf,
        upper: 9001,
        terms: things.map((at) => [at, weight(row, at)] as const),
      })),
    };
    const session = await solver.open(milp);
    let reports = 0;
    const onProgress = () => {
      reports += 1;
      throw new RangeError("mine");
    };
    await expect(session.solve({ onProgress, timeS: 20 })).rejects.toThrow(new RangeError("mine"));
    expect(reports).toBe(1);
    const allFixed = things.map((at) => ({ at, lower: 0, upper: 0 }));
    expect(await session.solve({ columnBounds: allFixed })).toMatchObject({ status: "optimal", objective: 0 });
    session.close();
  });
});

describe("a solver that cannot do its work says why and what to do", () => {
  it("a model with faults is refused by path", async () => {
    const milp = wholes([Number.NaN], [5, [1, 1], 4]);
    await expect(solver.open(milp)).rejects.toMatchObject({
      code: "model-not-readable",
      faults: [{ path: "columns[0]" }, { path: "rows[0]" }, { path: "rows[0].terms[1]" }],
    });
  });

  it("a request that does not fit its model is refused by path", async () => {
    const session = await solver.open(wholes([1, 1]));
    await expect(
      session.solve({ costs: [1], rowBounds: [{ at: 0, lower: 0, upper: 1 }], timeS: 0 }),
    ).rejects.toMatchObject({
      code: "model-not-readable",
      faults: [{ path: "costs" }, { path: "rowBounds[0]" }, { path: "timeS" }],
    });
    session.close();
    await expect(session.solve()).rejects.toMatchObject({ code: "session-closed" });
  });

  it("a solver that does not load is named, and loaded again at the next try", async () => {
    let tries = 0;
    const failsOnce = highsSolver({}, async () => {
      tries += 1;
      if (tries === 1) throw new Error("no such file");
      return loadHighs();
    });
    await expect(failsOnce.open(wholes([1]))).rejects.toMatchObject({
      code: "solver-not-loaded",
      message: expect.stringMatching(/no such file.*install the packages again/),
    });
    const session = await failsOnce.open(wholes([-1]));
    expect(await session.solve()).toMatchObject({ objective: -9 });
    failsOnce.close();
  });

  it("a wrong address of the solver's file is named with the address", async () => {
    await expect(highsSolver({ wasmUrl: "/nowhere/highs.wasm" }).open(wholes([1]))).rejects.toMatchObject({
      code: "solver-not-loaded",
      message: expect.stringContaining("/nowhere/highs.wasm"),
    });
  });

  it("memory that gives out is named, and a fresh solver is loaded afterwards", async () => {
    let loads = 0;
    const poor = highsSolver({}, async () => {
      loads += 1;
      const highs = await loadHighs();
      if (loads > 1) return highs;
      const broken = Object.create(highs) as typeof highs;
      return Object.assign(broken, {
        createModel: () => {
          throw Object.assign(new Error("Aborted(OOM). Cannot enlarge memory"), { name: "RuntimeError" });
        },
      });
    });
    await expect(poor.open(wholes([1]))).rejects.toMatchObject({
      code: "out-of-memory",
      message: expect.stringContaining("fewer modules at a time"),
    });
    const session = await poor.open(wholes([-1]));
    expect(await session.solve()).toMatchObject({ objective: -9 });
    expect(loads).toBe(2);
    poor.close();
  });
});
