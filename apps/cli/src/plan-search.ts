import { checkRecord } from "@fusebook/core/findings";
import { type Front, type PlanFrontProgress, planFront, type RecordCheck } from "@fusebook/core/plan";
import { type CoachIndex, indexRecord, type Job } from "@fusebook/core/record";
import type { Io } from "./io.js";
import { withReasons } from "./plan-reasons.js";
import { withSolver } from "./plan-solver.js";

export interface Found extends Front {
  /** Ctrl-C ended the search: the plans are the best found so far. */
  readonly isStopped: boolean;
}

/** Only a new `stop` or `mend` takes a plan out, so milder rules are not asked. */
const gravely: RecordCheck = (record) => checkRecord(indexRecord(record), { atLeast: "mend" });

/** One turn of the event loop, so that Ctrl-C is heard. */
const turn = (): Promise<void> => new Promise((done) => setImmediate(done));

const said = ({ found, open, checked, cuts }: PlanFrontProgress): string =>
  `${found} ${found === 1 ? "plan" : "plans"} found, ${open === 0 ? "none left to find" : `${open} ${open === 1 ? "gap" : "gaps"} still open`}, ${checked} checked${cuts > 0 ? `, ${cuts} cut` : ""}; Ctrl-C stops with the best so far`;

/** The plans worth choosing from, with progress on the terminal and Ctrl-C to stop: then what was found so far, said to be incomplete. */
export function searchPlans(index: CoachIndex, job: Job | undefined, io: Io): Promise<Found> {
  return withSolver(io, async (solver, signal) => {
    const front = await planFront(index, job, {
      solver,
      signal,
      check: gravely,
      breathe: turn,
      onProgress: (progress) => io.progress(said(progress)),
    });
    return { ...withReasons(front, index, job), isStopped: signal.aborted };
  });
}
