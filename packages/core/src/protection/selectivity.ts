import type { Comparison, Span } from "../quantity/index.js";
import type { FuseGates } from "./fuse-gates.js";
import { bendsA, openingTimes } from "./opening-times.js";

export interface Selectivity {
  /**
   * `holds`: whatever the current up to the prospective one, the slowest lower fuse opens before the quickest upper one. `fails`: at some current the
   * upper one is sure to open first. `open`: their gates overlap, and two particular fuses decide it.
   */
  readonly verdict: Comparison;
  /** Where they come closest: there the upper fuse may take this many times as long as the lower one, at the least. */
  readonly worstRatio: number;
  readonly worstAtA: number;
  /** Currents compared: from where the lower fuse must open, up to the prospective current. */
  readonly fromA: number;
  readonly uptoA: Span;
}

/** The least current at which the lower fuse must open at all. */
const mustOpenA = (fuse: FuseGates): number =>
  fuse.ratedSpan.hi * Math.max(...fuse.sets.map((set) => set.latest.points[0]?.[0] ?? Number.POSITIVE_INFINITY));

/**
 * Does the fuse nearest the fault open, and the one above it stay whole? Gates compared over the whole range of current up to the prospective one; both
 * families' curves are straight between gates on logarithmic scales, so the closest point lies at a gate or at an end.
 */
export function selectivityOf(lower: FuseGates, upper: FuseGates, uptoA: Span): Selectivity {
  const fromA = Math.min(mustOpenA(lower), uptoA.hi);
  const inside = [...bendsA(lower), ...bendsA(upper)].filter((currentA) => currentA > fromA && currentA < uptoA.hi);
  let worstRatio = Number.POSITIVE_INFINITY;
  let worstAtA = fromA;
  let isUpperFirst = false;
  for (const currentA of [fromA, ...inside, uptoA.hi]) {
    const below = openingTimes(lower, currentA);
    const above = openingTimes(upper, currentA);
    // Where neither need open at all nothing is compared.
    const ratio =
      above.soonestS === Number.POSITIVE_INFINITY ? Number.POSITIVE_INFINITY : above.soonestS / below.latestS;
    if (ratio < worstRatio) [worstRatio, worstAtA] = [ratio, currentA];
    if (currentA <= uptoA.lo && above.latestS < below.soonestS) isUpperFirst = true;
  }
  const verdict = isUpperFirst ? "fails" : worstRatio > 1 ? "holds" : "open";
  return { verdict, worstRatio, worstAtA, fromA, uptoA };
}
