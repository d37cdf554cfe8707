import { ALL_RULES, type CoachContext, contextOf, type Finding, type FindingCode } from "../findings/index.js";
import type { CoachState } from "../network/index.js";
import type { CoachIndex } from "../record/index.js";

/** What every rule says of a coach, also what holds, each with a name by which it is found again in a changed record; and the states it was told of. */
export interface Asked {
  readonly findings: ReadonlyMap<string, Finding>;
  readonly states: ReadonlyMap<string, CoachState>;
}

/**
 * The name of a finding that stays the same when figures change: its code, its subject, which wire or state pair it is about, and, of several alike, which
 * one. The subject of a finding keeps its path as long as nothing is added or taken away.
 */
const keyOf = (finding: Finding): string => {
  const run = finding.parameters.run;
  return `${finding.code} ${finding.subject.path}${run === undefined ? "" : ` ${run}`}`;
};

/** Asks these rules (all where absent) of a coach; each of the coach as `seenBy` narrows it for that rule. */
export function askRules(
  index: CoachIndex,
  codes?: ReadonlySet<FindingCode>,
  seenBy?: (index: CoachIndex, code: FindingCode) => CoachIndex,
): Asked {
  const own = contextOf(index);
  const states = new Map<string, CoachState>();
  const heard = (state: CoachState): CoachState => {
    states.set(state.name, state);
    return state;
  };
  const context: CoachContext = {
    ...own,
    allOnState: () => heard(own.allOnState()),
    busyState: () => heard(own.busyState()),
    inState: (state) => own.inState(heard(state)),
  };
  const findings = new Map<string, Finding>();
  const seen = new Map<string, number>();
  for (const rule of ALL_RULES) {
    if (codes !== undefined && !codes.has(rule.code)) continue;
    const seenAs = seenBy === undefined ? context : { ...context, index: seenBy(index, rule.code) };
    for (const finding of rule.check(seenAs)) {
      const key = keyOf(finding);
      const count = seen.get(key) ?? 0;
      seen.set(key, count + 1);
      findings.set(count === 0 ? key : `${key} #${count + 1}`, finding);
    }
  }
  heard(own.allOnState());
  heard(own.busyState());
  return { findings, states };
}
