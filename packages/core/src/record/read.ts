import { boundFault } from "./bounds.js";
import type { SchemaFault } from "./fault.js";
import { faultsOf } from "./faults-of.js";
import { newerFormatFault } from "./migrations/format.js";
import { protoFaults } from "./proto-values.js";
import { coachRecord, FORMAT } from "./schema/record.js";
import type { CoachRecord } from "./schema/types.js";

export type ReadOutcome =
  | {
      readonly kind: "read";
      readonly record: CoachRecord;
      /** The older format it was written in, where it was migrated in memory; the file itself is left as it is. */
      readonly migratedFrom?: string;
    }
  | { readonly kind: "refused"; readonly faults: readonly SchemaFault[] };

/**
 * Accepts or refuses a parsed JSON document of the current format, naming every fault by path. The record returned is the very document given:
 * nothing is defaulted, converted or dropped, so unknown fields survive.
 */
export function readRecord(document: unknown): ReadOutcome {
  const tooMuch = boundFault(document);
  if (tooMuch !== undefined) return { kind: "refused", faults: [tooMuch] };
  const newer = newerFormatFault(document);
  if (newer !== undefined) return { kind: "refused", faults: [newer] };
  const parsed = coachRecord.safeParse(document);
  const faults = [
    ...(parsed.success ? [] : parsed.error.issues.flatMap((issue) => faultsOf(issue, [], document))),
    ...protoFaults(document),
  ];
  return faults.length === 0 ? { kind: "read", record: document as CoachRecord } : { kind: "refused", faults };
}

export { FORMAT };
