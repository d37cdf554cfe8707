import type { CoachSamples } from "./samples.js";

/**
 * Below what value does this share of the samples lie? Of n values in order, x(0) to x(n - 1), the quantile p is read at place p (n - 1), straight between
 * neighbours: 0 gives the least, 1 the greatest, 0.5 the median. One answer for each ratio; none where there are no values.
 *
 * @example quantilesOf([4, 1, 3, 2], [0, 0.5, 1]) // [1, 2.5, 4]
 */
export function quantilesOf(values: ArrayLike<number>, ratios: readonly number[]): number[] {
  if (values.length === 0) return [];
  const sorted = Float64Array.from(values).sort();
  return ratios.map((ratio) => {
    const at = Math.min(1, Math.max(0, ratio)) * (sorted.length - 1);
    const below = Math.floor(at);
    const lower = sorted[below]!;
    const upper = sorted[Math.min(sorted.length - 1, below + 1)]!;
    return lower + (at - below) * (upper - lower);
  });
}

/** In what share of the samples something holds. A sample without an operating point can be put on either side: `lo` counts it as not holding, `hi` as holding. */
export interface JointRatio {
  /** Over the samples that have an operating point; 0 where none has. */
  readonly ofSolved: number;
  readonly lo: number;
  readonly hi: number;
}

/** In what share of the samples does this hold? `holds` is asked of each place in the samples' arrays, so it may look at several quantities of one coach at once. */
export function jointRatio(samples: CoachSamples, holds: (place: number) => boolean): JointRatio {
  let count = 0;
  for (let place = 0; place < samples.solved; place++) if (holds(place)) count++;
  const all = Math.max(1, samples.solved + samples.unsolved);
  return {
    ofSolved: samples.solved === 0 ? 0 : count / samples.solved,
    lo: count / all,
    hi: (count + samples.unsolved) / all,
  };
}
