import type { Verdict } from "../findings/index.js";
import type { Span } from "../quantity/index.js";
import type { CircuitId, LoadId, ModuleId } from "../record/index.js";

export const TEST_KINDS = [
  "voltage-at-load",
  "current",
  "dims",
  "stays-steady",
  "switches",
  "address",
  "lamp",
  "answers",
  "always-fed",
  "channel-dead",
] as const;
export type TestKind = (typeof TEST_KINDS)[number];

/** One line of the test sheet: what to do, what is expected, within what span. */
export interface Test {
  readonly id: string;
  readonly circuit?: CircuitId;
  readonly module?: ModuleId;
  /** Of a test about a channel on which no circuit sits. */
  readonly channel?: number;
  readonly kind: TestKind;
  /** The instruction and the question, with the caution that belongs to this load at its head. */
  readonly asks: string;
  /** Where it is done, as a person would look for it; the same at every test of a circuit. */
  readonly where?: string;
  /** What may hurt somebody while it is on. */
  readonly cautions?: readonly string[];
  readonly expected:
    | { readonly span: Span; readonly nominal: number; readonly unit: "V" | "A" }
    | { readonly said: string };
  /** Fields missing, so that nothing can be expected; such a test stays unproved. */
  readonly needs: readonly string[];
  /** The load whose terminals are probed. */
  readonly load?: LoadId;
  /** What is on while an amount is read, on battery alone, at full duty; all else is off. */
  readonly on?: readonly CircuitId[];
  /** Why nothing can be expected although no field is missing. */
  readonly cannot?: string;
  /** Paths of small shared draws that are missing and not in the expected amount. */
  readonly without?: readonly string[];
}

/** Why a test has its verdict; the words come from `proof/words.ts`. */
export const JUDGED_CODES = [
  "within",
  "outside",
  "partly-outside",
  "meter-too-coarse",
  "as-expected",
  "not-as-expected",
  "no-reading",
  "nothing-expected",
] as const;
export type JudgedCode = (typeof JUDGED_CODES)[number];

export interface Judged {
  readonly test: Test;
  /** `unproved` where no reading was given or nothing could be expected. */
  readonly verdict: Verdict | "unproved";
  readonly read?: { readonly value: number | string; readonly span?: Span };
  readonly because: string;
  readonly code: JudgedCode;
  /** Id of the reading that counts. */
  readonly reading?: string;
  /** Ids of earlier readings of the same test: kept, not counted. */
  readonly earlier: readonly string[];
}

export interface ProofReport {
  readonly judged: readonly Judged[];
  /** Ids of the tests that stay unproved. */
  readonly unproved: readonly string[];
  /** Readings that belong to no test, kept and named. */
  readonly strays: readonly { readonly reading: string; readonly why: string }[];
  readonly maySign: boolean;
  readonly signingStoppedBy: readonly string[];
  /** `stop` findings that are open for want of a figure: they do not stop signing, but whoever signs has to see them. */
  readonly stopsInDoubt: readonly string[];
}
