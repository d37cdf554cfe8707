import { type Milp, MilpError, type MilpRequest, type MilpSolver } from "@fusebook/core/plan";
import type { HighsPlace } from "./load-highs.js";
import { refuseFaults, refuseRequest } from "./refuse-faults.js";
import { type Job, openJob, solveJob } from "./worker-jobs.js";
import type { FromWorker, SpawnWorker, WorkerEnd } from "./worker-messages.js";

/** How long a running solve may take to see that it should stop, before its thread is ended, in milliseconds. */
const GRACE_MS = 150;

/**
 * The solver in a thread of its own, started at the first `open` and kept: the screen stays free, and a solve can be stopped at any time.
 * Where memory can be shared, a stop is seen at the solver's next checkpoint; where it cannot, or no checkpoint comes in time, the thread is ended, the
 * best answer and bound reported until then are the answer, and the next solve starts a fresh thread.
 */
export function workerSolver(
  spawn: SpawnWorker,
  place: HighsPlace = {},
  prepare: (place: HighsPlace) => Promise<HighsPlace> = async (same) => same,
): MilpSolver {
  const models = new Map<number, Milp>();
  const queue: Job[] = [];
  let worker: WorkerEnd | undefined;
  /** Sessions whose model the present thread holds. */
  let held = new Set<number>();
  let active: Job | undefined;
  /** Where workers find the solver's program, once that is made ready. */
  let prepared = place;
  let preparing: Promise<void> | undefined;
  let sessions = 0;
  let jobs = 0;

  const drop = () => {
    worker?.terminate();
    worker = undefined;
    held = new Set();
  };
  const finish = (done: (job: Job) => void) => {
    const job = active;
    active = undefined;
    worker?.hold(false);
    if (job !== undefined) {
      job.ended();
      done(job);
    }
    next();
  };
  const start = (): WorkerEnd => {
    const here = spawn({
      message: (message) => {
        if (worker === here) hear(message);
      },
      broke: (why) => {
        if (worker !== here) return;
        drop();
        finish((job) => job.reject(brokeOff(why)));
      },
    });
    return here;
  };
  const hear = (message: FromWorker) => {
    if (active === undefined || message.job !== active.id) return;
    if (message.kind === "progress") {
      try {
        active.progress(message.progress);
      } catch (error) {
        drop();
        finish((job) => job.reject(error));
      }
    } else if (message.kind === "opened") {
      held.add(active.session);
      if (active.kind === "open") finish((job) => job.opened());
      else send(active);
    } else if (message.kind === "answer") finish((job) => job.answer(message.answer));
    else {
      // What broke the solver may have broken its memory.
      if (message.code === "out-of-memory" || message.code === "solver-failed") drop();
      const error = new MilpError(message.code, message.message.replace(/ \[[a-z-]+\]$/, ""), message.faults);
      finish((job) => job.reject(error));
    }
  };
  const send = (job: Job) => {
    const { session, id } = job;
    if (!held.has(session)) {
      const milp = models.get(session);
      if (milp === undefined) finish((each) => each.reject(closedSession()));
      else worker?.post({ kind: "open", job: id, session, milp, place: prepared });
    } else if (job.message !== undefined) worker?.post(job.message);
  };
  const next = () => {
    if (active !== undefined) return;
    active = queue.shift();
    if (active === undefined) return;
    try {
      worker ??= start();
      worker.hold(true);
      send(active);
    } catch (error) {
      drop();
      finish((job) => job.reject(brokeOff(error instanceof Error ? error.message : String(error))));
    }
  };
  /** Somebody wants a job stopped: one that waits never starts; one that runs is asked, and after a while no longer asked. */
  const stop = (job: Job, canBeAsked: boolean) => {
    if (job === active)
      job.later(
        () => {
          if (job !== active) return;
          drop();
          finish((each) => each.cut());
        },
        canBeAsked ? GRACE_MS : 0,
      );
    else if (queue.includes(job)) {
      queue.splice(queue.indexOf(job), 1);
      job.ended();
      job.cut();
    }
  };

  return {
    async open(milp) {
      refuseFaults(milp);
      preparing ??= prepare(place).then((ready) => {
        prepared = ready;
      });
      await preparing;
      sessions += 1;
      const session = sessions;
      models.set(session, milp);
      const close = () => {
        models.delete(session);
        if (held.delete(session)) worker?.post({ kind: "close", session });
      };
      await new Promise<void>((resolve, reject) => {
        jobs += 1;
        queue.push(openJob(jobs, session, resolve, reject));
        next();
      }).catch((error: unknown) => {
        close();
        throw error;
      });
      return {
        async solve(request: MilpRequest = {}) {
          if (!models.has(session)) throw closedSession();
          refuseRequest(milp, request);
          jobs += 1;
          const id = jobs;
          return new Promise((resolve, reject) => {
            const job = solveJob(id, session, milp, request, { resolve, reject, stop: (each, can) => stop(each, can) });
            if (job === undefined) return;
            queue.push(job);
            next();
          });
        },
        close,
      };
    },
    close() {
      models.clear();
      drop();
      for (const job of queue.splice(0)) job.reject(closedSession());
      finish((job) => job.reject(closedSession()));
    },
  };
}

const closedSession = () => new MilpError("session-closed", "this session is closed; open the model again");

const brokeOff = (why: string): MilpError =>
  /memory/i.test(why)
    ? new MilpError(
        "out-of-memory",
        `no memory left for the solver (${why}); close other programs, or plan fewer modules at a time`,
      )
    : new MilpError("solver-not-loaded", `the solver's worker broke off: ${why}; try again, or start the program anew`);
