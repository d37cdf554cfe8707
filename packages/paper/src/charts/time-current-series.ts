import { n } from "../drawings/svg.js";
import type { Pen } from "./block.js";
import { type FillManner, fillOf, type LineManner, strokesOf } from "./chart-style.js";
import type { CurvePoint, Labelled, LabelledCurve } from "./curve.js";
import type { LegendEntry, Swatch } from "./legend.js";
import { type Place, placesAlong } from "./place.js";
import type { Field } from "./plot.js";
import type { ConductorLimit, CurrentMark, FuseGates, OpeningMark, TimeCurrentData } from "./time-current-chart.js";

/** One thing in the picture: fills lie under all lines, lines under all rings. */
export interface Series {
  readonly entry: LegendEntry;
  fill(field: Field): string;
  line(field: Field): string;
  /** Points along the line, which words keep clear of. */
  trace(field: Field): Place[];
  /** Where its ring may stand, best first. */
  ringPlaces(field: Field): Place[];
}

type Drawing = Omit<Series, "entry"> & { readonly swatch: Swatch };

const nothing = (): string => "";

/** The circuit's own fuse in copper, those before it in ink with fills that lean either way. */
function fuseGates(fuse: FuseGates, i: number, pen: Pen): Drawing {
  const edges: [LineManner, LineManner] = i === 0 ? ["copper-dashed", "copper"] : ["ink-dashed", "ink"];
  const { fastest, slowest } = fuse;
  const fill: FillManner = i === 0 ? "doubt" : i % 2 === 1 ? "band" : "band-second";
  const band = fastest && slowest ? [...fastest, ...slowest.toReversed()] : undefined;
  const edge = (points: readonly CurvePoint[] | undefined, manner: LineManner, field: Field): string =>
    points ? strokesOf(field.path(points), manner, pen.palette, pen.id) : "";
  return {
    swatch: band ? { kind: "area", fill, edges } : { kind: "line", manner: fastest ? edges[0] : edges[1] },
    fill: (field) => (band ? `<path d="${field.path(band)}Z" fill="${fillOf(fill, pen.id)}"/>` : ""),
    line: (field) => edge(fastest, edges[0], field) + edge(slowest, edges[1], field),
    trace: (field) => [...placesAlong(field, fastest ?? []), ...placesAlong(field, slowest ?? [])],
    ringPlaces: (field) => placesAlong(field, slowest ?? fastest ?? [], 0.25 + 0.12 * i),
  };
}

function curve(of: LabelledCurve, manner: LineManner, startRatio: number, pen: Pen): Drawing {
  return {
    swatch: { kind: "line", manner },
    fill: nothing,
    line: (field) => strokesOf(field.path(of.points), manner, pen.palette, pen.id),
    trace: (field) => placesAlong(field, of.points),
    ringPlaces: (field) => placesAlong(field, of.points, startRatio),
  };
}

/** A current that may lie between two uprights; one upright where it is known well. */
function current(mark: CurrentMark, manner: LineManner, fromTop: boolean, pen: Pen): Drawing {
  const ends = (field: Field): [lo: number, hi: number] => [
    field.at([mark.currentA.lo, 1])[0],
    field.at([mark.currentA.hi, 1])[0],
  ];
  const isNarrow = (field: Field): boolean => ends(field)[1] - ends(field)[0] < 2;
  const shown = (field: Field): number[] => {
    const [lo, hi] = ends(field);
    return isNarrow(field) ? [(lo + hi) / 2] : [lo, hi];
  };
  return {
    swatch: { kind: "upright", manner, isAccent: fromTop },
    fill(field) {
      const [lo, hi] = ends(field);
      return isNarrow(field)
        ? ""
        : `<rect x="${n(lo)}" y="${n(field.y)}" width="${n(hi - lo)}" height="${n(field.h)}" fill="${fromTop ? pen.palette.copperWash : pen.palette.wash}"/>`;
    },
    line: (field) =>
      shown(field)
        .map((x) => strokesOf(`M${n(x)} ${n(field.y)}V${n(field.y + field.h)}`, manner, pen.palette, pen.id))
        .join(""),
    trace: (field) =>
      shown(field).flatMap((x) =>
        Array.from({ length: Math.ceil(field.h / 4) }, (_, i): Place => [x, field.y + 4 * i]),
      ),
    ringPlaces(field) {
      const [lo, hi] = ends(field);
      return Array.from({ length: 40 }, (_, i): Place => {
        const down = 14 + (i * (field.h - 28)) / 39;
        return [(lo + hi) / 2, fromTop ? field.y + down : field.y + field.h - down];
      });
    },
  };
}

/** The point that matters: when the fuse cuts the short off, with what doubt leaves both ways. */
function opening(mark: OpeningMark, pen: Pen): Drawing {
  const { palette } = pen;
  const middle = (field: Field): Place =>
    field.at([Math.sqrt(mark.currentA.lo * mark.currentA.hi), Math.sqrt(mark.timeS.lo * mark.timeS.hi)]);
  return {
    swatch: { kind: "point" },
    fill: nothing,
    line(field) {
      const [x0, y1] = field.at([mark.currentA.lo, mark.timeS.lo]);
      const [x1, y0] = field.at([mark.currentA.hi, mark.timeS.hi]);
      const [x, y] = middle(field);
      return [
        `<path d="M${n(x0)} ${n(y)}H${n(x1)}M${n(x)} ${n(y0)}V${n(y1)}" stroke="${palette.copper}" stroke-width="2.6" fill="none"/>`,
        `<circle cx="${n(x)}" cy="${n(y)}" r="6.5" fill="${palette.copper}" stroke="${palette.sheet}" stroke-width="1.5"/>`,
      ].join("");
    },
    trace: (field) => [middle(field)],
    ringPlaces(field) {
      const [x, y] = middle(field);
      return [22, 30, 44].flatMap((far): Place[] => [
        [x + far, y + far * 0.6],
        [x + far, y - far * 0.6],
        [x - far, y + far * 0.6],
        [x - far, y - far * 0.6],
      ]);
    },
  };
}

const letter = (i: number): string => String.fromCharCode(65 + (i % 26)).repeat(1 + Math.floor(i / 26));

const conductor = (limit: ConductorLimit, i: number, pen: Pen): Drawing =>
  curve(limit, limit.margin, 0.22 + 0.12 * i, pen);

/** Everything the picture shows, in the order of the legend: fuses, conductors, the load, the fault. */
export function seriesOf(data: TimeCurrentData, pen: Pen): Series[] {
  const drawings: [Labelled, Drawing][] = [
    ...data.fuses.map((fuse, i): [Labelled, Drawing] => [fuse, fuseGates(fuse, i, pen)]),
    ...(data.conductors ?? []).map((limit, i): [Labelled, Drawing] => [limit, conductor(limit, i, pen)]),
    ...(data.inrushes ?? []).map((each): [Labelled, Drawing] => [each, curve(each, "ink-dotted", 0.7, pen)]),
  ];
  if (data.load) drawings.push([data.load, current(data.load, "soft-dash-dot", false, pen)]);
  if (data.prospective) drawings.push([data.prospective, current(data.prospective, "copper", true, pen)]);
  if (data.opening) drawings.push([data.opening, opening(data.opening, pen)]);
  return drawings.map(([says, { swatch, ...drawing }], i) => ({
    ...drawing,
    entry: { says, swatch, mark: letter(i) },
  }));
}
