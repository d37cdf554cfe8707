import { digitsOf } from "@fusebook/core/quantity";
import { n } from "../drawings/svg.js";
import { type Block, gap, type Pen, paragraph, stacked } from "./block.js";
import { fillOf } from "./chart-style.js";
import type { RankedReading } from "./doubt-chart.js";

const percent = (ratio: number): string => `${digitsOf(ratio * 100, 2)} %`;
const minutesText = (minutes: number): string => `${digitsOf(minutes, 2)} min`;

const arithmetic = (reading: RankedReading): string =>
  [
    `${percent(reading.shrinkRatio)} of the doubt in ${minutesText(reading.minutes)}: ${digitsOf(reading.shrinkPerMinute * 100, 3)} % a minute`,
    reading.settlesRatio === undefined ? undefined : `settles it with a chance of ${percent(reading.settlesRatio)}`,
    reading.note,
    reading.isFromMemory ? "from memory" : undefined,
  ]
    .filter((each) => each !== undefined)
    .join("; ");

function row(reading: RankedReading, i: number, most: number, pen: Pen): Block {
  const { palette, sizes, id, innerPx } = pen;
  const left = 30;
  const roomPx = innerPx - left;
  const label = paragraph(reading.label, roomPx, {
    sizePx: sizes.labelPx,
    colour: palette.ink,
    isStrong: i === 0,
  });
  const sums = paragraph(arithmetic(reading), roomPx, { sizePx: sizes.notePx, colour: palette.soft });
  const barPx = 12;
  const words = stacked([label, gap(3), gap(barPx), gap(4), sums, gap(12)]);
  const number = paragraph(`${i + 1}`, left, { sizePx: sizes.labelPx, colour: palette.soft, isStrong: true });
  return {
    heightPx: words.heightPx,
    draw(x, y) {
      const widthPx = most > 0 ? (Math.max(0, reading.shrinkPerMinute) / most) * roomPx : 0;
      const barY = y + label.heightPx + 3;
      const bar = (w: number, fill: string, stroke: string): string =>
        `<rect x="${n(x + left)}" y="${n(barY)}" width="${n(w)}" height="${barPx}" fill="${fill}"${stroke === "" ? "" : ` stroke="${stroke}" stroke-width="1"`}/>`;
      return [
        number.draw(x, y),
        bar(roomPx, palette.wash, ""),
        widthPx > 0 ? bar(Math.max(1.5, widthPx), i === 0 ? palette.copper : fillOf("doubt", id), palette.copper) : "",
        words.draw(x + left, y),
      ].join("");
    },
  };
}

/** Readings as bars of doubt shrunk per minute, best first, the best filled; each with its arithmetic. */
export function rankedReadings(readings: readonly RankedReading[], pen: Pen): { block: Block; spoken: string[] } {
  const { palette, sizes, innerPx } = pen;
  const most = Math.max(...readings.map((reading) => reading.shrinkPerMinute), 0);
  const heading = paragraph("What to read next: doubt shrunk per minute of work", innerPx, {
    sizePx: sizes.subtitlePx,
    colour: palette.ink,
    isStrong: true,
  });
  return {
    block: stacked([heading, gap(8), ...readings.map((reading, i) => row(reading, i, most, pen))]),
    spoken: readings.map((reading, i) => `${i + 1}. ${reading.label}: ${arithmetic(reading)}.`),
  };
}
