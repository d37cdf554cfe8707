import type { CoachIndex } from "../record/index.js";
import type { Doubt, DoubtOptions, NextReading } from "./doubt.js";
import { doubtsFrom } from "./doubt-of.js";
import { type WeighedCoach, weighCoach } from "./weigh-coach.js";

/** The same readings over all open verdicts at once: one reading may settle several. */
function nextFrom(weighed: WeighedCoach): NextReading[] {
  const next: NextReading[] = [];
  for (const { figure, of } of weighed.worth.values()) {
    const verdicts = [...of].flatMap(([key, { shrink, widthBefore, chanceSettles }]) => {
      const shrinkShare = widthBefore > 0 ? shrink / widthBefore : 0;
      const finding = weighed.open.get(key)!;
      return Math.abs(shrinkShare) > 1e-6 || chanceSettles > 0 ? [{ key, finding, shrinkShare, chanceSettles }] : [];
    });
    const shrinkShare = verdicts.reduce((sum, each) => sum + each.shrinkShare, 0);
    if (!(shrinkShare > 0)) continue;
    next.push({
      ...figure,
      shrinkShare,
      shrinkSharePerMin: shrinkShare / Math.max(1, figure.minutes),
      settles: verdicts.reduce((sum, each) => sum + each.chanceSettles, 0),
      verdicts: verdicts.sort((a, b) => b.chanceSettles - a.chanceSettles || b.shrinkShare - a.shrinkShare),
    });
  }
  return next.sort(
    (a, b) => b.shrinkSharePerMin - a.shrinkSharePerMin || a.minutes - b.minutes || (a.path < b.path ? -1 : 1),
  );
}

/**
 * What to read next on this coach? Readings ranked by the doubt they take away for each minute, summed over every open verdict: a verdict counts by the share
 * of its own width, so that volts and amperes add up.
 */
export function readNext(index: CoachIndex, options: DoubtOptions): NextReading[] {
  return nextFrom(weighCoach(index, options));
}

/** Both at once, for the price of one. */
export function doubtAndNext(
  index: CoachIndex,
  options: DoubtOptions,
): { readonly doubts: readonly Doubt[]; readonly next: readonly NextReading[] } {
  const weighed = weighCoach(index, options);
  return { doubts: doubtsFrom(weighed), next: nextFrom(weighed) };
}
