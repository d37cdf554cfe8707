import type { Source } from "../quantity/index.js";
import type { FullPolicy } from "../record/index.js";
import { maxProtectionDistanceM } from "../tables/index.js";

export interface ProtectionDistance {
  readonly maxM: number;
  readonly source: Source;
}

/**
 * How far along the conductor from where the supply connects may its device be, m? NEC 552.10(E)(4): 450 mm; marine, 33 CFR 183.455: 178 mm, 1.02 m where
 * sheathed or enclosed all the way. No road-vehicle figure was seen: the NEC one serves, and its source says so.
 */
export function protectionDistanceOf(
  policy: Pick<FullPolicy, "conductorRule">,
  isSheathed = false,
): ProtectionDistance {
  const found = maxProtectionDistanceM(policy.conductorRule === "marine" ? "marine" : "nec", isSheathed);
  return { maxM: found.value, source: found.source };
}
