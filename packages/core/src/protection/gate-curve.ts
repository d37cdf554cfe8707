import type { FuseGate } from "../tables/index.js";

/**
 * Time against multiples of the rating, straight between gates on two logarithmic scales (common practice, no source). It never rises. Below the first
 * gate: `belowS`. Above the last: I2t as at the last gate where `isHeld`, else `aboveS`.
 */
export interface GateCurve {
  readonly points: readonly (readonly [ratio: number, timeS: number])[];
  readonly belowS: number;
  readonly isHeld: boolean;
  readonly aboveS: number;
}

/**
 * How short a last gate must be for what lies above it to be told. A link melts there with hardly any heat lost, so it takes the same I2t
 * however large the current. Common practice, no source.
 */
export const HELD_FROM_S = 0.1;

/** A time that cannot rise with the current, whatever order the table has its rows in. */
function falling(points: (readonly [number, number])[]): (readonly [number, number])[] {
  const sorted = points.sort((a, b) => a[0] - b[0] || b[1] - a[1]);
  let leastS = Number.POSITIVE_INFINITY;
  return sorted.map(([ratio, timeS]) => {
    leastS = Math.min(leastS, timeS);
    return [ratio, leastS] as const;
  });
}

/** The soonest a fuse of these gates opens. Nothing is said of currents above a last gate that is long: there it may open at once. */
export function soonestCurve(gates: readonly FuseGate[]): GateCurve {
  const points = falling(gates.flatMap(({ ratio, minS }) => (minS === undefined ? [] : [[ratio, minS] as const])));
  const last = points.at(-1);
  return { points, belowS: points[0]?.[1] ?? 0, isHeld: last !== undefined && last[1] <= HELD_FROM_S, aboveS: 0 };
}

/** The latest it opens. Below the first gate that names a longest time it need not open at all. */
export function latestCurve(gates: readonly FuseGate[]): GateCurve {
  const points = falling(gates.flatMap(({ ratio, maxS }) => (maxS === undefined ? [] : [[ratio, maxS] as const])));
  // The more current, the less heat is lost while it melts, so I2t can only fall: holding it is on the safe side however long the last gate.
  return { points, belowS: Number.POSITIVE_INFINITY, isHeld: points.length > 0, aboveS: Number.POSITIVE_INFINITY };
}

/** The time at a multiple of the rating, s; infinite where it need not open, 0 where nothing keeps it from opening at once. */
export function timeAt(curve: GateCurve, ratio: number): number {
  const { points } = curve;
  const last = points.at(-1);
  if (last === undefined || ratio < points[0]![0]) return curve.belowS;
  if (ratio === last[0]) return last[1];
  if (ratio > last[0]) return curve.isHeld ? last[1] * (last[0] / ratio) ** 2 : curve.aboveS;
  const above = points.findIndex(([at]) => at > ratio);
  const [highRatio, highS] = points[above]!;
  const [lowRatio, lowS] = points[above - 1]!;
  if (lowS === 0 || highS === 0) return highS;
  const share = Math.log(ratio / lowRatio) / Math.log(highRatio / lowRatio);
  return lowS * (highS / lowS) ** share;
}

/** The least multiple of the rating at which this curve's time is no more than `timeS`; infinite where there is none. */
export function ratioFor(curve: GateCurve, timeS: number): number {
  const { points } = curve;
  const first = points[0];
  if (first === undefined) return curve.belowS <= timeS ? 0 : curve.aboveS <= timeS ? 0 : Number.POSITIVE_INFINITY;
  if (curve.belowS <= timeS) return 0;
  for (let i = 0; i < points.length; i++) {
    const [ratio, atS] = points[i]!;
    if (atS > timeS) continue;
    const before = points[i - 1];
    if (before === undefined || before[1] === atS || atS === 0) return ratio;
    const share = Math.log(timeS / before[1]) / Math.log(atS / before[1]);
    return before[0] * (ratio / before[0]) ** share;
  }
  const last = points.at(-1)!;
  if (curve.isHeld) return last[0] * Math.sqrt(last[1] / timeS);
  return curve.aboveS <= timeS ? last[0] : Number.POSITIVE_INFINITY;
}
