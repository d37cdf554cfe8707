import type { Outcome } from "@fusebook/core/quantity";
import { n } from "../drawings/svg.js";
import { linearAxis } from "./axis.js";
import { gap, type Pen } from "./block.js";
import { type ChartLook, strokesOf } from "./chart-style.js";
import { ChartFault, checkNumber, checkWords, drawn } from "./check-data.js";
import type { ChartHead, CurvePoint, Labelled } from "./curve.js";
import { type LegendEntry, legend, spoken } from "./legend.js";
import { type Place, Placer, placesAlong } from "./place.js";
import { type Field, plot } from "./plot.js";
import { penFor, sheetOf } from "./sheet.js";

/** A plan that none of the others beats. */
export interface FrontPoint extends Labelled {
  readonly cost: number;
  readonly lightsDimmed: number;
  readonly wiresMoved: number;
  /** The one proposed or picked. */
  readonly isChosen?: boolean;
}

export interface FrontData extends ChartHead {
  readonly points: readonly FrontPoint[];
  /** "USD": shown on the axis. */
  readonly currency: string;
}

const LEAST_RADIUS_PX = 5;
const AREA_PER_WIRE_PX2 = 60;

/** The area of a plan's circle grows by the same amount with every wire moved. */
const radiusOf = (point: FrontPoint): number =>
  Math.sqrt(LEAST_RADIUS_PX ** 2 + (AREA_PER_WIRE_PX2 * point.wiresMoved) / Math.PI);

function check(data: FrontData): void {
  if (data.points.length === 0) throw new ChartFault("chart-empty", "wanted at least one plan, got none");
  for (const point of data.points) {
    checkWords(point.label, "plan");
    checkNumber(point.cost, `${point.label}, cost`);
    checkNumber(point.lightsDimmed, `${point.label}, lights dimmed`);
    checkNumber(point.wiresMoved, `${point.label}, wires moved`);
    if (point.wiresMoved < 0)
      throw new ChartFault(
        "chart-number",
        `${point.label}: ${point.wiresMoved} wires cannot be moved; wanted 0 or more`,
      );
  }
}

/** What can be had for the money: flat until the next plan pays. */
function stairs(points: readonly FrontPoint[]): CurvePoint[] {
  const corners: CurvePoint[] = [];
  let best: number | undefined;
  for (const point of points) {
    if (best !== undefined && point.lightsDimmed <= best) continue;
    if (best !== undefined) corners.push([point.cost, best]);
    corners.push([point.cost, point.lightsDimmed]);
    best = point.lightsDimmed;
  }
  return corners;
}

function circles(points: readonly FrontPoint[], pen: Pen) {
  const { palette } = pen;
  return (field: Field): string =>
    points
      .toSorted((a, b) => radiusOf(b) - radiusOf(a))
      .map((point) => {
        const [x, y] = field.at([point.cost, point.lightsDimmed]);
        const fill = point.isChosen ? palette.copper : palette.sheet;
        return `<circle cx="${n(x)}" cy="${n(y)}" r="${n(radiusOf(point))}" fill="${fill}" stroke="${palette.copper}" stroke-width="2"/>`;
      })
      .join("");
}

const aroundCircle = ([x, y]: Place, r: number): [number, number, "start" | "end" | "middle"][] => [
  [x + r + 6, y + 18, "start"],
  [x - r - 6, y - 8, "end"],
  [x + r + 6, y + 5, "start"],
  [x - r - 6, y + 5, "end"],
  [x, y - r - 8, "middle"],
  [x, y + r + 18, "middle"],
];

/**
 * The plans worth choosing from: cost across, lights dimmed up, wires moved as the area of the circle, the chosen one filled. SVG text, or why it cannot be
 * drawn.
 */
export function frontChart(data: FrontData, look: ChartLook = {}): Outcome<string> {
  const pen = penFor("front", data, look);
  return drawn(() => {
    check(data);
    const { sizes, palette } = pen;
    const isPhone = pen.innerPx < 560;
    const points = data.points.toSorted((a, b) => a.cost - b.cost || a.lightsDimmed - b.lightsDimmed);
    const mostWires = Math.max(...points.map((point) => point.wiresMoved));
    const chosen = points.find((point) => point.isChosen);
    const entries: LegendEntry[] = [
      {
        says: {
          label: "A plan that no other beats",
          note:
            mostWires > 0
              ? `the greater the circle the more wires are moved, up to ${mostWires}`
              : "no wire is moved in any",
        },
        swatch: { kind: "point", isOpen: true },
      },
      ...(chosen ? [{ says: chosen, swatch: { kind: "point" } } satisfies LegendEntry] : []),
    ];
    const picture = plot(
      {
        across: linearAxis(
          Math.min(0, points[0]!.cost),
          Math.max(...points.map((point) => point.cost)),
          isPhone ? 5 : 9,
        ),
        up: linearAxis(0, Math.max(1, ...points.map((point) => point.lightsDimmed)), 6, {
          steps: [1, 2, 5, 10, 20, 50, 100],
        }),
        acrossSays: `cost, ${data.currency}`,
        upSays: "lights dimmed",
        heightPx: isPhone ? Math.round(pen.innerPx * 0.8) : Math.round(pen.innerPx * 0.42),
        rimPx: 40,
        inside: (field) =>
          strokesOf(field.path(stairs(points)), "copper", palette, pen.id) + circles(points, pen)(field),
        over(field) {
          const placer = new Placer(field, pen);
          placer.avoid(placesAlong(field, stairs(points)));
          for (const point of points) placer.avoid([field.at([point.cost, point.lightsDimmed])]);
          const first = [...points].sort((a, b) => Number(b.isChosen ?? false) - Number(a.isChosen ?? false));
          return first
            .map((point) =>
              placer.words(
                point.label,
                { sizePx: sizes.axisPx, colour: palette.ink, isStrong: point.isChosen ?? false },
                aroundCircle(field.at([point.cost, point.lightsDimmed]), radiusOf(point)),
                0,
              ),
            )
            .join("");
        },
      },
      pen,
    );
    const alt = points.map(
      (point) =>
        `${point.label}: ${point.cost} ${data.currency}, ${point.lightsDimmed} lights dimmed, ${point.wiresMoved} wires moved.`,
    );
    return sheetOf(data, [...alt, ...spoken(entries)], [picture, gap(14), legend(entries, pen)], pen);
  });
}
