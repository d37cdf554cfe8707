import { type Comparison, compareSpan, type Span } from "../quantity/index.js";
import type { FaultConductor, FaultEnd } from "./far-fault.js";
import type { FuseGates } from "./fuse-gates.js";
import { openingTimes } from "./opening-times.js";
import { ADIABATIC_UP_TO_S } from "./withstand-of.js";

/** Within what time a dead short must be cleared, where nothing else is asked: as long as the law of the conductors' limit holds. */
export const CLEARED_WITHIN_S = ADIABATIC_UP_TO_S;

/** How a fault is cleared by the slowest fuse of its family and rating. */
export interface FaultClearing {
  readonly verdict: Comparison;
  /** Opening time of the slowest fuse at the nominal current; infinite where it need not open. */
  readonly latestS: number;
  readonly soonestS: number;
  /** From the greatest current to the least. */
  readonly span: Span;
  readonly withinS: number;
}

/** Does the slowest fuse open within this time, s, on a short at this end? Over the whole span of the current. */
export function faultClearing(
  fuse: FuseGates,
  end: Pick<FaultEnd, "currentA" | "span">,
  withinS = CLEARED_WITHIN_S,
): FaultClearing {
  const at = (currentA: number) => openingTimes(fuse, currentA);
  const span = { lo: at(end.span.hi).latestS, hi: at(end.span.lo).latestS };
  return {
    verdict: compareSpan(span, withinS, "at-most"),
    latestS: at(end.currentA).latestS,
    soonestS: at(end.currentA).soonestS,
    span,
    withinS,
  };
}

/** Whether one conductor in the way of a fault keeps its insulation. */
export interface ConductorInFault {
  readonly conductor: FaultConductor;
  readonly verdict: Comparison;
  /** What the slowest fuse lets through, A2s; infinite where it need not open. */
  readonly letThroughA2s: number;
  readonly letThroughSpan: Span;
  readonly limitA2s: number;
  readonly limitSpan: Span;
  /** How long the conductor stands the nominal current, s; the law holds up to 5 s, beyond it stands more. */
  readonly standsS: number;
}

/**
 * Does the slowest fuse open before this conductor's insulation is lost (`I2 t <= k2 S2`)? The more current, the less it lets through, so the least
 * current is the worst. Undefined where the conductor's size is not known. Where the fuse takes longer than the law holds (5 s), the conductor
 * loses heat and stands more: then it cannot be said to fail.
 */
export function conductorInFault(
  fuse: FuseGates,
  end: Pick<FaultEnd, "currentA" | "span">,
  conductor: FaultConductor,
): ConductorInFault | undefined {
  if (conductor.withstand.kind !== "known") return undefined;
  const { limitA2s, span: limitSpan } = conductor.withstand.value;
  const letThrough = (currentA: number) => currentA ** 2 * openingTimes(fuse, currentA).latestS;
  const letThroughSpan = { lo: letThrough(end.span.hi), hi: letThrough(end.span.lo) };
  const isBeyondLaw = openingTimes(fuse, end.span.hi).latestS > ADIABATIC_UP_TO_S;
  const holds = compareSpan(letThroughSpan, limitSpan.lo, "at-most") === "holds";
  const fails = !isBeyondLaw && compareSpan(letThroughSpan, limitSpan.hi, "at-most") === "fails";
  return {
    conductor,
    verdict: holds ? "holds" : fails ? "fails" : "open",
    letThroughA2s: letThrough(end.currentA),
    letThroughSpan,
    limitA2s,
    limitSpan,
    standsS: limitA2s / end.currentA ** 2,
  };
}
