import { type SchemaFault, shown } from "./fault.js";

/** Deeper than any record needs; far from where a recursive walk would run out of stack. */
export const MAX_DEPTH = 100;
/** Values in one document, counted wherever they are met: a coach of 2,000 circuits has about 100,000. */
export const MAX_VALUES = 5_000_000;
/** Characters of text: photos are kept outside the record. */
export const MAX_TEXT_CHARACTERS = 32_000_000;

/** Whether a document is deeper or larger than is read at all; walks without recursion, so that no document can exhaust the stack. */
export function boundFault(document: unknown): SchemaFault | undefined {
  const values: unknown[] = [document];
  const depths: number[] = [0];
  let count = 0;
  while (values.length > 0) {
    const value = values.pop();
    const depth = depths.pop() ?? 0;
    if (typeof value !== "object" || value === null) continue;
    if (depth > MAX_DEPTH)
      return {
        path: "",
        code: "too-deep",
        message: `wanted at most ${MAX_DEPTH} levels of brackets, got more, around ${shown(value)}; this is no record that the program wrote: open the right file`,
      };
    const inner: readonly unknown[] = Array.isArray(value) ? value : Object.values(value);
    count += inner.length;
    if (count > MAX_VALUES)
      return {
        path: "",
        code: "too-big",
        message: `wanted at most ${MAX_VALUES} values, got more; split the record by coach and keep photos outside it`,
      };
    for (const item of inner)
      if (typeof item === "object" && item !== null) {
        values.push(item);
        depths.push(depth + 1);
      }
  }
  return undefined;
}
