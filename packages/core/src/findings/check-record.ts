import type { CoachIndex } from "../record/index.js";
import { FINDING_CODES } from "./codes.js";
import type { CoachContext } from "./context.js";
import { contextOf } from "./context-of.js";
import { type Finding, SEVERITIES, type Severity } from "./finding.js";
import { ALL_RULES } from "./rules/all-rules.js";

export interface CheckOptions {
  /** Also what was asked and holds; left out where absent. */
  readonly includeHolds?: boolean;
  /** Only rules that can raise this severity or a graver one; all where absent. */
  readonly atLeast?: Severity;
  /** Engine results already computed for the same record; made here where absent. */
  readonly context?: CoachContext;
}

const VERDICT_ORDER = { fails: 0, open: 1, holds: 2 } as const;
const CODE_ORDER = new Map(FINDING_CODES.map((code, i) => [code, i]));

/** `circuits[9]` as text and numbers, so that it comes before `circuits[10]`. */
const pathParts = (path: string): (string | number)[] =>
  path.split(/(\d+)/).map((part, i) => (i % 2 === 1 ? Number(part) : part));

const comparePaths = (left: readonly (string | number)[], right: readonly (string | number)[]): number => {
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    const [one, two] = [left[i]!, right[i]!];
    if (one !== two) return one < two ? -1 : 1;
  }
  return left.length - right.length;
};

/** Worst first: what fails before what is open at one severity, what holds last of all; then by subject, in the order of the record. */
export function sortedFindings(findings: readonly Finding[]): Finding[] {
  return findings
    .map((finding) => ({
      finding,
      rank:
        (finding.verdict === "holds" ? 100 : 0) +
        SEVERITIES.indexOf(finding.severity) * 10 +
        VERDICT_ORDER[finding.verdict],
      path: pathParts(finding.subject.path),
    }))
    .sort(
      (a, b) =>
        a.rank - b.rank ||
        comparePaths(a.path, b.path) ||
        CODE_ORDER.get(a.finding.code)! - CODE_ORDER.get(b.finding.code)!,
    )
    .map(({ finding }) => finding);
}

/**
 * What is unsafe, wrong, marginal or unknown in this coach? Every rule is asked; findings come worst first, then by subject. Nothing is thrown for a
 * wrong record and nothing is merged: two findings of one code on one subject are two facts. What could not be asked because a figure is missing
 * is told by the findings of the `unknowns` group.
 */
export function checkRecord(index: CoachIndex, options: CheckOptions = {}): Finding[] {
  const context = options.context ?? contextOf(index);
  const mildest = SEVERITIES.indexOf(options.atLeast ?? "note");
  const asked = ALL_RULES.filter((rule) => SEVERITIES.indexOf(rule.severity) <= mildest);
  const found = asked.flatMap((rule) => rule.check(context));
  return sortedFindings(options.includeHolds === true ? found : found.filter(({ verdict }) => verdict !== "holds"));
}
