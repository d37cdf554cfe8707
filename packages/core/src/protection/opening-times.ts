import type { Source } from "../quantity/index.js";
import type { FuseGates } from "./fuse-gates.js";
import { ratioFor, timeAt } from "./gate-curve.js";

/** Between what two times a fuse opens at one current. */
export interface OpeningTimes {
  /** No fuse of this family and rating opens sooner; 0 where no gate says so. */
  readonly soonestS: number;
  /** None opens later; infinite where it need not open. */
  readonly latestS: number;
  /** The current lies above the last gate that names a time: told by holding its I2t. */
  readonly isAboveGates: boolean;
  readonly sources: readonly Source[];
}

/**
 * When does a fuse open at this current, A, at the soonest and at the latest? Straight lines between the published gates on two logarithmic scales; above
 * the last one I2t is held. Neither time rises with the current or falls with the rating.
 */
export function openingTimes(fuse: FuseGates, currentA: number): OpeningTimes {
  const ratio = currentA / fuse.ratedSpan.lo;
  const lastRatio = Math.max(...fuse.sets.flatMap((set) => set.gates.map((gate) => gate.ratio)));
  return {
    soonestS: Math.min(...fuse.sets.map((set) => timeAt(set.soonest, ratio))),
    latestS: Math.max(...fuse.sets.map((set) => timeAt(set.latest, currentA / fuse.ratedSpan.hi))),
    isAboveGates: ratio > lastRatio,
    sources: fuse.sets.map((set) => set.source),
  };
}

/** The least current at which some fuse of this family and rating opens within `timeS`, A: below it none does. Infinite where no current does. */
export const leastOpeningA = (fuse: FuseGates, timeS: number): number =>
  fuse.ratedSpan.lo * Math.min(...fuse.sets.map((set) => ratioFor(set.soonest, timeS)));

/** The least current at which every one of them opens within `timeS`, A. Infinite where none makes sure of it. */
export const sureOpeningA = (fuse: FuseGates, timeS: number): number =>
  fuse.ratedSpan.hi * Math.max(...fuse.sets.map((set) => ratioFor(set.latest, timeS)));

/** The currents at which one of its curves bends, A, in rising order: between them every curve is straight on logarithmic scales. */
export const bendsA = (fuse: FuseGates): readonly number[] => {
  const ratios = fuse.sets.flatMap((set) => set.gates.map((gate) => gate.ratio));
  const bends = ratios.flatMap((ratio) => [ratio * fuse.ratedSpan.lo, ratio * fuse.ratedSpan.hi]);
  return [...new Set(bends)].sort((a, b) => a - b);
};
