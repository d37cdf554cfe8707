import type { Verdict } from "../findings/index.js";
import type { Span } from "../quantity/index.js";
import type { CircuitId, ModuleId } from "../record/index.js";

/** One line of the test sheet: what to do, what is expected, within what span. */
export interface Test {
  readonly id: string;
  readonly circuit?: CircuitId;
  readonly module?: ModuleId;
  readonly kind: "voltage-at-load" | "current" | "dims" | "stays-steady" | "switches" | "address" | "lamp";
  readonly asks: string;
  readonly expected:
    | { readonly span: Span; readonly nominal: number; readonly unit: "V" | "A" }
    | { readonly said: string };
  /** Fields missing, so that nothing can be expected; such a test stays unproved. */
  readonly needs: readonly string[];
}

export interface Judged {
  readonly test: Test;
  /** `unproved` where no reading was given or nothing could be expected. */
  readonly verdict: Verdict | "unproved";
  readonly read?: { readonly value: number | string; readonly span?: Span };
  readonly because: string;
}

export interface ProofReport {
  readonly judged: readonly Judged[];
  readonly unproved: readonly string[];
  /** Readings that belong to no test, kept and named. */
  readonly strays: readonly { readonly reading: string; readonly why: string }[];
  readonly maySign: boolean;
  readonly signingStoppedBy: readonly string[];
}
