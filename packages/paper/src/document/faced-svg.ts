import { FONT_FAMILIES } from "../engine/font-files.js";
import type { Typeface } from "../engine/typeface.js";

/** Index into `FONT_FAMILIES` of each typeface in engine order: the first three files are one family. */
const FAMILY_OF_FACE = [0, 0, 0, 1, 2];

/**
 * The drawing with every run of characters that the text face lacks put in a face that has them. Without this a single arrow in a line makes the
 * setter draw the whole line in another face.
 */
export function facedSvg(svg: string, typefaces: readonly Typeface[]): string {
  return svg.replace(/(<text [^>]*>)([^<]*)/g, (_, open: string, content: string) => open + faced(content, typefaces));
}

function faced(content: string, typefaces: readonly Typeface[]): string {
  const runs: { family: number; text: string }[] = [];
  for (const sign of content) {
    const code = sign.codePointAt(0)!;
    const face = typefaces.findIndex((one) => one.has(code));
    const last = runs.at(-1);
    const family = face === -1 ? (last?.family ?? 0) : (FAMILY_OF_FACE[face] ?? 0);
    if (last !== undefined && (last.family === family || sign === " ")) last.text += sign;
    else runs.push({ family, text: sign });
  }
  return runs
    .map((run) =>
      run.family === 0 ? run.text : `<tspan font-family="${FONT_FAMILIES[run.family]}">${run.text}</tspan>`,
    )
    .join("");
}
