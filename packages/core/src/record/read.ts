import type { z } from "zod";
import { coachRecord, FORMAT } from "./schema/record.js";
import type { CoachRecord } from "./schema/types.js";

/** One thing wrong with a document, by path. */
export interface SchemaFault {
  /** JSON path from the root: `circuits[3].fuse.ratedA`; empty for the document itself. */
  readonly path: string;
  readonly code: "not-an-object" | "format" | "newer-format" | "schema" | "too-deep";
  /** What is wanted, what was got, what to do next. */
  readonly message: string;
}

export type ReadOutcome =
  | { readonly kind: "read"; readonly record: CoachRecord }
  | { readonly kind: "refused"; readonly faults: readonly SchemaFault[] };

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, key) => (typeof key === "number" ? `${text}[${key}]` : text ? `${text}.${String(key)}` : String(key)),
    "",
  );

/**
 * Accepts or refuses a parsed JSON document, naming every fault by path. The record returned is the very document given:
 * nothing is defaulted, converted or dropped, so unknown fields survive.
 */
export function readRecord(document: unknown): ReadOutcome {
  const parsed = coachRecord.safeParse(document);
  if (parsed.success) return { kind: "read", record: document as CoachRecord };
  const faults: SchemaFault[] = parsed.error.issues.map((issue: z.core.$ZodIssue) => ({
    path: pathText(issue.path),
    code: "schema",
    message: issue.message,
  }));
  return { kind: "refused", faults };
}

export { FORMAT };
