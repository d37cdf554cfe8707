import type { Circuit, CoachIndex, Load, LoadId, Wish } from "../record/index.js";
import { type Steadiness, steadyOf } from "./steady.js";
import { type Suitability, suitabilityOf } from "./suitability.js";

/** One load of a circuit, judged. */
export interface JudgedLoad {
  readonly load: Load;
  readonly suitability: Suitability;
  readonly steady: Steadiness;
}

/** May a whole circuit dim: as the worst of its loads. */
export interface CircuitSuitability {
  readonly may: Suitability["may"];
  readonly loads: readonly JudgedLoad[];
  /** Loads that must stay steady beside loads that may dim: neither is served until they are parted. */
  readonly isMixed: boolean;
  readonly steady: readonly LoadId[];
  readonly dimmable: readonly LoadId[];
  /** Lamps with a plain switch of their own in series: the button cannot light them while that is off, and cannot tell. */
  readonly behindOwnSwitch: readonly LoadId[];
  /** True where the record does not say what hangs on it, or names a load that it does not hold. */
  readonly isUnlisted: boolean;
}

/**
 * May this circuit be dimmed, judged by everything on it? `no` where anything must stay steady, `unknown` where anything is not known or nothing is
 * listed, `only-if` where anything has a condition. `wishes`: the job's, by load id; they win over the loads' own.
 */
export function circuitSuitability(
  index: CoachIndex,
  circuit: Circuit,
  wishes: ReadonlyMap<string, Wish> | undefined = undefined,
): CircuitSuitability {
  const ids = circuit.loads ?? [];
  const loads: JudgedLoad[] = [];
  let isUnlisted = ids.length === 0 && circuit.isSpare !== true;
  for (const id of ids) {
    const load = index.loads.get(id);
    if (load === undefined) isUnlisted = true;
    else
      loads.push({ load, suitability: suitabilityOf(load), steady: steadyOf(load, wishes?.get(load.id) ?? load.wish) });
  }
  const steady = loads.filter((each) => each.steady.must === "yes");
  const dimmable = loads.filter((each) => each.steady.must === "no");
  const isUnknown = isUnlisted || loads.some((each) => each.steady.must === "unknown");
  const isConditional = dimmable.some((each) => each.suitability.may === "only-if");
  return {
    may: steady.length > 0 ? "no" : isUnknown ? "unknown" : isConditional ? "only-if" : "yes",
    loads,
    isMixed: steady.length > 0 && dimmable.length > 0,
    steady: steady.map((each) => each.load.id),
    dimmable: dimmable.map((each) => each.load.id),
    behindOwnSwitch: dimmable.filter((each) => each.load.hasOwnSwitch === true).map((each) => each.load.id),
    isUnlisted,
  };
}
