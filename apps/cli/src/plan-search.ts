import { type Front, frontOf } from "@fusebook/core/plan";
import type { CoachIndex, Job } from "@fusebook/core/record";
import type { Io } from "./io.js";
import { withSolver } from "./plan-solver.js";

export interface Found extends Front {
  /** Ctrl-C ended the search: the plans are the best found so far. */
  readonly isStopped: boolean;
}

/** The plans worth choosing from, with progress on the terminal and Ctrl-C to stop: then what was found so far, said to be incomplete. */
export function searchPlans(index: CoachIndex, job: Job | undefined, io: Io): Promise<Found> {
  return withSolver(io, async (_solver, signal) => ({ ...frontOf(index, job), isStopped: signal.aborted }));
}
