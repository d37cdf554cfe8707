import type { FigureKind } from "./tolerance.js";

const LIMIT_NAME = /^(rated|max|min|interrupt|insulation|allowed)/;

const BY_SUFFIX: readonly (readonly [RegExp, FigureKind])[] = [
  [/Ah$/, "capacity"],
  [/[a-z]Mm$/, "any"],
  [/Mm2$/, "section"],
  [/Ohm$/, "resistance"],
  [/(Hz|Kbit)$/, "frequency"],
  [/Min$|Hours$|[a-z]S$/, "time"],
  [/(Ratio|Exponent)$/, "ratio"],
  [/(Count|quantity)$/, "count"],
  [/[a-z]M$/, "length"],
  [/[a-z]A$/, "current"],
  [/[a-z]V$/, "voltage"],
  [/[a-z]W$/, "power"],
  [/[a-z][CK]$/, "temperature"],
];

/**
 * What kind of figure a record field holds, told from its name: `lengthM` a length, `currentA` a current, `maxFuseA` a rating.
 * A name that starts with rated, max, min, interrupt or insulation is a printed limit: a rating.
 */
export const kindOfField = (fieldName: string): FigureKind => {
  const last = fieldName.slice(fieldName.lastIndexOf(".") + 1);
  if (LIMIT_NAME.test(last)) return "rating";
  return BY_SUFFIX.find(([suffix]) => suffix.test(last))?.[1] ?? "any";
};
