import type { Typeface } from "../engine/typeface.js";

/** Characters that are set by shaping or by line breaking and have no glyph of their own. */
const isUnseen = (code: number): boolean =>
  code === 0x0a ||
  code === 0xad ||
  (code >= 0x200b && code <= 0x200f) ||
  (code >= 0x202a && code <= 0x202e) ||
  (code >= 0x2060 && code <= 0x206f) ||
  (code >= 0xfe00 && code <= 0xfe0f) ||
  code === 0xfeff ||
  (code >= 0xe0000 && code <= 0xe01ef);

/** Whether one of the typefaces can draw the character, or it needs no glyph. */
export const isDrawable = (code: number, faces: readonly Typeface[]): boolean =>
  isUnseen(code) || faces.some((face) => face.has(code));

/**
 * The text with every character that no typeface can draw written as its code point, `[U+2603]`: a missing glyph would be an empty box, and an
 * empty box on a fuse label is worse than a strange word. Tabs and other control characters become spaces.
 */
export function drawableText(text: string, faces: readonly Typeface[]): string {
  let out = "";
  for (const sign of text) {
    const code = sign.codePointAt(0)!;
    if (code === 0x0d) continue;
    if (code < 0x20 && code !== 0x0a) out += " ";
    else if (code >= 0xd800 && code <= 0xdfff) out += "[U+FFFD]";
    else if (isDrawable(code, faces)) out += sign;
    else out += `[U+${code.toString(16).toUpperCase().padStart(4, "0")}]`;
  }
  return out;
}
