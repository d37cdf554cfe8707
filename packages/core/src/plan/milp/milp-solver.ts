import type { Milp } from "./milp.js";

/** How somebody says "stop": the shape of the platform's `AbortSignal`, so one of those may be handed over as it is. */
export interface StopSignal {
  readonly aborted: boolean;
  addEventListener(type: "abort", listener: () => void): void;
  removeEventListener(type: "abort", listener: () => void): void;
}

/** Other ends for one row or column, by its place in the model. */
export interface BoundChange {
  readonly at: number;
  readonly lower: number;
  readonly upper: number;
}

/** How far a running solve has come. */
export interface MilpProgress {
  /** No answer can cost less than this; `-Infinity` before the first bound. */
  readonly bound: number;
  /** What the best answer so far costs; absent before the first. */
  readonly best?: number;
  /** `(best - bound) / max(1, |best|)`; `Infinity` without a best. */
  readonly gapRatio: number;
  /** Branches looked at. */
  readonly nodes: number;
  /** The best answer so far, column by column, in the one report in which it is new. */
  readonly values?: readonly number[];
}

/**
 * What differs from the opened model in one solve. Changes hold for that solve only: the next starts again from the model as opened,
 * so that the same request gives the same answer whatever was asked before.
 */
export interface MilpRequest {
  /** One cost for each column, in place of the model's own. */
  readonly costs?: readonly number[];
  readonly rowBounds?: readonly BoundChange[];
  readonly columnBounds?: readonly BoundChange[];
  /** A known answer to begin from, one value for each column; it need not be the best, and is left aside where it breaks a row. */
  readonly start?: readonly number[];
  /** Stop after this time with the best so far. Where it strikes, the answer depends on the machine's speed. */
  readonly timeS?: number;
  readonly onProgress?: (progress: MilpProgress) => void;
  readonly signal?: StopSignal;
}

/**
 * `optimal`: `values` is a least-cost answer, proved (gap 0), and `bound` equals `objective`. `infeasible`: no answer exists, proved; `bound` is `Infinity`.
 * `stopped`: by the signal or the time; `values` is the best found so far where there is one, and nothing costs less than `bound`.
 */
export interface MilpAnswer {
  readonly status: "optimal" | "infeasible" | "stopped";
  /** One value for each column; those of whole-number columns are whole. */
  readonly values?: readonly number[];
  /** `sum(cost * value)` over the rounded values. */
  readonly objective?: number;
  readonly bound: number;
  /** Branches looked at. */
  readonly nodes: number;
}

/** One model held open in a solver; solves of one session run one after the other. */
export interface MilpSession {
  solve(request?: MilpRequest): Promise<MilpAnswer>;
  /** Gives the memory back. A later solve is refused with `session-closed`. */
  close(): void;
}

/** What proves a plan best. Adapters stand outside the core; each rejects with a `MilpError` that names what to do. */
export interface MilpSolver {
  /** Holds a model ready. Rejects with `model-not-readable` where the model has faults. */
  open(milp: Milp): Promise<MilpSession>;
  /** Ends what the solver holds (a worker thread, say); open sessions are closed. */
  close(): void;
}
