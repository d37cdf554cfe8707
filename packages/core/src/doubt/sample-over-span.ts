import type { Finding } from "../findings/index.js";
import { placeWithin } from "./chance.js";
import { comparedOf, marginAt } from "./margin.js";
import type { SampledFinding } from "./sampled-finding.js";

/**
 * A quantity whose rule runs through hours of time is too dear to ask for each drawn coach: it is taken even over its exact span, and so is its limit (common
 * practice, no source). Wider than the truth is likely to be, and said so by `by`.
 */
export function sampleOverSpan(
  key: string,
  finding: Finding,
  { seed, samples }: { readonly seed: number; readonly samples: number },
): SampledFinding | undefined {
  const compared = comparedOf(finding);
  if (compared === undefined || ![compared.span.lo, compared.span.hi].every(Number.isFinite)) return undefined;
  const got = new Float64Array(samples);
  const margin = new Float64Array(samples);
  for (let k = 0; k < samples; k++) {
    const within = ({ lo, hi }: { readonly lo: number; readonly hi: number }, what: string) =>
      lo + placeWithin(seed, k, `${key} ${what}`) * (hi - lo);
    got[k] = within(compared.span, "quantity");
    margin[k] = marginAt(compared.sense, got[k]!, within(compared.limit.span, "limit"));
  }
  return { got, margin, unsolved: 0, by: "span", slopes: [] };
}
