import { figureValue, known, missing, type Outcome, type Source, type Span } from "../quantity/index.js";
import type { Circuit, CoachIndex, ModuleKind } from "../record/index.js";
import { circuitFeed } from "./circuit-feed.js";
import { type DriverPulses, driverPulses } from "./driver-pulses.js";

/** The worst that the drivers of a circuit do to their channel over the duties it dims through. */
export interface DriverWorst {
  readonly peakA: Span;
  readonly rmsA: Span;
  /** Share of the time that they run at the module's least duty. */
  readonly runsAtLeastRatio: Span;
  readonly leastDutyRatio: number;
  readonly knownFrom: DriverPulses["knownFrom"];
  readonly source: Source;
}

const HALF_DUTY = 0.5;

/**
 * Greatest peak and root mean square of the drivers' repeated inrush, from the module's least duty to half, and whether they run at the least. Missing:
 * `pwmHz` or `minDutyRatio` of the kind, the fields of the way, a driver. Refused as `driverPulses`.
 */
export function driverWorst(index: CoachIndex, circuit: Circuit, kind: ModuleKind): Outcome<DriverWorst> {
  const path = index.pathOf("moduleKinds", kind.id);
  if (kind.pwmHz === undefined || kind.minDutyRatio === undefined)
    return missing(
      ...(kind.pwmHz === undefined ? [`${path}.pwmHz`] : []),
      ...(kind.minDutyRatio === undefined ? [`${path}.minDutyRatio`] : []),
    );
  const feed = circuitFeed(index, circuit);
  if (feed.kind !== "known") return feed;
  const loads = (circuit.loads ?? []).flatMap((id) => index.loads.get(id) ?? []);
  const leastDutyRatio = Math.min(HALF_DUTY, Math.max(1e-3, figureValue(kind.minDutyRatio)));
  const pwmHz = figureValue(kind.pwmHz);
  const least = driverPulses(loads, feed.value, pwmHz, leastDutyRatio);
  if (least.kind !== "known") return least;
  const half = driverPulses(loads, feed.value, pwmHz, HALF_DUTY);
  if (half.kind !== "known") return half;
  return known({
    peakA: worseOf(least.value.peakA, half.value.peakA),
    rmsA: worseOf(least.value.rmsA, half.value.rmsA),
    runsAtLeastRatio: least.value.runsRatio,
    leastDutyRatio,
    knownFrom: least.value.knownFrom,
    source: least.value.source,
  });
}

/** The greater of two, whatever each may be. */
const worseOf = (a: Span, b: Span): Span => ({ lo: Math.max(a.lo, b.lo), hi: Math.max(a.hi, b.hi) });
