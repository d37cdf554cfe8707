import { n } from "../drawings/svg.js";
import { type Block, LINE_RATIO, type Pen, paragraph, ring, stacked } from "./block.js";
import { type FillManner, fillOf, type LineManner, limitLine, strokesOf } from "./chart-style.js";
import type { Labelled } from "./curve.js";

/** How a thing looks in the plot, repeated small beside its words. */
export type Swatch =
  | { readonly kind: "line"; readonly manner: LineManner }
  | {
      readonly kind: "area";
      readonly fill: FillManner;
      readonly edges?: readonly LineManner[];
      readonly middle?: LineManner;
    }
  | { readonly kind: "limit"; readonly side: 1 | -1 }
  | { readonly kind: "upright"; readonly manner: LineManner; readonly isAccent: boolean }
  | { readonly kind: "point"; readonly isOpen?: boolean };

export interface LegendEntry {
  readonly says: Labelled;
  readonly swatch: Swatch;
  /** The ring on the plot that this entry explains. */
  readonly mark?: string;
}

const SWATCH_PX = 38;

function swatchAt(x: number, y: number, swatch: Swatch, pen: Pen): string {
  const { palette, id } = pen;
  if (swatch.kind === "line") return strokesOf(`M${n(x)} ${n(y)}h${SWATCH_PX}`, swatch.manner, palette, id);
  if (swatch.kind === "limit") return limitLine([x, y], [x + SWATCH_PX, y], swatch.side, palette);
  if (swatch.kind === "upright")
    return `<rect x="${n(x + 11)}" y="${n(y - 8)}" width="16" height="16" fill="${swatch.isAccent ? palette.copperWash : palette.wash}"/>${strokesOf(`M${n(x + 11)} ${n(y - 8)}v16M${n(x + 27)} ${n(y - 8)}v16`, swatch.manner, palette, id)}`;
  if (swatch.kind === "point")
    return `<circle cx="${n(x + SWATCH_PX / 2)}" cy="${n(y)}" r="6" fill="${swatch.isOpen ? palette.sheet : palette.copper}" stroke="${swatch.isOpen ? palette.copper : palette.sheet}" stroke-width="${swatch.isOpen ? 2 : 1.5}"/>`;
  const [upper, lower] = swatch.edges ?? [];
  return [
    `<rect x="${n(x)}" y="${n(y - 7)}" width="${SWATCH_PX}" height="14" fill="${fillOf(swatch.fill, id)}"/>`,
    upper === undefined ? "" : strokesOf(`M${n(x)} ${n(y - 7)}h${SWATCH_PX}`, upper, palette, id),
    swatch.middle === undefined ? "" : strokesOf(`M${n(x)} ${n(y)}h${SWATCH_PX}`, swatch.middle, palette, id),
    lower === undefined ? "" : strokesOf(`M${n(x)} ${n(y + 7)}h${SWATCH_PX}`, lower, palette, id),
  ].join("");
}

function entryBlock(entry: LegendEntry, roomPx: number, pen: Pen): Block {
  const { palette, sizes } = pen;
  const marked = entry.mark === undefined ? 0 : 2 * sizes.ringPx + 8;
  const left = SWATCH_PX + marked + 10;
  const note = [entry.says.note, entry.says.isFromMemory ? "from memory" : undefined]
    .filter((each) => each !== undefined)
    .join("; ");
  const words = stacked([
    paragraph(entry.says.label, roomPx - left, { sizePx: sizes.labelPx, colour: palette.ink }),
    ...(note === "" ? [] : [paragraph(note, roomPx - left, { sizePx: sizes.notePx, colour: palette.soft })]),
  ]);
  return {
    heightPx: Math.max(words.heightPx, 22) + 9,
    draw(x, y) {
      const middle = y + (sizes.labelPx * LINE_RATIO) / 2;
      return [
        swatchAt(x, middle, entry.swatch, pen),
        entry.mark === undefined ? "" : ring(x + SWATCH_PX + 8 + sizes.ringPx, middle, entry.mark, pen),
        words.draw(x + left, y),
      ].join("");
    },
  };
}

/** Every line, band and mark of the plot in words: one column on a phone, two on a desk, filled downwards. */
export function legend(entries: readonly LegendEntry[], pen: Pen): Block {
  const columns = pen.innerPx < 560 ? 1 : 2;
  const roomPx = (pen.innerPx - (columns - 1) * 28) / columns;
  const blocks = entries.map((entry) => entryBlock(entry, roomPx, pen));
  const total = blocks.reduce((sum, block) => sum + block.heightPx, 0);
  let cut = blocks.length;
  if (columns === 2) {
    let sum = 0;
    cut = blocks.findIndex((block) => {
      sum += block.heightPx;
      return sum >= total / 2;
    });
    cut = cut === -1 ? blocks.length : cut + 1;
  }
  const parts = [stacked(blocks.slice(0, cut)), stacked(blocks.slice(cut))];
  return {
    heightPx: Math.max(...parts.map((part) => part.heightPx)),
    draw: (x, y) => parts.map((part, i) => part.draw(x + i * (roomPx + 28), y)).join(""),
  };
}

/** What the picture shows, as sentences for a screen reader. */
export const spoken = (entries: readonly LegendEntry[]): string[] =>
  entries.map(
    ({ says }) =>
      `${says.label}${says.note === undefined ? "" : `: ${says.note}`}${says.isFromMemory ? " (from memory)" : ""}.`,
  );
