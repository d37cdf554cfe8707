import { type ReadOptions, type ReadQuantity, readQuantity, type Unread } from "./read-quantity.js";
import { plainText } from "./read-text.js";
import type { Dimension } from "./units.js";

/** So many pieces and the quantity of one; `count` is 1 where none is written. */
export interface ReadCounted {
  readonly kind: "read";
  readonly count: number;
  readonly each: ReadQuantity;
}

const BEFORE = /^(\d{1,3}) ?(?:x|@|pcs?\.?(?: of| at)?|pieces(?: of| at)?|ea\.?(?: of| at)?) ?(?=[~\d.,])/i;
const AFTER = / ?x ?(\d{1,3})$/i;
const EACH = /,? ?\b(?:each|ea)\b\.?$/i;

/** How many, and what is one? `4 x 5W`, `5W x 4`, `4 @ 0.4 A`, `5 W each`. */
export const readCounted = (text: string, dimension: Dimension, options: ReadOptions = {}): ReadCounted | Unread => {
  const plain = plainText(text).replace(EACH, "");
  const before = BEFORE.exec(plain);
  const after = before === null ? AFTER.exec(plain) : null;
  const count = Number(before?.[1] ?? after?.[1] ?? 1);
  if (count === 0) return { kind: "unread", code: "out-of-range", why: "none of them", asWritten: text };
  const one = before === null ? plain.replace(AFTER, "") : plain.slice(before[0].length);
  const each = readQuantity(one, dimension, options);
  if (each.kind === "unread") return { ...each, asWritten: text };
  return { kind: "read", count, each: { ...each, asWritten: text } };
};
