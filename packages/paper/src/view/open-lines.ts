import { type Finding, findingWords, settledByWords, sourceWords } from "@fusebook/core/findings";
import type { UnitChoice } from "@fusebook/core/quantity";
import { DO_NOT_ENERGISE, type OpenLine } from "../packet/packet-view.js";

const WEIGHT: Readonly<Record<Finding["severity"], string>> = {
  stop: DO_NOT_ENERGISE,
  mend: "To be mended",
  watch: "To be watched",
  note: "To be known",
};
const OPEN = "Open: a reading settles it";

/** Findings in words, in the order of their weight: what fails, worst first, then what is open. What holds is left out. */
export function openLinesOf(findings: readonly Finding[], units: UnitChoice): OpenLine[] {
  const lines = findings.filter((finding) => finding.verdict !== "holds").map((finding) => lineOf(finding, units));
  const order = [...Object.values(WEIGHT).slice(0, 3), OPEN, WEIGHT.note];
  return order.flatMap((weight) => lines.filter((line) => line.weight === weight));
}

function lineOf(finding: Finding, units: UnitChoice): OpenLine {
  const words = findingWords(finding, units);
  const reading = finding.verdict === "open" ? finding.settledBy[0] : undefined;
  return {
    what: `${words.title}: ${words.statement}`,
    next: reading === undefined ? words.remedy : settledByWords(reading),
    weight: finding.verdict === "open" ? OPEN : WEIGHT[finding.severity],
    source: sourceWords(finding.source),
  };
}
