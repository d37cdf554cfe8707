import type { ConductorFigures } from "../network/index.js";
import { known, missing, type Outcome, type Source, type Span } from "../quantity/index.js";
import type { FullPolicy } from "../record/index.js";
import { ceilingRatio, necSmallConductorMaxA, necStandardDevices, standardFuses } from "../tables/index.js";
import { ampacityOf } from "./ampacity.js";

export interface DeviceCeiling {
  /** The largest rating that may protect the conductor, A. */
  readonly maxA: number;
  readonly span: Span;
  readonly source: Source;
  readonly because: "small-conductor" | "ampacity" | "ratio-of-ampacity" | "next-size";
  /** Fields that would narrow the span. */
  readonly wouldSettle: readonly string[];
}

const standardRatings = (): number[] =>
  [...new Set([...standardFuses().map((fuse) => fuse.ratedA), ...necStandardDevices().value])].sort((a, b) => a - b);

/**
 * How large a fuse or breaker may protect this conductor, A?
 * `nec`: not above its ampacity times the policy's own ratio (1 by NEC 552.10(E)(1)), and for 18 to 10 AWG not above NEC 240.4(D).
 * `marine`: 150 % of its ampacity, 33 CFR 183.455. `road-vehicle`: 125 %, or the next standard size above where that is none.
 * Missing without a size, also where the run itself is not on record.
 */
export function deviceCeilingOf(
  run: ConductorFigures | undefined,
  policy: FullPolicy,
  path = "",
  zoneOfPlace?: (place: string) => string | undefined,
): Outcome<DeviceCeiling> {
  if (run === undefined) return missing(`${path}gauge`);
  const ampacity = ampacityOf(run, policy, path, zoneOfPlace);
  if (ampacity.kind !== "known") return ampacity;
  const { ampacityA, span, gauge, wouldSettle, source } = ampacity.value;
  const rule = ceilingRatio(policy.conductorRule);
  if (policy.conductorRule === "nec") {
    const ratio = policy.overcurrentCeilingRatio;
    const small = necSmallConductorMaxA(gauge);
    const cap = small.kind === "known" ? small.value : Number.POSITIVE_INFINITY;
    const maxA = Math.min(cap, ratio * ampacityA);
    const bounds = { lo: Math.min(cap, ratio * span.lo), hi: Math.min(cap, ratio * span.hi) };
    if (small.kind === "known" && cap <= ratio * ampacityA)
      return known({
        maxA,
        span: bounds,
        source: small.source,
        because: "small-conductor",
        wouldSettle: bounds.lo < bounds.hi ? wouldSettle : [],
      });
    return known({
      maxA,
      span: bounds,
      source: ratio === 1 ? rule.source : source,
      because: ratio === 1 ? "ampacity" : "ratio-of-ampacity",
      wouldSettle,
    });
  }
  const limit = (a: number) => (policy.conductorRule === "marine" ? rule.value * a : nextSizeA(rule.value * a));
  return known({
    maxA: limit(ampacityA),
    span: { lo: limit(span.lo), hi: limit(span.hi) },
    source: rule.source,
    because: policy.conductorRule === "marine" ? "ratio-of-ampacity" : "next-size",
    wouldSettle,
  });
}

/** The smallest standard rating not below this; the figure itself above the largest listed. */
const nextSizeA = (a: number): number => standardRatings().find((rating) => rating >= a - 1e-9) ?? a;

/** Standard blade fuse sizes up to this rating, smallest first. */
export const fuseSizesAtMost = (maxA: number): readonly number[] =>
  standardFuses()
    .map((fuse) => fuse.ratedA)
    .filter((ratedA) => ratedA <= maxA + 1e-9)
    .sort((a, b) => a - b);
