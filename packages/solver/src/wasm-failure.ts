import { MilpError } from "@fusebook/core/plan";

/** What a broken run of the solver means: its memory gave out, or it broke in another way. Undefined for what is no failure of the solver's. */
export function asMilpError(error: unknown, modelName: string): MilpError | undefined {
  if (error instanceof MilpError) return error;
  if (!(error instanceof Error)) return undefined;
  if (/out of memory|enlarge memory|memory\.grow|allocation|bad_alloc|OOM|array buffer/i.test(error.message))
    return new MilpError(
      "out-of-memory",
      `${modelName}: no memory left for this model; close other programs, or plan fewer modules at a time`,
    );
  // A WebAssembly program that throws in C++ ends with "Aborted()" or a trap, and its memory is not to be trusted after it.
  if (error.name === "RuntimeError" || /^Highs_|Aborted|native/i.test(error.message))
    return new MilpError(
      "solver-failed",
      `${modelName}: the solver broke off (${error.message}); try again, or write the model out and try it elsewhere`,
    );
  return undefined;
}
