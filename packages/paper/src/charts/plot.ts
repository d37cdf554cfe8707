import { n } from "../drawings/svg.js";
import type { Axis, Tick } from "./axis.js";
import { type Block, boxOfWords, LINE_RATIO, overlaps, type Pen, type TextBox, wordsAt } from "./block.js";
import type { CurvePoint } from "./curve.js";
import { linesWithin, textWidthPx } from "./text-width.js";

/** The field of a plot in pixels, and where a pair of values stands in it. */
export interface Field {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  at(point: CurvePoint): readonly [xPx: number, yPx: number];
  path(points: readonly CurvePoint[]): string;
}

export interface PlotSpec {
  readonly across: Axis;
  readonly up: Axis;
  /** What runs across and up, with units: "current, A". */
  readonly acrossSays: string;
  readonly upSays: string;
  readonly heightPx: number;
  /** How far a dot on the edge of the field may stand out of it. */
  readonly rimPx?: number;
  /** Everything inside the field, clipped to it. */
  inside(field: Field): string;
  /** Words and rings over it; they are given the field and must keep inside it. */
  over?(field: Field): string;
}

/** Far outside the field a line is cut: some viewers draw wrong with very large numbers. */
const FAR_PX = 4000;

function fieldOf(x: number, y: number, w: number, h: number, spec: PlotSpec): Field {
  const clamp = (value: number): number => Math.max(-FAR_PX, Math.min(FAR_PX, value));
  const at = ([ax, ay]: CurvePoint): readonly [number, number] => [
    clamp(x + spec.across.ratioOf(ax) * w),
    clamp(y + (1 - spec.up.ratioOf(ay)) * h),
  ];
  return {
    x,
    y,
    w,
    h,
    at,
    path: (points) => points.map((point, i) => `${i === 0 ? "M" : "L"}${at(point).map(n).join(" ")}`).join(""),
  };
}

/** Labels of an axis that keep apart: whole decades first, then the ends, then the rest. */
function keptApart(boxes: readonly TextBox[], ticks: readonly Tick[], apartPx: number): boolean[] {
  const kept: boolean[] = boxes.map(() => false);
  const majors = [...ticks.keys()].filter((i) => ticks[i]!.isMajor);
  const order = [...majors, 0, boxes.length - 1, ...boxes.keys()];
  for (const i of order) {
    const box = boxes[i];
    if (box === undefined || kept[i]) continue;
    kept[i] = boxes.every((other, k) => k === i || !kept[k] || !overlaps(box, other, apartPx));
  }
  return kept;
}

/** A plot with its grid, ticks and axis words. Words of the upright axis stand above it, level, so that nobody turns their head. */
export function plot(spec: PlotSpec, pen: Pen): Block {
  const { palette, sizes, id } = pen;
  const size = sizes.axisPx;
  const upLabels = spec.up.ticks.filter((tick) => tick.text !== undefined);
  const acrossLabels = spec.across.ticks.filter((tick) => tick.text !== undefined);
  const firstText = acrossLabels[0]?.text ?? "";
  const leftPx = Math.max(
    textWidthPx(firstText, size) / 2 - 2,
    ...upLabels.map((tick) => textWidthPx(tick.text!, size) + 8),
  );
  const lastText = acrossLabels.at(-1)?.text ?? "";
  const rightPx = Math.max(4, textWidthPx(lastText, size) / 2 - 2);
  const topPx = size * 1.32 + 8;
  const acrossSays = linesWithin(spec.acrossSays, pen.innerPx - leftPx - rightPx, size);
  const belowPx = size * (1.6 + LINE_RATIO * acrossSays.length) + 8;
  return {
    heightPx: topPx + spec.heightPx + belowPx,
    draw(x, y) {
      const field = fieldOf(x + leftPx, y + topPx, pen.innerPx - leftPx - rightPx, spec.heightPx, spec);
      const [right, bottom] = [field.x + field.w, field.y + field.h];
      const soft = { sizePx: size, colour: palette.soft };
      const across = acrossLabels.map((tick) => {
        const [px] = field.at([tick.value, spec.up.lo]);
        return { px, text: tick.text!, how: { ...soft, anchor: "middle" as const } };
      });
      const up = upLabels.map((tick) => {
        const [, py] = field.at([spec.across.lo, tick.value]);
        return { py: py + size * 0.35, text: tick.text!, how: { ...soft, anchor: "end" as const } };
      });
      const acrossKept = keptApart(
        across.map(({ px, text, how }) => boxOfWords(px, 0, text, how)),
        acrossLabels,
        8,
      );
      const upKept = keptApart(
        up.map(({ py, text, how }) => boxOfWords(0, py, text, how)),
        upLabels,
        2,
      );
      const gridLine = (d: string, isStrong: boolean): string =>
        `<path d="${d}" stroke="${palette.rule}" stroke-width="1"${isStrong ? "" : ' stroke-opacity="0.45"'}/>`;
      const rim = spec.rimPx ?? 0;
      const clip = `${id}-clip${Math.round(y)}`;
      return [
        wordsAt(x, y + size, spec.upSays, soft),
        ...spec.across.ticks.map((tick) => {
          const [px] = field.at([tick.value, spec.up.lo]);
          return gridLine(`M${n(px)} ${n(field.y)}V${n(bottom)}`, tick.text !== undefined);
        }),
        ...spec.up.ticks.map((tick) => {
          const [, py] = field.at([spec.across.lo, tick.value]);
          return gridLine(`M${n(field.x)} ${n(py)}H${n(right)}`, tick.text !== undefined);
        }),
        `<clipPath id="${clip}"><rect x="${n(field.x - rim)}" y="${n(field.y - rim)}" width="${n(field.w + 2 * rim)}" height="${n(field.h + 2 * rim)}"/></clipPath>`,
        `<g clip-path="url(#${clip})">${spec.inside(field)}</g>`,
        `<path d="M${n(field.x)} ${n(field.y)}V${n(bottom)}H${n(right)}" fill="none" stroke="${palette.ink}" stroke-width="1.4"/>`,
        ...across.map(({ px, text, how }, i) => (acrossKept[i] ? wordsAt(px, bottom + size + 5, text, how) : "")),
        ...up.map(({ py, text, how }, i) => (upKept[i] ? wordsAt(field.x - 6, py, text, how) : "")),
        ...acrossSays.map((line, i) =>
          wordsAt(right, bottom + size * (2.4 + LINE_RATIO * i) + 6, line, { ...soft, anchor: "end" }),
        ),
        spec.over?.(field) ?? "",
      ].join("");
    },
  };
}
