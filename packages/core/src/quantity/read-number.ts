/** A number as written, or why it cannot be told. */
export type ReadNumber =
  | { readonly kind: "read"; readonly value: number }
  | { readonly kind: "unread"; readonly code: "not-a-number" | "ambiguous-number"; readonly why: string };

const unread = (code: "not-a-number" | "ambiguous-number", why: string): ReadNumber => ({ kind: "unread", code, why });

/** How a number looks inside a text: digits with points, commas, thin thousands, a fraction, a power of ten. */
export const NUMBER_PATTERN =
  "(?:\\d+(?: \\d{3})+(?![\\d,/])(?:\\.\\d+)?|\\d+ \\d+/\\d+|\\d+/\\d+|\\d[\\d.,]*(?:[eE][+-]?\\d{1,3}(?![\\d.]))?|[.,]\\d+)";

const asFraction = (text: string): number | undefined => {
  const parts = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(text);
  if (parts === null || Number(parts[3]) === 0) return undefined;
  return Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3]);
};

/**
 * Which number is written here? A point or a comma may be the decimal mark. `1,5` is one and a half; `1,000` is refused, for it may be one or one
 * thousand; `1,234.5` and `1.234,5` are plain; `6 1/2` is six and a half. No sign.
 */
export const readNumber = (text: string): ReadNumber => {
  if (text.includes("/")) {
    const value = asFraction(text);
    return value === undefined ? unread("not-a-number", `${text} is not a fraction`) : { kind: "read", value };
  }
  const plain = /^\d{1,3}(?: \d{3})+(?:\.\d+)?$/.test(text) ? text.replace(/ /g, "") : text;
  const said = (value: string): ReadNumber => {
    const number = Number(value);
    return Number.isFinite(number) && /^[\d.]/.test(value)
      ? { kind: "read", value: number }
      : unread("not-a-number", `${text} is not a number`);
  };
  if (!plain.includes(",")) return said(plain);
  if (/^\d{1,3}(,\d{3})+\.\d+$/.test(plain) || /^\d{1,3}(,\d{3}){2,}$/.test(plain))
    return said(plain.replace(/,/g, ""));
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(plain)) return said(plain.replace(/\./g, "").replace(",", "."));
  if (/^[1-9]\d{0,2},\d{3}$/.test(plain))
    return unread(
      "ambiguous-number",
      `${text} may be ${plain.replace(",", ".")} or ${plain.replace(",", "")}: write it without the comma`,
    );
  if (/^\d*,\d+$/.test(plain)) return said(plain.replace(",", "."));
  return unread("not-a-number", `${text} is not a number`);
};
