import type { Finding } from "../findings/index.js";
import type { CoachSamples } from "../network/index.js";
import type { Outcome } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";

const ifKnown = <T>(outcome: Outcome<T> | undefined): T | undefined =>
  outcome?.kind === "known" ? outcome.value : undefined;

/** Volts lost along the feeders that the finding names; undefined where one of them is not known. */
function alongFeeders(index: CoachIndex, finding: Finding, samples: CoachSamples): Float64Array | undefined {
  const named = new Set(finding.evidence.map((each) => each.path));
  let sum: Float64Array | undefined;
  let found = 0;
  for (const [id, outcome] of samples.cableDropV) {
    if (!named.has(index.pathOf("cables", id))) continue;
    const drop = ifKnown(outcome);
    if (drop === undefined) return undefined;
    found++;
    sum = sum === undefined ? drop.map(Math.abs) : sum.map((volts, k) => volts + Math.abs(drop[k]!));
  }
  return found === named.size ? sum : undefined;
}

/**
 * The quantity that this finding compares, in every sampled coach of the state it was told of; undefined where the network's samples do not hold it (a
 * rating, a resistance): then the rule is asked again on drawn figures instead.
 */
export function networkQuantity(index: CoachIndex, finding: Finding, samples: CoachSamples): Float64Array | undefined {
  const id = finding.subject.id as never;
  switch (finding.code) {
    case "drop-over-limit":
      return ifKnown(samples.loads.get(id))?.dropV;
    case "voltage-under-minimum":
      return ifKnown(samples.loads.get(id))?.onV;
    case "module-over-rating":
      return ifKnown(samples.moduleA.get(id));
    case "feeder-over-ampacity":
    case "feeder-over-device":
      return ifKnown(samples.cableA.get(id))?.map(Math.abs);
    case "feeder-drop-over-limit":
      return alongFeeders(index, finding, samples);
    default:
      return undefined;
  }
}
