import { Invariant, type Source } from "../quantity/index.js";
import type { FindingCode } from "./codes.js";
import type { CoachContext } from "./context.js";
import { type Finding, SEVERITIES, type Severity } from "./finding.js";
import { cappedByMemory } from "./memory-cap.js";
import type { Rule } from "./rule.js";
import { minutesFor } from "./settle.js";

/** What a rule says of one subject. Severity and source are the rule's own where absent. */
export interface Said {
  readonly subject: Finding["subject"];
  readonly verdict: Finding["verdict"];
  readonly severity?: Severity;
  readonly source?: Source;
  readonly alsoRestsOn?: readonly Source[];
  readonly parameters?: Finding["parameters"];
  readonly evidence?: Finding["evidence"];
  readonly limit?: Finding["limit"];
  readonly settledBy?: Finding["settledBy"];
}

export interface RuleFacts {
  readonly code: FindingCode;
  readonly asks: string;
  readonly severity: Severity;
  readonly source: Source;
}

/**
 * Makes a rule from its facts and its check. The severity of every finding passes the memory cap here; an open finding without a reading of its
 * own asks for a look at its subject.
 * @throws Invariant `rule-too-grave` where a finding is graver than the rule says it can be.
 */
export function defineRule(facts: RuleFacts, check: (context: CoachContext) => Iterable<Said>): Rule {
  return {
    ...facts,
    severity: cappedByMemory(facts.severity, [facts.source]),
    check: (context) => Array.from(check(context), (said) => findingOf(facts, said, context)),
  };
}

function findingOf(facts: RuleFacts, said: Said, context: CoachContext): Finding {
  const asked = said.severity ?? facts.severity;
  if (SEVERITIES.indexOf(asked) < SEVERITIES.indexOf(facts.severity))
    throw new Invariant("rule-too-grave", `${facts.code} raised ${asked}, its gravest is ${facts.severity}`);
  const source = said.source ?? facts.source;
  const settledBy = said.settledBy ?? [];
  return {
    code: facts.code,
    severity: cappedByMemory(asked, [source, ...(said.alsoRestsOn ?? [])]),
    verdict: said.verdict,
    subject: said.subject,
    parameters: said.parameters ?? {},
    evidence: said.evidence ?? [],
    ...(said.limit === undefined ? {} : { limit: said.limit }),
    source,
    ...(said.alsoRestsOn === undefined || said.alsoRestsOn.length === 0 ? {} : { alsoRestsOn: said.alsoRestsOn }),
    settledBy:
      said.verdict === "open" && settledBy.length === 0
        ? [{ path: said.subject.path, instrument: "look", minutes: minutesFor(context.index, "look", undefined) }]
        : settledBy,
  };
}
