import { type Milp, MilpError, type MilpSession } from "@fusebook/core/plan";
import { afterAll, describe, expect, it } from "vitest";
import { highsSolver } from "./highs-solver.js";
import { highsWorker } from "./highs-worker.js";
import { serveWorker } from "./serve-worker.js";
import type { SpawnWorker, ToWorker } from "./worker-messages.js";
import { workerSolver } from "./worker-solver.js";

const worker = highsWorker();
afterAll(() => worker.close());

/** Least cost of yes-or-no things that reach a sum: `need` of weights 1, 2, 3 ... */
const reaching = (things: number, need: number): Milp => ({
  name: `reaching-${things}-${need}`,
  columns: Array.from({ length: things }, (_, at) => ({
    name: `x${at}`,
    cost: 7 * (at + 1) + (at % 3),
    lower: 0,
    upper: 1,
    isInteger: true,
  })),
  rows: [
    {
      name: "need",
      lower: need,
      upper: Infinity,
      terms: Array.from({ length: things }, (_, at) => [at, at + 1] as const),
    },
  ],
});

describe("the solver in a worker", () => {
  it("answers what the one in this thread answers", async () => {
    for (const milp of [reaching(8, 11), reaching(12, 40), reaching(3, 99)]) {
      const there = await (await worker.open(milp)).solve();
      const here = await (await highsSolver().open(milp)).solve();
      expect(there).toEqual(here);
    }
  });

  it("does what many ask at once one after the other, each on its own model", async () => {
    const needs = [5, 9, 14, 20, 27];
    const sessions = await Promise.all(needs.map((need) => worker.open(reaching(9, need))));
    const answers = await Promise.all(sessions.map((session) => session.solve()));
    for (const [at, need] of needs.entries()) {
      const sum = answers[at]?.values?.reduce((all, value, column) => all + value * (column + 1), 0);
      expect(sum).toBeGreaterThanOrEqual(need);
    }
    for (const session of sessions) session.close();
  });

  it("never starts a solve that was stopped while it waited", async () => {
    const session = await worker.open(reaching(9, 20));
    const stop = new AbortController();
    const first = session.solve();
    const waiting = session.solve({ signal: stop.signal, start: Array(9).fill(1) });
    stop.abort();
    expect(await waiting).toMatchObject({ status: "stopped", nodes: 0, values: Array(9).fill(1) });
    expect(await first).toMatchObject({ status: "optimal" });
    session.close();
  });

  it("names a model's faults before anything is started, and a closed session", async () => {
    let starts = 0;
    const never = workerSolver(() => {
      starts += 1;
      throw new Error("not to be started");
    });
    const bad: Milp = {
      name: "bad",
      columns: [{ name: "x", cost: Number.NaN, lower: 0, upper: 1, isInteger: true }],
      rows: [],
    };
    await expect(never.open(bad)).rejects.toMatchObject({ code: "model-not-readable" });
    expect(starts).toBe(0);
    const session = await worker.open(reaching(3, 2));
    session.close();
    await expect(session.solve()).rejects.toMatchObject({ code: "session-closed" });
  });

  it("carries the solver's own refusals across", async () => {
    const falling: Milp = {
      name: "falling",
      columns: [{ name: "x", cost: -1, lower: 0, upper: Infinity, isInteger: true }],
      rows: [],
    };
    const refused = await (await worker.open(falling)).solve().catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(MilpError);
    expect(refused).toMatchObject({ code: "unbounded" });
    expect((refused as MilpError).message.match(/\[unbounded\]/g)).toHaveLength(1);
  });

  it("says so where no worker can be started or one breaks off, and starts another for the next", async () => {
    await expect(
      workerSolver(() => {
        throw new Error("no threads here");
      }).open(reaching(3, 2)),
    ).rejects.toMatchObject({ code: "solver-not-loaded", message: expect.stringContaining("no threads here") });
    const flaky = workerSolver(breaksOff("its thread ended (134)", "Worker terminated due to reaching memory limit"));
    await expect(flaky.open(reaching(3, 2))).rejects.toMatchObject({ code: "solver-not-loaded" });
    await expect(flaky.open(reaching(3, 2))).rejects.toMatchObject({ code: "out-of-memory" });
    const session = await flaky.open(reaching(3, 2));
    expect(await session.solve()).toMatchObject({ status: "optimal", objective: 15 });
  });

  it("names the address where the solver's file is not", async () => {
    const lost = highsWorker({ wasmUrl: "/nowhere/highs.wasm" });
    await expect(lost.open(reaching(3, 2))).rejects.toMatchObject({
      code: "solver-not-loaded",
      message: expect.stringContaining("/nowhere/highs.wasm"),
    });
    lost.close();
  });

  it("ends with what waits refused when it is closed", async () => {
    const brief = highsWorker();
    const session: MilpSession = await brief.open(reaching(9, 20));
    const waiting = [session.solve(), session.solve()].map((each) => each.catch((error: MilpError) => error.code));
    brief.close();
    expect(await Promise.all(waiting)).toEqual(["session-closed", "session-closed"]);
  });
});

/** Workers that break off one after the other for the reasons given; the next one works, in this thread. */
function breaksOff(...reasons: string[]): SpawnWorker {
  return (hears) => {
    const reason = reasons.shift();
    const take = serveWorker((message) => hears.message(message));
    return {
      post: (message: ToWorker) => {
        if (reason === undefined) void take(message);
        else queueMicrotask(() => hears.broke(reason));
      },
      terminate() {},
      hold() {},
    };
  };
}
