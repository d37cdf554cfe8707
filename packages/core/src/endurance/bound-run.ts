import { chargeRatePerHour, type Drained } from "./drain.js";
import type { DrawBounds } from "./draw-bounds.js";
import type { Stretch } from "./timeline.js";

export interface BoundPoint {
  readonly timeH: number;
  readonly chargeRatio: number;
}

export interface BoundRun {
  readonly hours: number;
  readonly isHorizon: boolean;
  readonly points: readonly BoundPoint[];
}

export interface BoundInputs {
  readonly end: "least" | "most";
  readonly group: number;
  readonly bounds: readonly DrawBounds[];
  /** Steady draws outside the network by span, A, at this end. */
  readonly standingA: readonly number[];
  readonly battery: Drained;
  readonly bends: readonly number[];
  /** One solve of the network's spans for all stretches of charge, at the bend below the reserve. */
  readonly isCoarse: boolean;
  readonly startRatio: number;
  readonly reserveRatio: number;
  readonly horizonH: number;
}

const CLOSE_H = 1e-12;

/**
 * The state of charge that the bank certainly keeps above (`least`) or below (`most`): within each stretch of charge the worst or best current holds all
 * the way, so every step is a straight line. The least never counts a charger or the sun.
 */
export function boundRun(inputs: BoundInputs, timeline: Iterable<Stretch>): BoundRun {
  const { end, group, bounds, standingA, battery, bends, reserveRatio, horizonH } = inputs;
  const points: BoundPoint[] = [{ timeH: 0, chargeRatio: inputs.startRatio }];
  let s = inputs.startRatio;
  const put = (timeH: number): void => {
    if (Math.abs(points.at(-1)!.chargeRatio - s) >= 0.002) points.push({ timeH, chargeRatio: s });
  };
  const lowest = Math.max(
    0,
    bends.findLastIndex((bend) => bend <= reserveRatio),
  );
  const rateIn = (stretch: Stretch, cell: number): number => {
    const found = bounds[stretch.span]!.at(cell, group, inputs.isCoarse ? lowest : undefined);
    // Without a bound the bank may be empty at once, or draw nothing.
    if (found === undefined) return end === "least" ? Number.NEGATIVE_INFINITY : 0;
    const currentA =
      end === "least"
        ? found.draw.hi + standingA[stretch.span]!
        : found.draw.lo + standingA[stretch.span]! - found.helpersMostA - stretch.sunA;
    return chargeRatePerHour(battery, currentA, s);
  };
  for (const stretch of timeline) {
    let at = 0;
    if (s <= reserveRatio) return { hours: stretch.fromH, isHorizon: false, points };
    while (at < stretch.hours - CLOSE_H) {
      // On a bend the falling side counts first; a rate that rises there is looked up above it.
      let cell = Math.max(
        1,
        bends.findIndex((bend) => bend >= s),
      );
      let rate = rateIn(stretch, cell);
      if (rate > 0 && s >= bends[cell]! && cell < bends.length - 1) {
        cell += 1;
        rate = rateIn(stretch, cell);
        if (rate <= 0) rate = 0;
      }
      const left = stretch.hours - at;
      if (rate === Number.NEGATIVE_INFINITY) {
        points.push({ timeH: stretch.fromH + at, chargeRatio: reserveRatio });
        return { hours: stretch.fromH + at, isHorizon: false, points };
      }
      if (rate === 0 || (rate > 0 && s >= 1)) break;
      const goal = rate < 0 ? Math.max(reserveRatio, bends[cell - 1]!) : bends[cell]!;
      const toGoal = (goal - s) / rate;
      const h = Math.min(left, toGoal);
      s = toGoal <= left ? goal : s + rate * h;
      at += h;
      put(stretch.fromH + at);
      if (s <= reserveRatio) {
        points.push({ timeH: stretch.fromH + at, chargeRatio: s });
        return { hours: stretch.fromH + at, isHorizon: false, points };
      }
    }
  }
  points.push({ timeH: horizonH, chargeRatio: s });
  return { hours: horizonH, isHorizon: true, points };
}
