import { drawableText } from "../document/drawable-text.js";
import type { Typeface } from "../engine/typeface.js";

/** Width of a text over its type size, regular or bold. */
export type Measure = (text: string, isStrong: boolean) => number;

/** Hundredths of the type size, space to tilde, rounded up, of the shipped text face; a test reads them back from the typeface files. */
const REGULAR =
  "28 29 31 66 60 92 74 16 30 30 49 61 21 37 21 39 65 41 55 58 62 59 60 51 62 60 21 21 56 63 56 48 78 63 62 65 67 57 56 70 70 40 52 64 55 83 70 72 60 73 62 60 56 69 60 86 63 58 61 32 39 35 56 38 25 53 57 49 57 54 32 56 55 26 25 50 27 85 55 55 57 58 35 48 33 54 47 69 49 45 46 35 24 35 56";
const BOLD =
  "32 31 39 77 61 97 73 21 34 34 49 60 28 38 28 44 66 44 58 60 63 61 63 54 63 58 28 28 57 62 57 55 79 68 65 66 69 60 57 72 71 43 57 67 56 86 72 75 63 76 65 61 61 69 65 89 69 65 62 34 44 35 59 40 29 56 60 51 60 57 37 60 58 30 26 56 32 89 58 58 60 60 38 51 38 57 53 74 54 53 51 39 26 39 54";

const widths = (row: string): readonly number[] => row.split(" ").map((hundredths) => Number(hundredths) / 100);
const regular = widths(REGULAR);
const bold = widths(BOLD);

/** Tabular figures are as wide as the widest of them. */
const digitEm = (isStrong: boolean): number => (isStrong ? 0.66 : 0.65);

/** Measures without the typeface files: exact for plain Latin text, generous for anything else. For previews where no engine runs. */
export const measureLatin: Measure = (text, isStrong) => {
  let em = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0)!;
    if (code >= 0x30 && code <= 0x39) em += digitEm(isStrong);
    else em += (isStrong ? bold : regular)[code - 0x20] ?? 1.3;
  }
  return em;
};

/** Measures with the engine's own typefaces: [regular, bold, italic, fallbacks...]. Kerning is not counted; it only makes text narrower. */
export const measureWith =
  (typefaces: readonly Typeface[]): Measure =>
  (text, isStrong) => {
    const [plain, strong, , ...fallbacks] = typefaces;
    const order = [isStrong ? strong : plain, ...fallbacks];
    let em = 0;
    for (const sign of drawableText(text, typefaces)) {
      const code = sign.codePointAt(0)!;
      if (code >= 0x30 && code <= 0x39) em += digitEm(isStrong);
      else
        for (const face of order) {
          const advance = face?.advance(code);
          if (advance !== undefined) {
            em += advance;
            break;
          }
        }
    }
    return em;
  };
