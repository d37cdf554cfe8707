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
const ROW_PX = 30;
/** From here on the axis counts days. */
const HOURS_SHOWN = 60;
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

/** Hours as they are read: days where there are many. */
const hoursText = ({ lo, hi }: ChartSpan): string => {
  const inDays = hi > 2 * HOURS_SHOWN;
  const [a, b] = [lo, hi].map((hours) => {
    const shown = inDays ? hours / 24 : hours;
    return shown >= 10 ? shown.toFixed(0) : shown.toFixed(1);
  });
  const unit = inDays ? "days" : "h";
  return a === b ? `${a} ${unit}` : `${a} to ${b} ${unit}`;
};

function bandAndLine(run: ChargeRun, i: number, pen: Pen) {
  const manner = MANNERS[i % MANNERS.length]!;
  return {
    band: (field: Field): string => {
      if (run.band === undefined) return "";
      const edge = i === 1 ? pen.palette.copper : pen.palette.ink;
      return `<path d="${field.path([...run.band.low, ...run.band.high.toReversed()])}Z" fill="${fillOf(FILLS[i % FILLS.length]!, pen.id)}" stroke="${edge}" stroke-opacity="0.55"/>`;
    },
    line: (field: Field): string => strokesOf(field.path(run.points), manner, pen.palette, pen.id),
  };
}

/** The hours to the reserve stand as bars under the reserve line, one row a run; over it where there is no room below. */
function rowsOf(field: Field, reserveY: number, count: number): number[] {
  const isRoomBelow = field.y + field.h - reserveY > ROW_PX * (count + 1) + 6;
  return Array.from({ length: count }, (_, i) =>
    isRoomBelow ? reserveY + ROW_PX * (i + 1) + 10 : reserveY - ROW_PX * (count - i) + 10,
  );
}

function reachBar(field: Field, reach: ChartSpan, y: number, colour: string): string {
  const [x0] = field.at([reach.lo, 0]);
  const [x1] = field.at([reach.hi, 0]);
  return `<path d="M${n(x0)} ${n(y)}H${n(x1)}M${n(x0)} ${n(y - 6)}v12M${n(x1)} ${n(y - 6)}v12" stroke="${colour}" stroke-width="3" fill="none"/>`;
}

const inUnits = ({ lo, hi }: ChartSpan, inDays: boolean): ChartSpan =>
  inDays ? { lo: lo / 24, hi: hi / 24 } : { lo, hi };

const entriesOf = (data: ChargeData): LegendEntry[] => [
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
    const inDays = Math.max(...data.runs.flatMap((run) => run.points.map(([hours]) => hours))) > 2 * HOURS_SHOWN;
    const scaled = (points: readonly CurvePoint[]): CurvePoint[] =>
      points.map(([hours, ratio]) => [inDays ? hours / 24 : hours, ratio * 100]);
    const runs = data.runs.map((run) => ({
      ...run,
      points: scaled(run.points),
      ...(run.band ? { band: { low: scaled(run.band.low), high: scaled(run.band.high) } } : {}),
    }));
    const shown = runs.flatMap((run) => [...run.points, ...(run.band?.low ?? []), ...(run.band?.high ?? [])]);
    const across = linearAxis(0, Math.max(...shown.map(([time]) => time)), isPhone ? 7 : 13, {
      steps: inDays ? [1, 2, 5, 7, 14, 28, 56, 91, 182, 364] : [0.1, 0.25, 0.5, 1, 2, 3, 4, 6, 12, 24],
      isOpenAbove: true,
    });
    const up = linearAxis(0, Math.max(100, ...shown.map(([, percent]) => percent)), 6, { suffix: " %" });
    const reservePercent = data.reserve.chargeRatio * 100;
    const drawings = runs.map((run, i) => bandAndLine(run, i, pen));
    const entries = entriesOf(data);
    const colourOf = (i: number): string => (i === 1 ? palette.copper : palette.ink);
    const picture = plot(
      {
        across,
        up,
        acrossSays: inDays ? "days" : "hours",
        upSays: "charge of the bank",
        heightPx: isPhone ? Math.round(pen.innerPx * 0.95) : Math.round(pen.innerPx * 0.48),
        rimPx: 3,
        inside: (field) => {
          const [, y] = field.at([0, reservePercent]);
          const rows = rowsOf(field, y, data.runs.length);
          return [
            `<rect x="${n(field.x)}" y="${n(y)}" width="${n(field.w)}" height="${n(field.y + field.h - y)}" fill="${palette.wash}" fill-opacity="0.7"/>`,
            ...drawings.map((each) => each.band(field)),
            limitLine([field.x, y], [field.x + field.w, y], 1, palette),
            ...drawings.map((each) => each.line(field)),
            ...data.runs.map((run, i) =>
              run.hoursToReserve ? reachBar(field, inUnits(run.hoursToReserve, inDays), rows[i]!, colourOf(i)) : "",
            ),
          ].join("");
        },
        over: (field) => {
          const placer = new Placer(field, pen);
          const [, y] = field.at([0, reservePercent]);
          const rows = rowsOf(field, y, data.runs.length);
          for (const run of runs) placer.avoid(placesAlong(field, run.points));
          const rings = runs.map(
            (run, i) => placer.ring(entries[i]!.mark!, placesAlong(field, run.points, 0.22 + 0.4 * i)).svg,
          );
          const words = { sizePx: sizes.axisPx, colour: palette.ink };
          const reaches = data.runs.map((run, i) => {
            if (!run.hoursToReserve) return "";
            const reach = inUnits(run.hoursToReserve, inDays);
            const [x0] = field.at([reach.lo, 0]);
            const [x1] = field.at([reach.hi, 0]);
            const row = rows[i]!;
            return placer.words(`${entries[i]!.mark} ${hoursText(run.hoursToReserve)}`, { ...words, isStrong: true }, [
              [x1 + 8, row + 4.5, "start"],
              [x0 - 8, row + 4.5, "end"],
              [(x0 + x1) / 2, row - 7, "middle"],
              [x0 + 4, row - 7, "start"],
              [x1 - 4, row - 7, "end"],
            ]);
          });
          const line = placer.words(data.reserve.label, { ...words, colour: palette.soft }, [
            [field.x + 8, y + 24, "start"],
            [field.x + field.w - 8, y + 24, "end"],
            [field.x + field.w - 8, y - 9, "end"],
            [field.x + 8, y - 9, "start"],
          ]);
          return [...rings, ...reaches, line].join("");
        },
      },
      pen,
    );
    return sheetOf(data, spoken(entries), [picture, gap(14), legend(entries, pen)], pen);
  });
}
