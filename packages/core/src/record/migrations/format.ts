import type { SchemaFault } from "../fault.js";
import { FORMAT } from "../schema/record.js";

/** The number in a format name of ours, `fusebook/1` is 1; undefined where it is no format of ours. */
export const formatNumber = (format: unknown): number | undefined => {
  const digits = typeof format === "string" ? /^fusebook\/(\d{1,6})$/.exec(format)?.[1] : undefined;
  return digits === undefined ? undefined : Number(digits);
};

export const CURRENT_NUMBER = formatNumber(FORMAT) ?? 0;

export const formatOf = (document: unknown): unknown =>
  typeof document === "object" && document !== null && Object.hasOwn(document, "format")
    ? (document as { format?: unknown }).format
    : undefined;

/** The fault of a document that a newer program wrote. */
export function newerFormatFault(document: unknown): SchemaFault | undefined {
  const number = formatNumber(formatOf(document));
  if (number === undefined || number <= CURRENT_NUMBER) return undefined;
  return {
    path: "format",
    code: "newer-format",
    message: `wanted "${FORMAT}" or older, got "fusebook/${number}", written by a newer program; update this program and open the file again (nothing was changed in it)`,
  };
}
