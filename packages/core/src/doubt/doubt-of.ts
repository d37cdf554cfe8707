import type { Finding } from "../findings/index.js";
import { quantilesOf } from "../network/index.js";
import type { CoachIndex } from "../record/index.js";
import type { AskedDoubt, Doubt, DoubtOptions, FindingDoubt, Outlook, ReadingWorth } from "./doubt.js";
import { comparedOf } from "./margin.js";
import { readableAt } from "./readable.js";
import { binsOf, failsRatioOf } from "./sampled-finding.js";
import { type WeighedCoach, weighCoach } from "./weigh-coach.js";

/** Below this the chance of one reading is none: fewer than five in a thousand of the values it may turn out to have. */
const HARDLY_EVER = 0.005;
/** A reading that takes away less than this share of the width is not worth its line. */
const HARDLY_ANYTHING = 0.001;

const asked = (key: string, finding: Finding): AskedDoubt => ({
  kind: "asked",
  key,
  finding,
  readings: finding.settledBy.map(({ path, instrument, minutes }) => ({ path, instrument, minutes })),
});

function outlookOf(readings: readonly ReadingWorth[], chanceAll: number, isAllWeighed: boolean): Outlook {
  if (readings.some(({ chanceSettles }) => chanceSettles >= HARDLY_EVER)) return "one-reading";
  return chanceAll > 0 && readings.length > 0 ? "several" : isAllWeighed ? "nothing" : "unweighed";
}

/** The doubt of one finding, from what was weighed. */
function doubtFrom(weighed: WeighedCoach, key: string, finding: Finding): Doubt {
  const compared = comparedOf(finding);
  const sampled = weighed.sampled.get(key);
  if (compared === undefined || sampled === undefined) return asked(key, finding);
  const [q05, q50, q95] = quantilesOf(sampled.got, [0.05, 0.5, 0.95]) as [number, number, number];
  const readings = [...weighed.worth.values()]
    .flatMap(({ of }) => of.get(key) ?? [])
    .filter(
      ({ shrink, widthBefore, chanceSettles }) =>
        shrink > HARDLY_ANYTHING * widthBefore || chanceSettles >= HARDLY_EVER,
    )
    .sort((a, b) => b.shrinkPerMin - a.shrinkPerMin || a.minutes - b.minutes || (a.path < b.path ? -1 : 1));
  const drawn = new Set(sampled.slopes.map(({ path }) => path));
  const isAllWeighed = finding.settledBy.every(
    ({ path }) => drawn.has(path) || weighed.worth.has(path) || readableAt(weighed.index, path) !== undefined,
  );
  const allRead = weighed.allRead.get(key) ?? { widthAfter: compared.span.hi - compared.span.lo, chanceSettles: 0 };
  return {
    kind: "compared",
    key,
    finding,
    ...compared,
    failsRatio: failsRatioOf(compared, sampled.margin),
    samples: sampled.margin.length,
    unsolved: sampled.unsolved,
    quantiles: { q05, q50, q95 },
    bins: binsOf(sampled.got),
    sampledBy: sampled.by,
    readings,
    allRead,
    outlook: outlookOf(readings, allRead.chanceSettles, isAllWeighed),
  } satisfies FindingDoubt;
}

/**
 * For every open verdict: how likely is it to fail, between what does the compared quantity lie, and which single reading takes most of the doubt away for
 * its minutes? Findings in the order of the rules; those that compare nothing come as `asked`, with the readings that answer them. Seeded: same record, same
 * options, same answer.
 */
export function doubtOf(index: CoachIndex, options: DoubtOptions): Doubt[] {
  return doubtsFrom(weighCoach(index, options));
}

export const doubtsFrom = (weighed: WeighedCoach): Doubt[] =>
  [...weighed.open].map(([key, finding]) => doubtFrom(weighed, key, finding));
