export { FINDING_CODES, type FindingCode } from "./codes.js";
export type { CoachContext } from "./context.js";
export { type Evidence, type Finding, SEVERITIES, type SettledBy, type Severity, type Verdict } from "./finding.js";
export type { Rule } from "./rule.js";
