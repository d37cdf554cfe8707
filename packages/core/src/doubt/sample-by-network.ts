import type { Finding } from "../findings/index.js";
import { type CoachSamples, type CoachState, sampleCoach } from "../network/index.js";
import type { CoachIndex } from "../record/index.js";
import { placeWithin } from "./chance.js";
import { comparedOf, marginAt } from "./margin.js";
import { networkQuantity } from "./network-quantity.js";
import { type FigureSlope, type SampledFinding, slopeOf } from "./sampled-finding.js";

/** Draws coaches of each state once, and takes from them what each of these findings compares. Findings that the network does not sample are left out. */
export function sampleByNetwork(
  index: CoachIndex,
  findings: ReadonlyMap<string, Finding>,
  states: ReadonlyMap<string, CoachState>,
  { seed, samples }: { readonly seed: number; readonly samples: number },
): Map<string, SampledFinding> {
  const byState = new Map<string, [string, Finding][]>();
  for (const [key, finding] of findings) {
    const name = finding.parameters.state;
    if (typeof name !== "string" || !states.has(name)) continue;
    byState.set(name, [...(byState.get(name) ?? []), [key, finding]]);
  }
  const found = new Map<string, SampledFinding>();
  for (const [name, told] of byState) {
    const drawn = sampleCoach(index, states.get(name)!, { seed, samples, keepInputs: true });
    if (drawn.kind !== "known") continue;
    for (const [key, finding] of told) {
      const got = networkQuantity(index, finding, drawn.value);
      const compared = comparedOf(finding);
      if (got === undefined || compared === undefined) continue;
      const { lo, hi } = compared.limit.span;
      // A limit that is not known exactly is drawn evenly over its span, apart from everything else.
      const margin = got.map((value, k) => marginAt(compared.sense, value, lo + placeWithin(seed, k, key) * (hi - lo)));
      const slopes = slopesOf(drawn.value, margin);
      found.set(key, { got, margin, unsolved: drawn.value.unsolved, by: "network", slopes });
    }
  }
  return found;
}

/** Figures of record fields only: the lay of a strand or what an unknown class may draw cannot be read off the coach. */
function slopesOf(samples: CoachSamples, margin: Float64Array): FigureSlope[] {
  return (samples.inputs ?? [])
    .filter(({ input }) => input.aspect === undefined)
    .map(({ input, values }) => ({
      path: input.path,
      slope: slopeOf(margin, values),
      nominal: input.nominal,
      span: input.span,
    }));
}
