import type { Source } from "../quantity/index.js";
import type { FindingCode } from "./codes.js";
import type { CoachContext } from "./context.js";
import type { Finding, Severity } from "./finding.js";

/** One check of a coach: one file, named after it. It computes nothing that an engine owns; it compares and reports. */
export interface Rule {
  readonly code: FindingCode;
  /** The question it answers, in the trade's words. */
  readonly asks: string;
  /** The gravest severity it can raise. */
  readonly severity: Severity;
  readonly source: Source;
  check(context: CoachContext): Finding[];
}
