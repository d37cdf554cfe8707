import type { Outcome } from "@fusebook/core/quantity";
import { logAxis, roundOut } from "./axis.js";
import { gap } from "./block.js";
import type { ChartLook, ChartMargin } from "./chart-style.js";
import { ChartFault, checkCurve, checkNumber, checkSpan, checkWords, drawn } from "./check-data.js";
import type { ChartHead, ChartSpan, CurvePoint, Labelled, LabelledCurve } from "./curve.js";
import { legend, spoken } from "./legend.js";
import { Placer } from "./place.js";
import { plot } from "./plot.js";
import { penFor, sheetOf } from "./sheet.js";
import { type Series, seriesOf } from "./time-current-series.js";

/** When a fuse may open: it never opens before `fastest` and always by `slowest`. Points are [currentA, timeS]; leave out the one not known. */
export interface FuseGates extends Labelled {
  readonly fastest?: readonly CurvePoint[];
  readonly slowest?: readonly CurvePoint[];
}

/** How long a conductor bears each current before its insulation is spoiled: points [currentA, timeS]; `margin` says whether the fuse saves it. */
export interface ConductorLimit extends LabelledCurve {
  readonly margin: ChartMargin;
}

export interface CurrentMark extends Labelled {
  readonly currentA: ChartSpan;
}

export interface OpeningMark extends Labelled {
  readonly currentA: ChartSpan;
  readonly timeS: ChartSpan;
}

/** Everything one circuit's time-current picture shows; the circuit's own fuse first, then the fuses before it up to the main. */
export interface TimeCurrentData extends ChartHead {
  readonly fuses: readonly FuseGates[];
  /** What the load draws when it runs. */
  readonly load?: CurrentMark;
  /** Current while a load starts: points [currentA, timeS]. */
  readonly inrushes?: readonly LabelledCurve[];
  readonly conductors?: readonly ConductorLimit[];
  /** What a dead short at the far end of the wire draws. */
  readonly prospective?: CurrentMark;
  /** When the fuse opens on that short. */
  readonly opening?: OpeningMark;
}

const LEAST_S = 0.001;
const MOST_S = 1000;

function check(data: TimeCurrentData): void {
  for (const fuse of data.fuses) {
    checkWords(fuse.label, "fuse");
    if (fuse.fastest === undefined && fuse.slowest === undefined)
      throw new ChartFault("chart-curve-empty", `${fuse.label}: wanted its fastest or slowest gate, got neither`);
    if (fuse.fastest) checkCurve(fuse.fastest, `${fuse.label}, fastest gate`, "log", "log");
    if (fuse.slowest) checkCurve(fuse.slowest, `${fuse.label}, slowest gate`, "log", "log");
  }
  for (const curve of [...(data.inrushes ?? []), ...(data.conductors ?? [])]) {
    checkWords(curve.label, "curve");
    checkCurve(curve.points, curve.label, "log", "log");
  }
  for (const mark of [data.load, data.prospective]) if (mark) checkSpan(mark.currentA, mark.label, "log");
  if (data.opening) {
    checkSpan(data.opening.currentA, `${data.opening.label}, current`, "log");
    checkSpan(data.opening.timeS, `${data.opening.label}, time`, "log");
    checkNumber(data.opening.timeS.lo, data.opening.label, "log");
  }
}

/** The currents worth showing: from half the load to twice the short, whatever the gates and the starting currents need between. */
function axesOf(data: TimeCurrentData, isPhone: boolean) {
  const gates = data.fuses.flatMap((fuse) => [...(fuse.fastest ?? []), ...(fuse.slowest ?? [])]);
  const starts = (data.inrushes ?? []).flatMap((curve) => curve.points);
  const marks = [data.load, data.prospective, data.opening].flatMap((mark) =>
    mark ? [mark.currentA.lo, mark.currentA.hi] : [],
  );
  const limits = (data.conductors ?? []).flatMap((curve) => curve.points);
  const currents = [...gates.map(([a]) => a), ...starts.map(([a]) => a), ...marks];
  const known = currents.length > 0 ? currents : limits.map(([a]) => a);
  if (known.length === 0)
    throw new ChartFault("chart-empty", "wanted a fuse, a conductor or a current, got none of them");
  const times = [...gates, ...starts, ...limits].map(([, s]) => s);
  const openings = data.opening ? [data.opening.timeS.lo, data.opening.timeS.hi] : [];
  const leastS = Math.min(0.01, ...openings.map((s) => s / 2), ...starts.map(([, s]) => s));
  const mostS = Math.max(10, ...openings, Math.min(MOST_S, Math.max(...times, 1)));
  return {
    across: logAxis(roundOut(Math.min(...known) / 1.3, "down"), roundOut(Math.max(...known) * 1.3, "up"), {
      isRoomy: !isPhone,
    }),
    up: logAxis(Math.max(LEAST_S / 10, roundOut(leastS, "down")), roundOut(mostS, "up")),
  };
}

const isCurrent = ({ entry }: Series): boolean => entry.swatch.kind === "upright";

const memoryLine = (data: TimeCurrentData): string[] => {
  const from = [...data.fuses, ...(data.conductors ?? []), ...(data.inrushes ?? [])].filter(
    (each) => each.isFromMemory,
  );
  return from.length === 0
    ? []
    : [`From memory, not from a source that was seen: ${from.map((each) => each.label).join("; ")}.`];
};

/**
 * One circuit's time-current picture, both axes logarithmic: when the fuse may and must open, what the load draws and draws while it starts, how long each
 * conductor bears a fault, what a dead short draws at the far end and when it is cut off. SVG text, or why it cannot be drawn (a value that is not a
 * number or not above 0, an empty curve, no words).
 */
export function timeCurrentChart(data: TimeCurrentData, look: ChartLook = {}): Outcome<string> {
  const pen = penFor("time-current", data, look);
  return drawn(() => {
    check(data);
    const series = seriesOf(data, pen);
    const entries = series.map((each) => each.entry);
    const isPhone = pen.innerPx < 560;
    const { across, up } = axesOf(data, isPhone);
    const wordsHow = { sizePx: pen.sizes.axisPx, colour: pen.palette.ink };
    const picture = plot(
      {
        across,
        up,
        acrossSays: "current, A",
        upSays: "time, s",
        heightPx: isPhone ? Math.round(pen.innerPx * 1.12) : Math.round(pen.innerPx * 0.62),
        inside: (field) =>
          [
            // The shade of a current lies under the bands of the fuses that it crosses.
            ...series.filter(isCurrent).map((each) => each.fill(field)),
            ...series.filter((each) => !isCurrent(each)).map((each) => each.fill(field)),
            ...series.map((each) => each.line(field)),
          ].join(""),
        over: (field) => {
          const placer = new Placer(field, pen);
          for (const each of series) placer.avoid(each.trace(field));
          return series
            .map(({ entry: { mark = "", says }, ringPlaces }) =>
              isPhone
                ? placer.ring(mark, ringPlaces(field)).svg
                : placer.ringWithWords(mark, says.label, wordsHow, ringPlaces(field)),
            )
            .join("");
        },
      },
      pen,
    );
    const head = { ...data, caption: [...(data.caption ?? []), ...memoryLine(data)] };
    return sheetOf(head, spoken(entries), [picture, gap(14), legend(entries, pen)], pen);
  });
}
