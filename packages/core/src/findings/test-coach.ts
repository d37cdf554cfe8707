import { Invariant } from "../quantity/index.js";
import { type CoachIndex, indexRecord, readRecord } from "../record/index.js";
import type { FindingCode } from "./codes.js";
import { contextOf } from "./context-of.js";
import type { Finding } from "./finding.js";
import { ALL_RULES } from "./rules/all-rules.js";

/** A record for a test: these collections under a coach of 12 V, accepted by the schema. */
export function coachOf(parts: Readonly<Record<string, unknown>>): CoachIndex {
  const outcome = readRecord({
    format: "fusebook/1",
    id: "test",
    coach: { name: "Test coach", nominalV: 12 },
    ...parts,
  });
  if (outcome.kind === "refused")
    throw new Invariant("test-record", outcome.faults.map((fault) => `${fault.path} ${fault.message}`).join("; "));
  return indexRecord(outcome.record);
}

/** What one rule finds in such a record, holds included. */
export function findingsOf(code: FindingCode, parts: Readonly<Record<string, unknown>>): Finding[] {
  const rule = ALL_RULES.find((each) => each.code === code);
  if (rule === undefined) throw new Invariant("test-rule", `no rule for ${code}`);
  return rule.check(contextOf(coachOf(parts)));
}

/** The verdicts of one rule by subject id, in the order found: `c1 fails`. */
export const verdictsOf = (code: FindingCode, parts: Readonly<Record<string, unknown>>): string[] =>
  findingsOf(code, parts).map(({ subject, verdict }) => `${subject.id} ${verdict}`);
