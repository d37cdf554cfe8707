import { checkRecord, type Finding, findingWords } from "../findings/index.js";
import { type CoachIndex, policyOf } from "../record/index.js";
import type { Judged, ProofReport } from "./proof.js";
import { proofWords } from "./words.js";

/**
 * May the job be signed? Not while a `stop` finding fails in the record as it is now, nor while a test fails. What is only open or unproved does
 * not stop it: whoever signs sees it listed.
 */
export function signingOf(
  judged: readonly Judged[],
  index: CoachIndex,
  findings: readonly Finding[] = checkRecord(index),
): Pick<ProofReport, "maySign" | "signingStoppedBy" | "stopsInDoubt"> {
  const units = policyOf(index.record).unitsShown;
  const said = (finding: Finding): string => {
    const { title, statement } = findingWords(finding, units);
    return `${title}: ${statement}`;
  };
  const stops = findings.filter((finding) => finding.severity === "stop");
  const signingStoppedBy = [
    ...stops.filter((finding) => finding.verdict === "fails").map(said),
    ...judged.filter((each) => each.verdict === "fails").map((each) => proofWords(each, units)),
  ];
  return {
    maySign: signingStoppedBy.length === 0,
    signingStoppedBy,
    stopsInDoubt: stops.filter((finding) => finding.verdict === "open").map(said),
  };
}
