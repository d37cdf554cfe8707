import { escapeXml, n } from "../drawings/svg.js";
import type { Palette, Sizes } from "./chart-style.js";
import { linesWithin, textWidthPx } from "./text-width.js";

/** What every part of a picture is drawn with. */
export interface Pen {
  readonly palette: Palette;
  readonly sizes: Sizes;
  /** Begins every id in this picture. */
  readonly id: string;
  /** Room between the margins of the sheet. */
  readonly innerPx: number;
}

/** A part of a picture that knows its height before it is drawn; parts stand one below another and so never overlap. */
export interface Block {
  readonly heightPx: number;
  draw(xPx: number, yPx: number): string;
}

export interface Words {
  readonly sizePx: number;
  readonly colour: string;
  readonly isStrong?: boolean;
  readonly anchor?: "start" | "middle" | "end";
  /** Colour of a rim that keeps the words legible on lines and patterns. */
  readonly halo?: string;
}

/** One line of words at its baseline. */
export function wordsAt(xPx: number, yPx: number, text: string, how: Words): string {
  const anchor = how.anchor === undefined || how.anchor === "start" ? "" : ` text-anchor="${how.anchor}"`;
  const weight = how.isStrong ? ' font-weight="700"' : "";
  const halo =
    how.halo === undefined ? "" : ` paint-order="stroke" stroke="${how.halo}" stroke-width="4" stroke-linejoin="round"`;
  return `<text x="${n(xPx)}" y="${n(yPx)}" font-size="${how.sizePx}" fill="${how.colour}"${anchor}${weight}${halo}>${escapeXml(text)}</text>`;
}

/** Share of the type size between two baselines, and above the first. */
export const LINE_RATIO = 1.32;
const ASCENT_RATIO = 0.95;

/** Words broken to a width, as a part of the picture. */
export function paragraph(text: string, roomPx: number, how: Words, gapAfterPx = 0): Block {
  const lines = linesWithin(text, roomPx, how.sizePx, how.isStrong);
  return {
    heightPx: lines.length * how.sizePx * LINE_RATIO + gapAfterPx,
    draw: (x, y) =>
      lines.map((line, i) => wordsAt(x, y + how.sizePx * (ASCENT_RATIO + i * LINE_RATIO), line, how)).join(""),
  };
}

export const gap = (heightPx: number): Block => ({ heightPx, draw: () => "" });

/** Parts one below another. */
export function stacked(blocks: readonly Block[]): Block {
  return {
    heightPx: blocks.reduce((sum, block) => sum + block.heightPx, 0),
    draw(x, y) {
      let at = y;
      return blocks
        .map((block) => {
          const svg = block.draw(x, at);
          at += block.heightPx;
          return svg;
        })
        .join("");
    },
  };
}

/** A letter or number in a ring, the same on a curve and beside its words. */
export function ring(xPx: number, yPx: number, mark: string, pen: Pen): string {
  const { palette, sizes } = pen;
  return `<circle cx="${n(xPx)}" cy="${n(yPx)}" r="${sizes.ringPx}" fill="${palette.sheet}" stroke="${palette.ink}" stroke-width="1.2"/>${wordsAt(xPx, yPx + sizes.axisPx * 0.35, mark, { sizePx: sizes.axisPx, colour: palette.ink, anchor: "middle", isStrong: true })}`;
}

/** The box a line of words may take, for keeping words apart. */
export interface TextBox {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export function boxOfWords(xPx: number, yPx: number, text: string, how: Words): TextBox {
  const w = textWidthPx(text, how.sizePx, how.isStrong);
  const x = how.anchor === "middle" ? xPx - w / 2 : how.anchor === "end" ? xPx - w : xPx;
  return { x, y: yPx - how.sizePx * ASCENT_RATIO, w, h: how.sizePx * 1.2 };
}

export const overlaps = (a: TextBox, b: TextBox, apartPx = 0): boolean =>
  a.x < b.x + b.w + apartPx && b.x < a.x + a.w + apartPx && a.y < b.y + b.h + apartPx && b.y < a.y + a.h + apartPx;
