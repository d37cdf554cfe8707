import type { MilpSolver, StopSignal } from "@fusebook/core/plan";
import { highsWorker } from "@fusebook/solver";
import type { Io } from "./io.js";

/** Work with the solver in a thread of its own, so that Ctrl-C is heard while it runs; the thread and the watch end with it. */
export async function withSolver<Result>(
  io: Io,
  work: (solver: MilpSolver, signal: StopSignal) => Promise<Result>,
): Promise<Result> {
  const watch = io.interrupt();
  const solver = highsWorker();
  try {
    return await work(solver, watch.signal);
  } finally {
    solver.close();
    watch.release();
    io.progress(undefined);
  }
}
