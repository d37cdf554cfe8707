import type { CircuitId, LoadId } from "../record/index.js";

/** What is on. Circuits not named are off. A circuit's duty is 1 where absent. */
export interface CoachState {
  /** As it is named on screens and papers: "everything on", "busy evening". */
  readonly name: string;
  readonly on: ReadonlySet<CircuitId>;
  readonly dutyRatio?: ReadonlyMap<CircuitId, number>;
  readonly chargerOn?: boolean;
  readonly engineOn?: boolean;
  /** State of charge of every battery bank, 0..1; each bank's own figure where absent. */
  readonly chargeRatio?: number;
  /** Motors held still: they draw their stall current. None where absent. */
  readonly stalled?: ReadonlySet<LoadId>;
}
