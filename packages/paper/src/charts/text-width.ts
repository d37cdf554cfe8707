import { measureLatin } from "../drawings/measure.js";

/** Hundredths of the type size, space to tilde, rounded up, of the shipped fallback face; a test reads them back from the typeface file. */
const FALLBACK =
  "32 41 46 84 64 96 78 28 40 40 50 84 32 37 32 34 64 64 64 64 64 64 64 64 64 64 34 34 84 84 84 54 100 69 69 70 78 64 58 78 76 30 30 66 56 87 75 79 61 79 70 64 62 74 69 99 69 62 69 40 34 40 84 50 50 62 64 55 64 62 36 64 64 28 28 58 28 98 64 62 64 64 42 53 40 64 60 82 60 60 53 64 34 64 84";

const fallback: readonly number[] = FALLBACK.split(" ").map((hundredths) => Number(hundredths) / 100);

/** Signs beyond plain Latin that charts use often, in the fallback face. */
const SIGNS: Readonly<Record<string, number>> = {
  "·": 0.32,
  "–": 0.6,
  "—": 1,
  "≤": 0.84,
  "≥": 0.84,
  "×": 0.84,
  "±": 0.84,
  µ: 0.64,
  Ω: 0.77,
  "²": 0.41,
  "°": 0.5,
  "½": 0.97,
  "†": 0.6,
  "…": 1,
  "→": 0.84,
  "\u00a0": 0.32,
};

/** A value and its unit are read as one and stay on one line: the space between them is made one that does not break. */
const VALUE_AND_UNIT = /(\d) (?=(?:%|A|V|W|Ω|h|s|ms|m|ft|min|mm²|Ah|Hz|kHz|AWG|°C|°F)(?:[\s,;:.)]|$))/g;

/**
 * How wide will a line of text be at most, in pixels? A picture cannot know which face the reader has, so this is the widest of the faces named in
 * `CHART_FACES`; a bold line of the fallback is taken 17 % wider than its regular. Other scripts count 1.3 of the size a sign.
 */
export function textWidthPx(text: string, sizePx: number, isStrong = false): number {
  let em = 0;
  for (const sign of text) {
    const regular = fallback[sign.codePointAt(0)! - 0x20] ?? SIGNS[sign] ?? 1.3;
    const wide = isStrong ? Math.max(regular * 1.17, regular + 0.09) : regular;
    em += SIGNS[sign] === undefined ? Math.max(wide, measureLatin(sign, isStrong)) : wide;
  }
  return em * sizePx;
}

/** Text broken at spaces, a word that is too long broken anywhere, so that no line is wider than the room. */
export function linesWithin(text: string, roomPx: number, sizePx: number, isStrong = false): string[] {
  const fits = (line: string): boolean => textWidthPx(line, sizePx, isStrong) <= roomPx;
  const lines: string[] = [];
  let line = "";
  const words = text.replace(/\s+/g, " ").replace(VALUE_AND_UNIT, "$1\u00a0").split(" ");
  for (const word of words.filter((each) => each !== "")) {
    if (fits(line === "" ? word : `${line} ${word}`)) {
      line = line === "" ? word : `${line} ${word}`;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const sign of word) {
      if (line !== "" && !fits(line + sign)) {
        lines.push(line);
        line = sign;
      } else line += sign;
    }
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines.map((each) => each.replaceAll("\u00a0", " "));
}
