import { Invariant } from "@fusebook/core/quantity";
import { escapeXml, n } from "../drawings/svg.js";
import { type Block, gap, type Pen, paragraph, stacked } from "./block.js";
import { CHART_FACES, CHART_THEMES, type ChartLook, PALETTES, patternsOf, sizesFor } from "./chart-style.js";
import { checkWords } from "./check-data.js";
import type { ChartHead } from "./curve.js";

const NARROWEST_PX = 320;
const WIDEST_PX = 1600;

/** A short name from the words of a picture, so that two pictures in one page keep their patterns apart. */
function idOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return `c${hash.toString(36)}`;
}

/** The pen for one picture. Throws `Invariant` for a width or a theme that does not exist: the caller chose it, not the record. */
export function penFor(kind: string, head: ChartHead, look: ChartLook): Pen {
  const widthPx = look.widthPx ?? 900;
  const theme = look.theme ?? "film";
  if (!(widthPx >= NARROWEST_PX && widthPx <= WIDEST_PX))
    throw new Invariant("chart-width", `a picture is ${NARROWEST_PX} to ${WIDEST_PX} px wide, got ${widthPx}`);
  if (!CHART_THEMES.includes(theme))
    throw new Invariant("chart-theme", `no theme "${theme}": ${CHART_THEMES.join(", ")}`);
  const sizes = sizesFor(widthPx);
  return {
    palette: PALETTES[theme],
    sizes,
    id: idOf([kind, head.title, head.subtitle ?? "", theme, widthPx].join("|")),
    innerPx: widthPx - 2 * sizes.padPx,
  };
}

/** The whole picture: heading, the parts in their order, caption; with the words a screen reader speaks. */
export function sheetOf(head: ChartHead, alt: readonly string[], blocks: readonly Block[], pen: Pen): string {
  checkWords(head.title, "title");
  const { palette, sizes, id, innerPx } = pen;
  const foot = head.caption ?? [];
  const whole = stacked([
    paragraph(head.title, innerPx, { sizePx: sizes.titlePx, colour: palette.ink, isStrong: true }, 2),
    ...(head.subtitle === undefined
      ? []
      : [paragraph(head.subtitle, innerPx, { sizePx: sizes.subtitlePx, colour: palette.soft })]),
    gap(14),
    ...blocks,
    ...(foot.length > 0 ? [gap(12)] : []),
    ...foot.map((line) => paragraph(line, innerPx, { sizePx: sizes.notePx, colour: palette.soft }, 3)),
  ]);
  const widthPx = innerPx + 2 * sizes.padPx;
  const heightPx = Math.ceil(whole.heightPx + 2 * sizes.padPx);
  const desc = [head.subtitle, ...alt, ...foot].filter((line) => line !== undefined).join(" ");
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${n(widthPx)} ${heightPx}" width="${n(widthPx)}" height="${heightPx}" role="img" aria-labelledby="${id}-title ${id}-desc" font-family="${CHART_FACES}" style="font-variant-numeric:tabular-nums">`,
    `<title id="${id}-title">${escapeXml(head.title)}</title><desc id="${id}-desc">${escapeXml(desc)}</desc>`,
    patternsOf(palette, id),
    `<rect x="0.5" y="0.5" width="${n(widthPx - 1)}" height="${heightPx - 1}" rx="3" fill="${palette.sheet}" stroke="${palette.rule}"/>`,
    whole.draw(sizes.padPx, sizes.padPx),
    "</svg>",
  ].join("");
}
