import type { Milp, MilpAnswer, MilpProgress, MilpRequest } from "@fusebook/core/plan";
import { beforehand, stoppedAnswer } from "./stopped-answer.js";
import type { PlainRequest, ToWorker } from "./worker-messages.js";

/** One thing asked of a worker, and what becomes of it. */
export interface Job {
  readonly id: number;
  readonly session: number;
  readonly kind: "open" | "solve";
  readonly message?: ToWorker;
  opened(): void;
  /** Takes a report; throws what the asker's own listener throws. */
  progress(progress: MilpProgress): void;
  answer(answer: MilpAnswer): void;
  /** Answers with the best that was reported until now. */
  cut(): void;
  reject(error: unknown): void;
  /** Does something after a while, unless the job ends before. */
  later(work: () => void, afterMs: number): void;
  /** The job is over: nobody listens any more. */
  ended(): void;
}

/** A model to be put into the worker's memory. */
export const openJob = (id: number, session: number, resolve: () => void, reject: (error: unknown) => void): Job => ({
  id,
  session,
  kind: "open",
  opened: resolve,
  progress() {},
  answer() {},
  cut() {},
  reject,
  later() {},
  ended() {},
});

/** A solve. Undefined where its signal is set already: then it is answered at once and nothing is asked of the worker. */
export function solveJob(
  id: number,
  session: number,
  milp: Milp,
  request: MilpRequest,
  to: {
    readonly resolve: (answer: MilpAnswer) => void;
    readonly reject: (error: unknown) => void;
    readonly stop: (job: Job, canBeAsked: boolean) => void;
  },
): Job | undefined {
  const { onProgress, signal, ...plain } = request;
  const known = beforehand(milp, request);
  let found: { values?: readonly number[]; bound: number; nodes: number } = { bound: -Infinity, nodes: 0 };
  const cut = () => to.resolve(stoppedAnswer(milp, request, known, found));
  if (signal?.aborted === true) {
    cut();
    return undefined;
  }
  const stopFlag =
    signal !== undefined && mayShareMemory()
      ? new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))
      : undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const job: Job = {
    id,
    session,
    kind: "solve",
    message: {
      kind: "solve",
      job: id,
      session,
      request: plain satisfies PlainRequest,
      ...(stopFlag ? { stopFlag } : {}),
    },
    opened() {},
    progress(progress) {
      const { values = found.values } = progress;
      found = { bound: Math.max(found.bound, progress.bound), nodes: progress.nodes, ...(values ? { values } : {}) };
      onProgress?.(progress);
    },
    answer: to.resolve,
    cut,
    reject: to.reject,
    later(work, afterMs) {
      timer = setTimeout(work, afterMs);
    },
    ended() {
      clearTimeout(timer);
      signal?.removeEventListener("abort", onAbort);
    },
  };
  const onAbort = () => {
    if (stopFlag !== undefined) Atomics.store(stopFlag, 0, 1);
    to.stop(job, stopFlag !== undefined);
  };
  signal?.addEventListener("abort", onAbort);
  return job;
}

/** Browsers share memory only with pages that are set apart from others; elsewhere the constructor may not even be there. */
const mayShareMemory = (): boolean =>
  typeof SharedArrayBuffer !== "undefined" &&
  (globalThis as { readonly crossOriginIsolated?: boolean }).crossOriginIsolated !== false;
