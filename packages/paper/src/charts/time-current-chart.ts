import type { Outcome } from "@fusebook/core/quantity";
import { n } from "../drawings/svg.js";
import { logAxis, roundOut } from "./axis.js";
import { gap, type Pen } from "./block.js";
import { type ChartLook, type ChartMargin, fillOf, type LineManner, strokesOf } from "./chart-style.js";
import { ChartFault, checkCurve, checkNumber, checkSpan, checkWords, drawn } from "./check-data.js";
import type { ChartHead, ChartSpan, CurvePoint, Labelled, LabelledCurve } from "./curve.js";
import { type LegendEntry, legend, spoken } from "./legend.js";
import { Placer, placesAlong } from "./place.js";
import { type Field, plot } from "./plot.js";
import { penFor, sheetOf } from "./sheet.js";

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
function axesOf(data: TimeCurrentData) {
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
    across: logAxis(roundOut(Math.min(...known) / 1.3, "down"), roundOut(Math.max(...known) * 1.3, "up")),
    up: logAxis(Math.max(LEAST_S / 10, roundOut(leastS, "down")), roundOut(mostS, "up")),
  };
}

interface Series {
  readonly entry: LegendEntry;
  inside(field: Field): string;
  ringPlaces(field: Field): [number, number][];
}

const letter = (i: number): string => String.fromCharCode(65 + (i % 26)).repeat(1 + Math.floor(i / 26));

function fuseSeries(fuse: FuseGates, i: number, pen: Pen): Omit<Series, "entry"> & { swatch: LegendEntry["swatch"] } {
  const edges: [LineManner, LineManner] = i === 0 ? ["copper-dashed", "copper"] : ["ink-dashed", "ink"];
  const { fastest, slowest } = fuse;
  const fill = i === 0 ? "doubt" : i % 2 === 1 ? "band" : "band-second";
  return {
    swatch:
      fastest && slowest ? { kind: "area", fill, edges } : { kind: "line", manner: fastest ? edges[0] : edges[1] },
    inside: (field) =>
      [
        fastest && slowest
          ? `<path d="${field.path([...fastest, ...slowest.toReversed()])}Z" fill="${fillOf(fill, pen.id)}"/>`
          : "",
        fastest ? strokesOf(field.path(fastest), edges[0], pen.palette, pen.id) : "",
        slowest ? strokesOf(field.path(slowest), edges[1], pen.palette, pen.id) : "",
      ].join(""),
    ringPlaces: (field) => placesAlong(field, slowest ?? fastest ?? [], 0.3 + 0.12 * i),
  };
}

function currentBand(mark: CurrentMark, manner: LineManner, fill: "doubt" | undefined, pen: Pen) {
  return (field: Field): string => {
    const [lo] = field.at([mark.currentA.lo, 1]);
    const [hi] = field.at([mark.currentA.hi, 1]);
    const [top, bottom] = [field.y, field.y + field.h];
    const upright = (x: number): string => strokesOf(`M${n(x)} ${n(top)}V${n(bottom)}`, manner, pen.palette, pen.id);
    if (hi - lo < 2) return upright((lo + hi) / 2);
    return [
      `<rect x="${n(lo)}" y="${n(top)}" width="${n(hi - lo)}" height="${n(field.h)}" fill="${fill ? fillOf(fill, pen.id) : pen.palette.wash}" fill-opacity="0.7"/>`,
      upright(lo),
      upright(hi),
    ].join("");
  };
}

const uprightPlaces = (mark: CurrentMark, fromTop: boolean) => (field: Field) => {
  const [lo] = field.at([mark.currentA.lo, 1]);
  const [hi] = field.at([mark.currentA.hi, 1]);
  return Array.from({ length: 30 }, (_, i): [number, number] => {
    const down = 14 + (i * (field.h - 28)) / 29;
    return [(lo + hi) / 2, fromTop ? field.y + down : field.y + field.h - down];
  });
};

function openingCross(mark: OpeningMark, pen: Pen) {
  const { palette } = pen;
  return (field: Field): string => {
    const [x0, y1] = field.at([mark.currentA.lo, mark.timeS.lo]);
    const [x1, y0] = field.at([mark.currentA.hi, mark.timeS.hi]);
    const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
    return [
      `<path d="M${n(x0)} ${n(y)}H${n(x1)}M${n(x)} ${n(y0)}V${n(y1)}" stroke="${palette.copper}" stroke-width="2.4" fill="none"/>`,
      `<circle cx="${n(x)}" cy="${n(y)}" r="6" fill="${palette.copper}" stroke="${palette.sheet}" stroke-width="1.5"/>`,
    ].join("");
  };
}

function seriesOf(data: TimeCurrentData, pen: Pen): Series[] {
  const all: Series[] = [];
  const add = (
    says: Labelled,
    swatch: LegendEntry["swatch"],
    inside: Series["inside"],
    ringPlaces: Series["ringPlaces"],
  ): void => void all.push({ entry: { says, swatch, mark: letter(all.length) }, inside, ringPlaces });
  for (const [i, fuse] of data.fuses.entries()) {
    const { swatch, inside, ringPlaces } = fuseSeries(fuse, i, pen);
    add(fuse, swatch, inside, ringPlaces);
  }
  for (const [i, limit] of (data.conductors ?? []).entries())
    add(
      limit,
      { kind: "line", manner: limit.margin },
      (field) => strokesOf(field.path(limit.points), limit.margin, pen.palette, pen.id),
      (field) => placesAlong(field, limit.points, 0.25 + 0.1 * i),
    );
  for (const curve of data.inrushes ?? [])
    add(
      curve,
      { kind: "line", manner: "ink-dotted" },
      (field) => strokesOf(field.path(curve.points), "ink-dotted", pen.palette, pen.id),
      (field) => placesAlong(field, curve.points, 0.7),
    );
  if (data.load)
    add(
      data.load,
      { kind: "line", manner: "soft-dash-dot" },
      currentBand(data.load, "soft-dash-dot", undefined, pen),
      uprightPlaces(data.load, false),
    );
  if (data.prospective)
    add(
      data.prospective,
      { kind: "line", manner: "copper" },
      currentBand(data.prospective, "copper", "doubt", pen),
      uprightPlaces(data.prospective, true),
    );
  if (data.opening) {
    const { opening } = data;
    add(opening, { kind: "point" }, openingCross(opening, pen), (field) => {
      const [x, y] = field.at([
        Math.sqrt(opening.currentA.lo * opening.currentA.hi),
        Math.sqrt(opening.timeS.lo * opening.timeS.hi),
      ]);
      return [20, 30, 44].flatMap((far): [number, number][] => [
        [x + far, y - far * 0.7],
        [x - far, y - far * 0.7],
        [x - far, y + far * 0.7],
        [x + far, y + far * 0.7],
      ]);
    });
  }
  return all;
}

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
    const { across, up } = axesOf(data);
    const series = seriesOf(data, pen);
    const entries = series.map((each) => each.entry);
    const picture = plot(
      {
        across,
        up,
        acrossSays: "current, A",
        upSays: "time, s",
        heightPx: pen.innerPx < 560 ? Math.round(pen.innerPx * 1.12) : Math.round(pen.innerPx * 0.62),
        inside: (field) => series.map((each) => each.inside(field)).join(""),
        over: (field) => {
          const placer = new Placer(field, pen);
          return series.map((each) => placer.ring(each.entry.mark ?? "", each.ringPlaces(field))).join("");
        },
      },
      pen,
    );
    const head = { ...data, caption: [...(data.caption ?? []), ...memoryLine(data)] };
    return sheetOf(head, spoken(entries), [picture, gap(14), legend(entries, pen)], pen);
  });
}
