import { COMMON_PRACTICE, type Source } from "../quantity/index.js";
import type { Load, Wish } from "../record/index.js";
import { type SuitabilityCode, suitabilityOf } from "./suitability.js";

/** Must a load keep full, unpulsed voltage: `yes`, `no`, or `unknown` (its class is not known), and why. */
export interface Steadiness {
  readonly must: "yes" | "no" | "unknown";
  readonly code: "wished-steady" | SuitabilityCode;
  readonly source: Source;
}

/**
 * Must this load stay steady? Yes where the owner wishes it or where PWM is not for its class. `wish`: the job's wish, which wins over the
 * load's own. A load that may dim only under a condition is `no` here: see `suitabilityOf` for the condition.
 */
export function steadyOf(load: Load, wish: Wish | undefined = load.wish): Steadiness {
  const suitability = suitabilityOf(load);
  if (suitability.may === "no") return { must: "yes", code: suitability.code, source: suitability.source };
  if (wish === "must-stay-steady") return { must: "yes", code: "wished-steady", source: COMMON_PRACTICE };
  if (suitability.may === "unknown") return { must: "unknown", code: suitability.code, source: suitability.source };
  return { must: "no", code: suitability.code, source: suitability.source };
}
