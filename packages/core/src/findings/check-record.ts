import type { CoachIndex } from "../record/index.js";
import { FINDING_CODES } from "./codes.js";
import type { CoachContext } from "./context.js";
import { contextOf } from "./context-of.js";
import { type Finding, SEVERITIES } from "./finding.js";
import { ALL_RULES } from "./rules/all-rules.js";

export interface CheckOptions {
  /** Also what was asked and holds; left out where absent. */
  readonly includeHolds?: boolean;
  /** Engine results already computed for the same record; made here where absent. */
  readonly context?: CoachContext;
}

const VERDICT_ORDER = { fails: 0, open: 1, holds: 2 } as const;
const CODE_ORDER = new Map(FINDING_CODES.map((code, i) => [code, i]));

/** Paths in the order of the record: `circuits[9]` before `circuits[10]`. */
const comparePaths = (a: string, b: string): number => {
  const [left, right] = [a.split(/(\d+)/), b.split(/(\d+)/)];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    const [one, two] = [left[i]!, right[i]!];
    if (one === two) continue;
    if (i % 2 === 1) return Number(one) - Number(two);
    return one < two ? -1 : 1;
  }
  return left.length - right.length;
};

/** Worst first: what fails before what is open at one severity, what holds last of all; then by subject, in the order of the record. */
export function compareFindings(a: Finding, b: Finding): number {
  const holds = Number(a.verdict === "holds") - Number(b.verdict === "holds");
  return (
    holds ||
    SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
    VERDICT_ORDER[a.verdict] - VERDICT_ORDER[b.verdict] ||
    comparePaths(a.subject.path, b.subject.path) ||
    CODE_ORDER.get(a.code)! - CODE_ORDER.get(b.code)!
  );
}

/**
 * What is unsafe, wrong, marginal or unknown in this coach? Every rule is asked; findings come worst first, then by subject. Nothing is thrown for a
 * wrong record and nothing is merged: two findings of one code on one subject are two facts. What could not be asked because a figure is missing
 * is told by the findings of the `unknowns` group.
 */
export function checkRecord(index: CoachIndex, options: CheckOptions = {}): Finding[] {
  const context = options.context ?? contextOf(index);
  return ALL_RULES.flatMap((rule) => rule.check(context))
    .filter((finding) => options.includeHolds === true || finding.verdict !== "holds")
    .sort(compareFindings);
}
