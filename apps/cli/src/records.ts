import { type CoachRecord, openRecord, policyOf } from "@fusebook/core/record";
import type { Values } from "./command.js";
import { text } from "./command.js";
import type { Io } from "./io.js";
import { Misuse } from "./misuse.js";

export type Units = "us" | "metric" | "both";

/** Opens a record file, or says every fault by path. */
export async function loadRecord(io: Io, path: string): Promise<CoachRecord> {
  const bytes = await io.read(path);
  const opened = openRecord(new TextDecoder().decode(bytes));
  if (opened.kind === "read") {
    if (opened.migratedFrom !== undefined)
      io.err(`${path}: read from the older format ${opened.migratedFrom}; the file itself is left as it was`);
    return opened.record;
  }
  const lines = opened.faults.map((fault) => `  ${fault.path || "the document"}: ${fault.message} [${fault.code}]`);
  throw new Misuse(`${path} is not a record that can be read (nothing was changed in it):\n${lines.join("\n")}`);
}

/** The units asked for on the line, else the record's own. */
export const unitsOf = (values: Values, record: CoachRecord | undefined): Units =>
  (text(values, "units") as Units | undefined) ?? (record ? policyOf(record).unitsShown : "us");

/** A JSON file's value, or a misuse naming the place. */
export async function loadJson(io: Io, path: string): Promise<unknown> {
  const source = new TextDecoder().decode(await io.read(path)).replace(/^\uFEFF/, "");
  try {
    return JSON.parse(source);
  } catch (error) {
    throw new Misuse(`${path}: not JSON: ${(error as Error).message}`);
  }
}
