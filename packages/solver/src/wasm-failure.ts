import { MilpError } from "@fusebook/core/plan";

/** Carries what a listener threw while the solver was reporting, past everything that names the solver's own failures. */
export class ReportThrew {
  constructor(readonly thrown: unknown) {}
}

/** What a broken run of the solver means, with what to do: its memory gave out, or it broke in another way. */
export function asMilpError(error: unknown, modelName: string): MilpError {
  if (error instanceof MilpError) return error;
  const why = error instanceof Error ? error.message : String(error);
  // A WebAssembly program that cannot grow its memory ends in one of these words; one that throws in C++ ends with "Aborted" or a trap.
  return /out of memory|enlarge memory|memory\.grow|allocation|bad_alloc|OOM|array buffer/i.test(why)
    ? new MilpError(
        "out-of-memory",
        `${modelName}: no memory left for this model (${why}); close other programs, or plan fewer modules at a time`,
      )
    : new MilpError(
        "solver-failed",
        `${modelName}: the solver broke off (${why}); try again, or write the model out and try it elsewhere`,
      );
}
