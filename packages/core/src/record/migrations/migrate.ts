import { CURRENT_NUMBER, formatNumber, formatOf } from "./format.js";
import { from0 } from "./from-0.js";

export type Document = Readonly<Record<string, unknown>>;

/** One step for each released format, oldest first: step n turns fusebook/n into fusebook/n+1 and keeps what it does not know. */
const STEPS: readonly ((document: Document) => Document)[] = [from0];

export type Migration =
  | { readonly kind: "current"; readonly document: unknown }
  | { readonly kind: "migrated"; readonly document: unknown; readonly from: string }
  | { readonly kind: "newer"; readonly format: string }
  | { readonly kind: "unknown" };

/** Brings a parsed document of any released format up to the current one, in a copy. What is no document of ours is `unknown`. */
export function migrate(document: unknown): Migration {
  const format = formatOf(document);
  const number = formatNumber(format);
  if (number === undefined || Array.isArray(document)) return { kind: "unknown" };
  if (number > CURRENT_NUMBER) return { kind: "newer", format: String(format) };
  if (number === CURRENT_NUMBER) return { kind: "current", document };
  let migrated = document as Document;
  for (const step of STEPS.slice(number)) migrated = step(migrated);
  return { kind: "migrated", document: migrated, from: String(format) };
}
