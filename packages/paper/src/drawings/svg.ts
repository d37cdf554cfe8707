import { FACE, INK } from "./look.js";
import type { Measure } from "./measure.js";

const ESCAPES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text made safe inside SVG; control characters, which XML forbids, become spaces. */
export const escapeXml = (text: string): string =>
  [...text].map((sign) => (sign < " " ? " " : (ESCAPES[sign] ?? sign))).join("");

/** A length without a tail of decimals, so that the same drawing has the same bytes everywhere. */
export const n = (value: number): string => String(Number(value.toFixed(3)));

export interface Lettering {
  readonly sizeMm: number;
  readonly isStrong?: boolean;
  readonly colour?: string;
  readonly anchor?: "start" | "middle" | "end";
}

/** One line of text at its baseline. Drawings use millimetres throughout. */
export function textAt(xMm: number, yMm: number, text: string, how: Lettering, ratio = 1): string {
  const anchor = how.anchor === undefined || how.anchor === "start" ? "" : ` text-anchor="${how.anchor}"`;
  const weight = how.isStrong ? ' font-weight="700"' : "";
  const place =
    ratio < 1 ? `transform="translate(${n(xMm)} ${n(yMm)}) scale(${n(ratio)} 1)"` : `x="${n(xMm)}" y="${n(yMm)}"`;
  return `<text ${place} font-size="${n(how.sizeMm)}" fill="${how.colour ?? INK}"${anchor}${weight}>${escapeXml(text)}</text>`;
}

export const line = (x1: number, y1: number, x2: number, y2: number, widthMm = 0.3, colour = INK, dash = ""): string =>
  `<path d="M${n(x1)} ${n(y1)}L${n(x2)} ${n(y2)}" stroke="${colour}" stroke-width="${n(widthMm)}" fill="none"${dash === "" ? "" : ` stroke-dasharray="${dash}"`}/>`;

export const box = (
  x: number,
  y: number,
  w: number,
  h: number,
  how: { fill?: string; stroke?: string; widthMm?: number; r?: number; dash?: string } = {},
): string =>
  `<rect x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}"${how.r === undefined ? "" : ` rx="${n(how.r)}"`} fill="${how.fill ?? "none"}" stroke="${how.stroke ?? INK}" stroke-width="${n(how.widthMm ?? 0.3)}"${how.dash === undefined ? "" : ` stroke-dasharray="${how.dash}"`}/>`;

/** A whole drawing, one user unit a millimetre. */
export const sheet = (widthMm: number, heightMm: number, title: string, content: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${n(widthMm)} ${n(heightMm)}" width="${n(widthMm)}mm" height="${n(heightMm)}mm" role="img" font-family="${FACE}"><title>${escapeXml(title)}</title>${content}</svg>`;

/** Lines of at most `widthEm`, broken at spaces and after hyphens and slashes; undefined where a single word is wider or too many lines are needed. */
export function wrapText(
  text: string,
  widthEm: number,
  maxLines: number,
  isStrong: boolean,
  measure: Measure,
): string[] | undefined {
  const words = text.split(/(?<=[-/])|\s+/).filter((word) => word !== "");
  const lines: string[] = [];
  let current = "";
  for (const word of words) {
    const isGlued = current !== "" && /[-/]$/.test(current) && text.includes(current.slice(-8) + word);
    const longer = current === "" ? word : current + (isGlued ? "" : " ") + word;
    if (measure(longer, isStrong) <= widthEm) current = longer;
    else {
      if (current !== "") lines.push(current);
      if (measure(word, isStrong) > widthEm) return undefined;
      current = word;
    }
  }
  if (current !== "") lines.push(current);
  return lines.length <= maxLines ? lines : undefined;
}

/** Least width over natural width that a condensed text may have and still read well (common practice, no source). */
export const MIN_CONDENSED = 0.75;

/**
 * Text in a width: as it is, else condensed down to `MIN_CONDENSED`, else on more lines, else broken anywhere: drawn whole in every case. The
 * first baseline is at `yMm`; further lines stand below at 1.15 of the size. Returns the drawing and the number of lines.
 */
export function textIn(
  xMm: number,
  yMm: number,
  widthMm: number,
  text: string,
  how: Lettering,
  measure: Measure,
): { svg: string; lines: number } {
  const strong = how.isStrong ?? false;
  const widthEm = widthMm / how.sizeMm;
  const natural = measure(text, strong);
  if (natural <= widthEm) return { svg: textAt(xMm, yMm, text, how), lines: 1 };
  if (natural * MIN_CONDENSED <= widthEm) return { svg: textAt(xMm, yMm, text, how, widthEm / natural), lines: 1 };
  const lines =
    wrapText(text, widthEm / MIN_CONDENSED, 99, strong, measure) ?? breakAnywhere(text, widthEm, strong, measure);
  const svg = lines.map((part, i) => {
    const ratio = Math.min(1, widthEm / measure(part, strong));
    return textAt(xMm, yMm + i * 1.15 * how.sizeMm, part, how, ratio);
  });
  return { svg: svg.join(""), lines: lines.length };
}

function breakAnywhere(text: string, widthEm: number, isStrong: boolean, measure: Measure): string[] {
  const lines: string[] = [];
  let current = "";
  for (const sign of text) {
    if (current !== "" && measure(current + sign, isStrong) > widthEm) {
      lines.push(current);
      current = sign;
    } else current += sign;
  }
  return current === "" ? lines : [...lines, current];
}
