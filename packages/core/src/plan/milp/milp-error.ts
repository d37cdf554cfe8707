import type { MilpFault } from "./milp-faults.js";

/** Why a solver gave no answer at all. */
export type MilpErrorCode =
  | "model-not-readable"
  | "solver-not-loaded"
  | "out-of-memory"
  | "unbounded"
  | "session-closed"
  | "number-too-long"
  | "solver-failed";

/** A solver that could not do its work: never a verdict on the plan. The message says what happened and what to do next. */
export class MilpError extends Error {
  override readonly name = "MilpError";
  constructor(
    readonly code: MilpErrorCode,
    message: string,
    /** The faults of the model, where those are the reason. */
    readonly faults: readonly MilpFault[] = [],
  ) {
    super(`${message} [${code}]`);
  }
}
