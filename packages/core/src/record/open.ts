import { MAX_TEXT_CHARACTERS } from "./bounds.js";
import { findJsonFault } from "./json-place.js";
import { migrate } from "./migrations/migrate.js";
import { type ReadOutcome, readRecord } from "./read.js";

/**
 * Opens the text of a record file: bounds first, then JSON, then the format, then the schema. An older format is migrated in memory; a newer one is
 * refused. Never throws, whatever the text; the text is not changed.
 */
export function openRecord(text: string): ReadOutcome {
  if (text.length > MAX_TEXT_CHARACTERS)
    return {
      kind: "refused",
      faults: [
        {
          path: "",
          code: "too-big",
          message: `wanted at most ${MAX_TEXT_CHARACTERS} characters, got ${text.length}; keep photos and files outside the record`,
        },
      ],
    };
  const plain = text.startsWith("\uFEFF") ? text.slice(1) : text;
  let document: unknown;
  try {
    document = JSON.parse(plain);
  } catch {
    const fault = findJsonFault(plain);
    return {
      kind: "refused",
      faults: [
        {
          path: `line ${fault.line}, column ${fault.column}`,
          code: "json",
          message: `wanted ${fault.wanted}, got ${fault.got}; correct the text there, or open the last good copy`,
        },
      ],
    };
  }
  const migration = migrate(document);
  if (migration.kind !== "migrated") return readRecord(document);
  const outcome = readRecord(migration.document);
  return outcome.kind === "read" ? { ...outcome, migratedFrom: migration.from } : outcome;
}
