import type { MilpProgress, MilpSolver, StopSignal } from "@fusebook/core/plan";
import { highsWorker } from "@fusebook/solver";
import type { Io } from "./io.js";

const percent = (ratio: number): string => (Number.isFinite(ratio) ? `${(100 * ratio).toFixed(1)} %` : "not known yet");

/** How far one proof has come: both ends in the model's own units. */
const said = ({ bound, best, gapRatio }: MilpProgress): string =>
  `proving: ${best === undefined ? "no answer yet" : `best ${best}`}, nothing under ${bound}, gap ${percent(gapRatio)}; Ctrl-C stops`;

/** The solver with the bound and the gap of every proof shown while it runs. */
const watched = (solver: MilpSolver, io: Io): MilpSolver => ({
  async open(milp) {
    const session = await solver.open(milp);
    return {
      solve: (request = {}) =>
        session.solve({
          ...request,
          onProgress: (progress) => {
            io.progress(said(progress));
            request.onProgress?.(progress);
          },
        }),
      close: () => session.close(),
    };
  },
  close: () => solver.close(),
});

/** Work with the solver in a thread of its own, so that Ctrl-C is heard while it runs; the thread and the watch end with it. */
export async function withSolver<Result>(
  io: Io,
  work: (solver: MilpSolver, signal: StopSignal) => Promise<Result>,
): Promise<Result> {
  const watch = io.interrupt();
  const solver = highsWorker();
  try {
    return await work(watched(solver, io), watch.signal);
  } finally {
    solver.close();
    watch.release();
    io.progress(undefined);
  }
}
