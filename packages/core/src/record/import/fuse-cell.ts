import type { FuseType } from "../schema/types.js";

const TYPES: readonly (readonly [FuseType, RegExp])[] = [
  ["fusible-link", /\bfusible[ -]?link\b/i],
  ["blade-slow", /\b(?:slow|time[ -]delay)[ -]?blade\b|\bblade[ -](?:slow|time[ -]delay)\b/i],
  ["glass-slow", /\bglass[ -]slow\b|\bslow[ -](?:glass|blow)(?: glass)?\b|\bslo[ -]?blo\b/i],
  ["glass-fast", /\bglass[ -]fast\b|\bfast[ -](?:glass|blow|acting)(?: glass)?\b/i],
  ["bolt-down", /\bbolt[ -]?(?:down|on|in)\b/i],
  ["cartridge", /\bcartridge\b/i],
  ["breaker", /\b(?:circuit )?(?:breaker|brkr|bkr)\b|\bcb\b|\b(?:auto|manual)[ -]reset\b/i],
  ["blade", /\b(?:(?:mini|maxi|micro|low profile|regular|standard)[ -]?)?blade(?: fuse)?\b/i],
];

/** The fuse type a text names, and the text without it. */
export function takeFuseType(text: string): { readonly type: FuseType | undefined; readonly rest: string } {
  for (const [type, pattern] of TYPES)
    if (pattern.test(text)) return { type, rest: text.replace(pattern, " ").replace(/\s+/g, " ").trim() };
  return { type: undefined, rest: text.trim() };
}

/** A fuse cell parted into its amps and what else it says: `15A red, corroded`. */
export function splitFuse(text: string): { readonly amps: string; readonly rest: string } {
  const found = /^((?:~|about |approx\.? )?\s*\d[\d.,]*\s*(?:a\b|amps?\b)?\.?\s*\??)[\s,;:-]*(.*)$/is.exec(text);
  return found === null ? { amps: text, rest: "" } : { amps: (found[1] ?? "").trim(), rest: (found[2] ?? "").trim() };
}
