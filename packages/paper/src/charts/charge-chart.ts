import type { Outcome } from "@fusebook/core/quantity";
import { n } from "../drawings/svg.js";
import { linearAxis } from "./axis.js";
import { gap, type Pen } from "./block.js";
import { type ChartLook, fillOf, type LineManner, limitLine, strokesOf } from "./chart-style.js";
import { ChartFault, checkCurve, checkNumber, checkSpan, checkWords, drawn } from "./check-data.js";
import type { ChartHead, ChartSpan, CurvePoint, Labelled, LabelledCurve } from "./curve.js";
import { type LegendEntry, legend, spoken } from "./legend.js";
import { Placer, placesAlong } from "./place.js";
import { type Field, plot } from "./plot.js";
import { penFor, sheetOf } from "./sheet.js";

/** One way the charge may run: points [hours, charge 0..1]. */
export interface ChargeRun extends LabelledCurve {
  /** The lowest and the highest it may be, by the doubt in the figures. */
  readonly band?: { readonly low: readonly CurvePoint[]; readonly high: readonly CurvePoint[] };
  /** When the reserve is reached; absent where it is not reached in the time shown. */
  readonly hoursToReserve?: ChartSpan;
}

export interface ChargeData extends ChartHead {
  /** As it is first; after the plan second. */
  readonly runs: readonly ChargeRun[];
  /** The charge, 0..1, that is to be kept. */
  readonly reserve: Labelled & { readonly chargeRatio: number };
}

const MANNERS: readonly LineManner[] = ["ink", "copper-dashed", "ink-dotted", "soft-dash-dot"];
const FILLS = ["band", "doubt", "band-second", "band"] as const;

function check(data: ChargeData): void {
  if (data.runs.length === 0) throw new ChartFault("chart-empty", "wanted at least one run of the charge, got none");
  for (const run of data.runs) {
    checkWords(run.label, "run");
    checkCurve(run.points, run.label, "linear", "linear");
    if (run.band) {
      checkCurve(run.band.low, `${run.label}, lowest`, "linear", "linear");
      checkCurve(run.band.high, `${run.label}, highest`, "linear", "linear");
    }
    if (run.hoursToReserve) checkSpan(run.hoursToReserve, `${run.label}, hours to the reserve`);
  }
  checkNumber(data.reserve.chargeRatio, data.reserve.label);
}

const percent = ([hours, ratio]: CurvePoint): CurvePoint => [hours, ratio * 100];

const hoursText = ({ lo, hi }: ChartSpan): string => {
  const [a, b] = [lo, hi].map((hours) => (hours >= 10 ? hours.toFixed(0) : hours.toFixed(1)));
  return a === b ? `${a} h` : `${a} to ${b} h`;
};

function runInside(run: ChargeRun, i: number, reserveRatio: number, pen: Pen) {
  const manner = MANNERS[i % MANNERS.length]!;
  const fill = FILLS[i % FILLS.length]!;
  return (field: Field): string => {
    const parts: string[] = [];
    if (run.band)
      parts.push(
        `<path d="${field.path([...run.band.low, ...run.band.high.toReversed()].map(percent))}Z" fill="${fillOf(fill, pen.id)}"/>`,
      );
    parts.push(strokesOf(field.path(run.points.map(percent)), manner, pen.palette, pen.id));
    if (run.hoursToReserve) {
      const [x0, y] = field.at([run.hoursToReserve.lo, reserveRatio * 100]);
      const [x1] = field.at([run.hoursToReserve.hi, reserveRatio * 100]);
      parts.push(
        `<path d="M${n(x0)} ${n(y)}H${n(x1)}M${n(x0)} ${n(y - 7)}v14M${n(x1)} ${n(y - 7)}v14" stroke="${i === 1 ? pen.palette.copper : pen.palette.ink}" stroke-width="3" fill="none"/>`,
      );
    }
    return parts.join("");
  };
}

type WordPlaces = [number, number, "start" | "middle" | "end"][];

/** The first run's hours stand under the reserve line, the second's over it, so that neither is taken for the other. */
const below = (x0: number, x1: number, y: number): WordPlaces => [
  [x0 + 6, y + 26, "end"],
  [(x0 + x1) / 2, y + 26, "middle"],
  [x1, y + 26, "start"],
  [(x0 + x1) / 2, y + 46, "middle"],
];
const above = (x0: number, x1: number, y: number): WordPlaces => [
  [x1 + 4, y - 12, "start"],
  [(x0 + x1) / 2, y - 14, "middle"],
  [x1, y - 14, "end"],
  [(x0 + x1) / 2, y - 34, "middle"],
];

/**
 * How the charge of the bank runs down over the hours, as it is and after the plan, with the span that doubt leaves and the reserve that is to be kept.
 * SVG text, or why it cannot be drawn.
 */
export function chargeChart(data: ChargeData, look: ChartLook = {}): Outcome<string> {
  const pen = penFor("charge", data, look);
  return drawn(() => {
    check(data);
    const { palette, sizes } = pen;
    const isPhone = pen.innerPx < 560;
    const hours = data.runs.flatMap((run) =>
      [...run.points, ...(run.band?.low ?? []), ...(run.band?.high ?? [])].map(([h]) => h),
    );
    const ratios = data.runs.flatMap((run) => [...run.points, ...(run.band?.high ?? [])].map(([, ratio]) => ratio));
    const across = linearAxis(0, Math.max(...hours), isPhone ? 7 : 13, {
      steps: [0.5, 1, 2, 3, 4, 6, 12, 24, 48, 168],
      isOpenAbove: true,
    });
    const up = linearAxis(0, Math.max(100, ...ratios.map((ratio) => ratio * 100)), 6, { suffix: " %" });
    const reservePercent = data.reserve.chargeRatio * 100;
    const entries: LegendEntry[] = [
      ...data.runs.map((run, i): LegendEntry => {
        const reach = run.hoursToReserve ? `reserve reached after ${hoursText(run.hoursToReserve)}` : undefined;
        const note = [run.note, reach].filter((each) => each !== undefined).join("; ");
        return {
          says: { ...run, ...(note === "" ? {} : { note }) },
          swatch: run.band
            ? { kind: "area", fill: FILLS[i % FILLS.length]!, middle: MANNERS[i % MANNERS.length]! }
            : { kind: "line", manner: MANNERS[i % MANNERS.length]! },
          mark: String.fromCharCode(65 + (i % 26)),
        };
      }),
      { says: data.reserve, swatch: { kind: "limit", side: 1 } },
    ];
    const picture = plot(
      {
        across,
        up,
        acrossSays: "hours",
        upSays: "charge of the bank",
        heightPx: isPhone ? Math.round(pen.innerPx * 0.95) : Math.round(pen.innerPx * 0.48),
        rimPx: 3,
        inside: (field) => {
          const [, y] = field.at([0, reservePercent]);
          return [
            `<rect x="${n(field.x)}" y="${n(y)}" width="${n(field.w)}" height="${n(field.y + field.h - y)}" fill="${palette.wash}" fill-opacity="0.7"/>`,
            limitLine([field.x, y], [field.x + field.w, y], 1, palette),
            ...data.runs.map((run, i) => runInside(run, i, data.reserve.chargeRatio, pen)(field)),
          ].join("");
        },
        over: (field) => {
          const placer = new Placer(field, pen);
          for (const run of data.runs) placer.avoid(placesAlong(field, run.points.map(percent)));
          const [, y] = field.at([0, reservePercent]);
          const rings = data.runs.map(
            (run, i) => placer.ring(entries[i]!.mark!, placesAlong(field, run.points.map(percent), 0.22 + 0.5 * i)).svg,
          );
          const words = { sizePx: sizes.axisPx, colour: palette.ink };
          const spans = data.runs.map((run, i) => {
            if (!run.hoursToReserve) return "";
            const [x0] = field.at([run.hoursToReserve.lo, 0]);
            const [x1] = field.at([run.hoursToReserve.hi, 0]);
            const text = `${entries[i]!.mark} ${hoursText(run.hoursToReserve)}`;
            return placer.words(text, { ...words, isStrong: true }, i % 2 === 0 ? below(x0, x1, y) : above(x0, x1, y));
          });
          const line = placer.words(data.reserve.label, { ...words, colour: palette.soft }, [
            [field.x + 8, y + 24, "start"],
            [field.x + field.w - 8, y - 9, "end"],
            [field.x + field.w - 8, y + 24, "end"],
            [field.x + 8, y - 9, "start"],
          ]);
          return [...rings, ...spans, line].join("");
        },
      },
      pen,
    );
    return sheetOf(data, spoken(entries), [picture, gap(14), legend(entries, pen)], pen);
  });
}
