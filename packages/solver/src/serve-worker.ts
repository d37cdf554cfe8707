import { MilpError, type MilpSession, type MilpSolver } from "@fusebook/core/plan";
import { highsSolver } from "./highs-solver.js";
import { asMilpError } from "./wasm-failure.js";
import type { FromWorker, ToWorker } from "./worker-messages.js";

/** The worker's side: does one message after the other on one solver, and reports while it works. Returns what takes a message. */
export function serveWorker(post: (message: FromWorker) => void): (message: ToWorker) => Promise<void> {
  let solver: MilpSolver | undefined;
  const sessions = new Map<number, MilpSession>();
  const work = async (message: ToWorker): Promise<void> => {
    if (message.kind === "close") {
      sessions.get(message.session)?.close();
      sessions.delete(message.session);
      return;
    }
    const { job } = message;
    try {
      if (message.kind === "open") {
        solver ??= highsSolver(message.place);
        sessions.set(message.session, await solver.open(message.milp));
        post({ kind: "opened", job });
        return;
      }
      const session = sessions.get(message.session);
      if (session === undefined) throw new MilpError("session-closed", "this session is closed; open the model again");
      const { stopFlag } = message;
      const answer = await session.solve({
        ...message.request,
        onProgress: (progress) => post({ kind: "progress", job, progress }),
        ...(stopFlag === undefined ? {} : { signal: flagSignal(stopFlag) }),
      });
      post({ kind: "answer", job, answer });
    } catch (error) {
      const named = asMilpError(error, "the model");
      post({ kind: "failed", job, code: named.code, message: named.message, faults: named.faults });
    }
  };
  let last: Promise<void> = Promise.resolve();
  return (message) => {
    last = last.then(() => work(message));
    return last;
  };
}

/** A shared number read as a signal. Nobody needs waking: the solver asks at its checkpoints. */
const flagSignal = (flag: Int32Array) => ({
  get aborted() {
    return Atomics.load(flag, 0) !== 0;
  },
  addEventListener() {},
  removeEventListener() {},
});
