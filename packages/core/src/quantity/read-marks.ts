import { BASES, type Basis } from "./basis.js";

/** Words and signs that say how a figure is known, from the surest to the least sure. */
const MARKS: readonly (readonly [RegExp, Basis])[] = [
  [/\(?\b(?:measured|meas\b\.?|metered|clamped)\)?/i, "measured"],
  [/\(?\b(?:marked|label(?:led|ed)?|name ?plate|as printed|printed)\b\)?/i, "marked"],
  [/\(?\b(?:typical(?:ly)?|typ\b\.?)\)?/i, "typical"],
  [/\(?\b(?:assumed|guess(?:ed)?|estimated?|est\b\.?)\)?/i, "assumed"],
  [/^\s*(?:~|about\b|abt\b\.?|approx(?:imately)?\b\.?|around\b|roughly\b|ca\b\.?|circa\b|c\.)/i, "assumed"],
  [/\b(?:approx(?:imately)?\b\.?|or so\b|-?ish\b)\s*$/i, "assumed"],
  [/\(?\?+\)?\s*$/, "assumed"],
];

/** A text without the marks in it, and the least sure basis that they say; undefined where it has none. */
export const takeMarks = (text: string): { readonly rest: string; readonly basis: Basis | undefined } => {
  let rest = text;
  let least = -1;
  for (const [mark, basis] of MARKS) {
    if (!mark.test(rest)) continue;
    rest = rest.replace(mark, " ").replace(/\s+/g, " ").trim();
    least = Math.max(least, BASES.indexOf(basis));
  }
  return { rest: rest.replace(/^~\s*/, ""), basis: least < 0 ? undefined : BASES[least] };
};
