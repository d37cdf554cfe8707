import type { Basis, Source, Span } from "../quantity/index.js";
import type { FindingCode } from "./codes.js";
import type { EvidenceLabel } from "./evidence-label.js";

/** `stop`: do not energise; `mend`: must be put right; `watch`: acceptable, said so; `note`. A rule that rests on a memory figure cannot raise `stop`. */
export const SEVERITIES = ["stop", "mend", "watch", "note"] as const;
export type Severity = (typeof SEVERITIES)[number];

/** `holds` over the whole span, `fails` over the whole span, or `open`: it depends, and the finding names the reading that settles it. */
export type Verdict = "holds" | "fails" | "open";

/** One input of a check, with its basis, as the reader will see it. */
export interface Evidence {
  /** Path of the record field, `circuits[3].fuse.ratedA`. */
  readonly path: string;
  /** What it is, in the trade's words, by code: the words come from `words/`. */
  readonly label: EvidenceLabel;
  readonly unit: "A" | "V" | "W" | "ohm" | "m" | "mm2" | "C" | "ratio" | "Hz" | "Ah" | "min" | "count" | "text";
  readonly value: number | string;
  readonly basis?: Basis;
  readonly span?: Span;
}

/** The reading that would settle an open finding. */
export interface SettledBy {
  /** Path of the record field to fill. */
  readonly path: string;
  readonly instrument: "clamp meter" | "voltmeter" | "ohmmeter" | "tape measure" | "look" | "thermometer" | "ask";
  readonly minutes: number;
}

/** One result of a check. Its words are made last, from the code and the parameters, in one place. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly verdict: Verdict;
  readonly subject: { readonly path: string; readonly id: string; readonly name: string };
  readonly parameters: Readonly<Record<string, string | number>>;
  readonly evidence: readonly Evidence[];
  readonly limit?: { readonly value: number; readonly unit: Evidence["unit"]; readonly sense: "at-most" | "at-least" };
  readonly source: Source;
  /** Further publications the verdict rests on: a derating factor, say. One of them from memory and `stop` is out of reach. */
  readonly alsoRestsOn?: readonly Source[];
  readonly settledBy: readonly SettledBy[];
}
