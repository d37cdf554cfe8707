/** What people type, brought to one alphabet: one kind of space, quote, dash, degree sign and digit. Meaning is untouched. */
const SAME_SIGN: readonly (readonly [RegExp, string])[] = [
  [/[\u00bd]/g, " 1/2"],
  [/[\u00bc]/g, " 1/4"],
  [/[\u00be]/g, " 3/4"],
  [/[\u215b]/g, " 1/8"],
  [/[\u215c]/g, " 3/8"],
  [/[\u215d]/g, " 5/8"],
  [/[\u215e]/g, " 7/8"],
  [/[\u00ba\u02da]/g, "°"],
  [/[\u2033\u201c\u201d\u201f\u02ba\u3003]/g, '"'],
  [/[\u2032\u2018\u2019\u201b\u02b9\u00b4\u0060]/g, "'"],
  [/[\u2010-\u2015\u2212]/g, "-"],
  [/[\u00d7]/g, "x"],
  [/\u2248/g, "~"],
];

export const plainText = (text: string): string => {
  let plain = text;
  for (const [sign, same] of SAME_SIGN) plain = plain.replace(sign, same);
  return plain
    .normalize("NFKC")
    .replace(/''/g, '"')
    .replace(/\u03a9/g, "ohm")
    .replace(/\+\s*\/?\s*-/g, "±")
    .replace(/\s+/g, " ")
    .trim();
};

/** Longer than any quantity is written: a sentence, or a file put in a cell. */
export const LONGEST_TEXT = 120;
