import { type Milp, type MilpProgress, objectiveOf, violationsOf } from "@fusebook/core/plan";
import { highsSolver, highsWorker } from "@fusebook/solver";
import { afterAll, afterEach, describe, expect, it, vi } from "vitest";
import { seededKnapsack } from "./plan-solver-models.js";

/**
 * Sixty things, five limits: tens of seconds for this solver. Its least cost was proved by CBC 2.10.8 from the written MPS file (gap 0), run by hand and not here.
 */
const HARD: Milp = seededKnapsack(7, 60, 5);
const HARD_LEAST = -21554;

const worker = highsWorker();
afterAll(() => worker.close());
afterEach(() => {
  vi.unstubAllGlobals();
});

const stopAfter = (ms: number): AbortSignal => AbortSignal.timeout(ms);

describe("a hard model stopped on the way", () => {
  it("in the worker after 200 ms: a best answer that keeps every rule, and a bound that the true least keeps", async () => {
    const session = await worker.open(HARD);
    const reports: MilpProgress[] = [];
    const begun = performance.now();
    const answer = await session.solve({
      signal: stopAfter(200),
      onProgress: (report) => reports.push(report),
      start: nothing(HARD),
    });
    expect(performance.now() - begun).toBeLessThan(3000);
    session.close();
    expect(answer.status).toBe("stopped");
    expect(violationsOf(HARD, answer.values ?? [])).toEqual([]);
    expect(answer.bound).toBeLessThanOrEqual(HARD_LEAST);
    expect(answer.bound).toBeGreaterThan(-Infinity);
    expect(answer.objective).toBeGreaterThanOrEqual(HARD_LEAST);
    for (const report of reports) expect(report.bound).toBeLessThanOrEqual(HARD_LEAST);
  });

  it("in the worker where no memory can be shared: the thread is ended, what it had reported is the answer, and the next solve works", async () => {
    vi.stubGlobal("SharedArrayBuffer", undefined);
    const session = await worker.open(HARD);
    const stop = new AbortController();
    let best = Infinity;
    const answer = await session.solve({
      signal: stop.signal,
      onProgress: (report) => {
        if (report.values === undefined || stop.signal.aborted) return;
        best = report.best ?? Infinity;
        if (best < 0) stop.abort();
      },
    });
    expect(answer.status).toBe("stopped");
    // A better one may have been reported between the word to stop and the end of the thread.
    expect(answer.objective).toBeLessThanOrEqual(best);
    expect(answer.objective).toBe(objectiveOf(HARD, answer.values ?? []));
    expect(answer.objective).toBeGreaterThanOrEqual(HARD_LEAST);
    expect(violationsOf(HARD, answer.values ?? [])).toEqual([]);
    expect(answer.bound).toBeLessThanOrEqual(HARD_LEAST);
    // Everything fixed but two things: quickly proved, in a fresh thread that has to be given the model again.
    const fixed = HARD.columns.slice(2).map((_, at) => ({ at: at + 2, lower: 0, upper: 0 }));
    const small = await session.solve({ columnBounds: fixed });
    const [a = 0, b = 0] = HARD.columns.map((column) => column.cost);
    expect(small).toMatchObject({ status: "optimal", objective: Math.min(a + b, a, b) });
    session.close();
  });

  it("in this thread, out of a report: the best and the bound reported until then", async () => {
    const session = await highsSolver().open(HARD);
    const stop = new AbortController();
    let last: MilpProgress | undefined;
    const answer = await session.solve({
      signal: stop.signal,
      onProgress: (report) => {
        last = report;
        if (report.best !== undefined && report.bound > -Infinity) stop.abort();
      },
    });
    session.close();
    expect(answer.status).toBe("stopped");
    expect(violationsOf(HARD, answer.values ?? [])).toEqual([]);
    expect(answer.objective).toBeLessThanOrEqual(last?.best ?? -Infinity);
    expect(answer.bound).toBeGreaterThanOrEqual(last?.bound ?? Infinity);
    expect(answer.bound).toBeLessThanOrEqual(HARD_LEAST);
  });

  it("by time alone: the same", async () => {
    const session = await worker.open(HARD);
    const answer = await session.solve({ timeS: 0.5, start: nothing(HARD) });
    session.close();
    expect(answer.status).toBe("stopped");
    expect(violationsOf(HARD, answer.values ?? [])).toEqual([]);
    expect(answer.bound).toBeLessThanOrEqual(HARD_LEAST);
    expect(answer.objective).toBeGreaterThanOrEqual(HARD_LEAST);
  });
});

/** Packing nothing is always allowed. */
const nothing = (milp: Milp): number[] => milp.columns.map(() => 0);
