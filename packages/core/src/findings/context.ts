import type { CoachSpans } from "../network/index.js";
import type { CoachIndex, FullPolicy } from "../record/index.js";

/** What every rule may look at. Engine results are computed once, when first asked for. */
export interface CoachContext {
  readonly index: CoachIndex;
  readonly policy: FullPolicy;
  /** Every circuit on at once; undefined where the network cannot be solved (then a rule of its own says why). */
  allOn(): CoachSpans | undefined;
  /** The worst state that can really happen: lighting and electronics on, the greatest motor running. */
  busy(): CoachSpans | undefined;
}
