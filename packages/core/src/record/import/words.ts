/** Lower case, accents folded, signs to spaces (`#` and `?` kept), one space between words. */
export const plainWords = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}#?²']+/gu, " ")
    .trim()
    .replace(/\s+/g, " ");

const MAX_SLUG = 40;

/** A text as part of an id: letters and digits, dashes between; empty where nothing is left. */
export const slug = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, MAX_SLUG)
    .replace(/-+$/g, "");

/** A cell that says "nothing to say". It is kept, but as a blank, not as something that could not be read. */
export const isBlankMark = (text: string): boolean => /^(?:[-–—._/]+|n\/?a|nil|none)$/i.test(text.trim());

/** A cell that says "the same as above". */
export const isDitto = (text: string): boolean => /^(?:"|''|”|“|〃|ditto|same(?: as above)?|do\.)$/i.test(text.trim());

export const isYes = (text: string): boolean => /^(?:y|yes|yep|x|✓|✔|true|ok|1)$/i.test(text.trim());
export const isNo = (text: string): boolean => /^(?:n|no|nope|not|false|0)\b/i.test(text.trim());
