import type { CoachSpans } from "../network/index.js";
import type { Outcome } from "../quantity/index.js";
import type { CoachIndex, DimBlockId, FullPolicy, Module } from "../record/index.js";
import type { Wiring } from "./wiring.js";

/** What every rule may look at. Engine results are computed once, when first asked for. */
export interface CoachContext {
  readonly index: CoachIndex;
  readonly policy: FullPolicy;
  /** Every circuit on at once; undefined where the network cannot be solved (then a rule of its own says why). */
  allOn(): CoachSpans | undefined;
  /** The worst state that can really happen: lighting and electronics on, the greatest motor running. */
  busy(): CoachSpans | undefined;
  /** Which cables hang on which side of the supplies. */
  wiring(): Wiring;
  /** Dim blocks that the positions as found enable on this module today; none on a kind that only switches. */
  enabledBlocks(module: Module): Outcome<readonly DimBlockId[]>;
}
