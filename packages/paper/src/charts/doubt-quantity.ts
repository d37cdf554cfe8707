import { digitsOf } from "@fusebook/core/quantity";
import { n } from "../drawings/svg.js";
import { leastReach, linearAxis } from "./axis.js";
import { type Block, gap, type Pen, stacked } from "./block.js";
import { fillOf, limitLine, strokesOf } from "./chart-style.js";
import type { ComparedQuantity } from "./doubt-chart.js";
import { type LegendEntry, legend, spoken } from "./legend.js";
import { Placer } from "./place.js";
import { type Field, plot } from "./plot.js";

const CURVE_SHARE = 0.62;
/** Above the tallest bar, for the limit's own words. */
const ROOM_FOR_WORDS_PX = 28;

const percentText = (ratio: number): string => {
  const percent = ratio * 100;
  if (percent > 0 && percent < 0.1) return "under 0.1 %";
  if (percent < 100 && percent > 99.9) return "over 99.9 %";
  return `${digitsOf(percent, percent >= 10 ? 2 : 1)} %`;
};

const withUnit = (value: number, unit: string): string => `${digitsOf(value, 3)}${unit === "" ? "" : ` ${unit}`}`;

/** Heights of the bars over the field: as they are where there are bins, else even bars between the quantiles. */
function densityOf(quantity: ComparedQuantity): { lo: number; hi: number; density: number }[] {
  const bins =
    quantity.bins && quantity.bins.length > 0
      ? quantity.bins
      : quantity.quantiles.slice(1).map((each, i) => {
          const before = quantity.quantiles[i]!;
          return { lo: before.value, hi: each.value, ratio: each.ratio - before.ratio };
        });
  return bins
    .filter((bin) => bin.hi - bin.lo > leastReach(bin.lo, bin.hi) && bin.ratio > 0)
    .map((bin) => ({ lo: bin.lo, hi: bin.hi, density: bin.ratio / (bin.hi - bin.lo) }));
}

/** The quantity against its limit: the share of samples, the quantiles as a bar, the exact span under it, and the side where it fails. */
export function quantityPlot(quantity: ComparedQuantity, pen: Pen): { block: Block; spoken: string[] } {
  const { palette, sizes, id } = pen;
  const isPhone = pen.innerPx < 560;
  const { limit, exact, quantiles, unit } = quantity;
  const values = [limit.value, exact.lo, exact.hi, ...quantiles.map((each) => each.value)];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = (most - least > leastReach(least, most) ? most - least : Math.abs(most) || 1) * 0.06;
  const lowest = least >= 0 ? Math.max(0, least - room) : least - room;
  const across = linearAxis(lowest, most + room, isPhone ? 5 : 9);
  const density = densityOf(quantity);
  const tallest = Math.max(...density.map((bar) => bar.density), 0);
  const up = { kind: "linear" as const, lo: 0, hi: 1, ticks: [], ratioOf: (value: number) => value };
  const [first, last] = [quantiles[0]!, quantiles.at(-1)!];
  const inner = quantiles.length >= 4 ? [quantiles[1]!, quantiles.at(-2)!] : undefined;
  const middle = quantiles.find((each) => Math.abs(each.ratio - 0.5) < 1e-9);
  const entries: LegendEntry[] = [
    {
      says: {
        ...quantity,
        note: [quantity.note, `fails in ${percentText(quantity.failsRatio)} of the samples`]
          .filter((each) => each !== undefined)
          .join("; "),
      },
      swatch: { kind: "area", fill: "doubt" },
    },
    {
      says: {
        label: `Limit: ${limit.sense} ${withUnit(limit.value, unit)}`,
        note: [limit.label, limit.note, "the shaded side fails"]
          .filter((each) => each !== undefined && each !== "")
          .join("; "),
        isFromMemory: limit.isFromMemory ?? false,
      },
      swatch: { kind: "limit", side: limit.sense === "at most" ? 1 : -1 },
    },
    {
      says: {
        label: `${percentText(last.ratio - first.ratio)} of the samples: ${digitsOf(first.value, 3)} to ${withUnit(last.value, unit)}`,
        ...(inner
          ? {
              note: `thick: ${percentText(inner[1]!.ratio - inner[0]!.ratio)}, ${digitsOf(inner[0]!.value, 3)} to ${withUnit(inner[1]!.value, unit)}`,
            }
          : {}),
      },
      swatch: { kind: "line", manner: "copper" },
    },
    {
      says: {
        label: `Exact span: ${digitsOf(exact.lo, 3)} to ${withUnit(exact.hi, unit)}`,
        note: "no value outside it is possible",
      },
      swatch: { kind: "line", manner: "ink" },
    },
  ];
  const block = plot(
    {
      across,
      up,
      acrossSays: `${quantity.label}${unit === "" ? "" : `, ${unit}`}`,
      upSays: "how often (area = share of the samples)",
      heightPx: isPhone ? 190 : 220,
      inside: (field) => {
        const base = field.y + field.h * CURVE_SHARE;
        const x = (value: number): number => field.at([value, 0])[0];
        const limitX = x(limit.value);
        const [from, to] = limit.sense === "at most" ? [limitX, field.x + field.w] : [field.x, limitX];
        const bars = density.map((bar) => {
          const h = (bar.density / tallest) * (field.h * CURVE_SHARE - ROOM_FOR_WORDS_PX);
          return `<rect x="${n(x(bar.lo))}" y="${n(base - h)}" width="${n(Math.max(0.5, x(bar.hi) - x(bar.lo)))}" height="${n(h)}" fill="${fillOf("doubt", id)}" stroke="${palette.copper}" stroke-width="1"/>`;
        });
        return [
          `<rect x="${n(from)}" y="${n(field.y)}" width="${n(Math.max(0, to - from))}" height="${n(field.h)}" fill="${palette.wash}" fill-opacity="0.7"/>`,
          ...bars,
          strokesOf(`M${n(field.x)} ${n(base)}H${n(field.x + field.w)}`, "soft-dash-dot", palette, id),
          barOf(field),
          limitLine([limitX, field.y], [limitX, field.y + field.h], limit.sense === "at most" ? 1 : -1, palette),
        ].join("");
      },
      over: (field) => {
        const placer = new Placer(field, pen);
        const limitX = field.at([limit.value, 0])[0];
        const how = { sizePx: sizes.axisPx, colour: palette.margin.fails, isStrong: true };
        return placer.words(`${limit.sense} ${withUnit(limit.value, unit)}`, how, [
          [limitX + (limit.sense === "at most" ? 14 : 8), field.y + 17, "start"],
          [limitX - (limit.sense === "at most" ? 8 : 14), field.y + 17, "end"],
        ]);
      },
    },
    pen,
  );

  function barOf(field: Field): string {
    const x = (value: number): number => field.at([value, 0])[0];
    const upper = field.y + field.h * 0.75;
    const lower = field.y + field.h * 0.91;
    const stroke = (a: number, b: number, y: number, widthPx: number, colour: string): string =>
      `<path d="M${n(x(a))} ${n(y)}H${n(Math.max(x(b), x(a) + 0.5))}" stroke="${colour}" stroke-width="${widthPx}"/>`;
    const ends = (a: number, b: number, y: number, colour: string): string =>
      `<path d="M${n(x(a))} ${n(y - 6)}v12M${n(x(b))} ${n(y - 6)}v12" stroke="${colour}" stroke-width="2"/>`;
    return [
      stroke(first.value, last.value, upper, 3, palette.copper),
      ends(first.value, last.value, upper, palette.copper),
      inner ? stroke(inner[0]!.value, inner[1]!.value, upper, 11, palette.copper) : "",
      middle
        ? `<path d="M${n(x(middle.value))} ${n(upper - 9)}v18" stroke="${inner ? palette.sheet : palette.copper}" stroke-width="2.5"/>`
        : "",
      stroke(exact.lo, exact.hi, lower, 2, palette.ink),
      ends(exact.lo, exact.hi, lower, palette.ink),
    ].join("");
  }

  return { block: stacked([block, gap(12), legend(entries, pen)]), spoken: spoken(entries) };
}
