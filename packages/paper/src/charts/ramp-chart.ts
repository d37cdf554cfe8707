import type { Outcome } from "@fusebook/core/quantity";
import { n } from "../drawings/svg.js";
import { type Axis, linearAxis, logAxis, roundOut } from "./axis.js";
import { gap, type Pen } from "./block.js";
import { type ChartLook, type LineManner, limitLine, strokesOf } from "./chart-style.js";
import { ChartFault, checkCurve, checkNumber, checkSpan, checkWords, drawn } from "./check-data.js";
import type { ChartHead, ChartSpan, CurvePoint, Labelled } from "./curve.js";
import { type LegendEntry, legend, spoken } from "./legend.js";
import { Placer, placesAlong } from "./place.js";
import { type Field, plot } from "./plot.js";
import { penFor, sheetOf } from "./sheet.js";

export interface RampStep {
  /** Which press of the button, from 0 (off) or 1. */
  readonly step: number;
  readonly dutyRatio: number;
  /** Perceived lightness, CIE 1976 L*, 0 to 100, full duty being 100. */
  readonly lightness: number;
}

export interface Ramp extends Labelled {
  readonly steps: readonly RampStep[];
}

export interface RampData extends ChartHead {
  /** The ramp proposed first; others (duty in even steps, say) to compare. */
  readonly ramps: readonly Ramp[];
  /** Below this duty the lamps go out, flicker or cannot be told from off. */
  readonly lowestUsefulDuty?: Labelled & { readonly dutyRatio: ChartSpan };
}

const MANNERS: readonly LineManner[] = ["copper", "ink-dashed", "ink-dotted", "soft-dash-dot"];
const DOTTED_AT_MOST = 33;
const OFF_SAYS = "Off (duty 0) has no place on the logarithmic axis of duty.";

function check(data: RampData): void {
  if (data.ramps.length === 0) throw new ChartFault("chart-empty", "wanted at least one ramp, got none");
  for (const ramp of data.ramps) {
    checkWords(ramp.label, "ramp");
    checkCurve(
      ramp.steps.map((each) => [each.step, each.dutyRatio]),
      `${ramp.label}, duty`,
      "linear",
      "linear",
    );
    for (const each of ramp.steps) checkNumber(each.lightness, `${ramp.label}, step ${each.step}, lightness`);
  }
  if (data.lowestUsefulDuty) checkSpan(data.lowestUsefulDuty.dutyRatio, data.lowestUsefulDuty.label);
}

function line(points: readonly CurvePoint[], manner: LineManner, pen: Pen) {
  return (field: Field): string => {
    const dots =
      manner === "copper" && points.length <= DOTTED_AT_MOST
        ? points.map((point) => {
            const [x, y] = field.at(point);
            return `<circle cx="${n(x)}" cy="${n(y)}" r="3.6" fill="${pen.palette.copper}"/>`;
          })
        : [];
    return strokesOf(field.path(points), manner, pen.palette, pen.id) + dots.join("");
  };
}

/** Where duty is too low to be of use, with the doubt about it. */
function lowestInside(field: Field, limit: ChartSpan, leftStep: number, pen: Pen): string {
  const [, sure] = field.at([leftStep, limit.hi]);
  const [, perhaps] = field.at([leftStep, limit.lo]);
  const right = field.x + field.w;
  return [
    `<rect x="${n(field.x)}" y="${n(sure)}" width="${n(field.w)}" height="${n(Math.max(0, field.y + field.h - sure))}" fill="${pen.palette.wash}"/>`,
    limitLine([field.x, sure], [right, sure], 1, pen.palette),
    perhaps - sure > 3
      ? strokesOf(`M${n(field.x)} ${n(perhaps)}H${n(right)}`, "soft-dash-dot", pen.palette, pen.id)
      : "",
  ].join("");
}

/**
 * A button's ramp in two plots over the same steps: how bright each step looks (CIE 1976 L*; even steps make a straight line), and the duty that takes,
 * with the lowest useful duty marked. SVG text, or why it cannot be drawn.
 */
export function rampChart(data: RampData, look: ChartLook = {}): Outcome<string> {
  const pen = penFor("ramp", data, look);
  return drawn(() => {
    check(data);
    const { palette, sizes } = pen;
    const isPhone = pen.innerPx < 560;
    const steps = data.ramps.flatMap((ramp) => ramp.steps.map((each) => each.step));
    const across: Axis = linearAxis(Math.min(...steps), Math.max(...steps), isPhone ? 8 : 17, {
      steps: [1, 2, 4, 5, 8, 10, 16, 20, 32, 50, 64, 100],
      isOpenAbove: true,
    });
    const lowest = data.lowestUsefulDuty;
    const entries: LegendEntry[] = data.ramps.map((ramp, i) => ({
      says: ramp,
      swatch: { kind: "line", manner: MANNERS[i % MANNERS.length]! },
      mark: String.fromCharCode(65 + (i % 26)),
    }));
    if (lowest) entries.push({ says: lowest, swatch: { kind: "limit", side: 1 } });
    const heightPx = isPhone ? Math.round(pen.innerPx * 0.62) : Math.round(pen.innerPx * 0.28);
    const panel = (upSays: string, up: Axis, curves: readonly (readonly CurvePoint[])[], limit?: ChartSpan) =>
      plot(
        {
          across,
          up,
          acrossSays: "step of the button",
          upSays,
          heightPx,
          rimPx: 5,
          inside: (field) =>
            [
              limit === undefined ? "" : lowestInside(field, limit, across.lo, pen),
              ...curves.map((points, i) => line(points, MANNERS[i % MANNERS.length]!, pen)(field)),
            ].join(""),
          over(field) {
            const placer = new Placer(field, pen);
            for (const points of curves) placer.avoid(placesAlong(field, points));
            const rings = curves.map(
              (points, i) => placer.ring(entries[i]!.mark!, placesAlong(field, points, 0.6 - 0.2 * i)).svg,
            );
            if (limit === undefined || lowest === undefined) return rings.join("");
            const [, y] = field.at([across.lo, limit.hi]);
            const [, low] = field.at([across.lo, limit.lo]);
            const words = placer.words(lowest.label, { sizePx: sizes.axisPx, colour: palette.soft }, [
              [field.x + field.w - 8, Math.max(low + 18, y + 24), "end"],
              [field.x + field.w - 8, y - 9, "end"],
              [field.x + 8, y - 9, "start"],
            ]);
            return [...rings, words].join("");
          },
        },
        pen,
      );
    const duties = data.ramps.map((ramp) =>
      ramp.steps.filter((each) => each.dutyRatio > 0).map((each): CurvePoint => [each.step, each.dutyRatio * 100]),
    );
    const least = Math.min(...duties.flat().map(([, duty]) => duty), lowest ? lowest.dutyRatio.lo * 100 : 100, 50);
    const hasOff = data.ramps.some((ramp) => ramp.steps.some((each) => each.dutyRatio === 0));
    const captioned = hasOff ? { ...data, caption: [...(data.caption ?? []), OFF_SAYS] } : data;
    return sheetOf(
      captioned,
      spoken(entries),
      [
        panel(
          "how bright it looks, CIE L*",
          linearAxis(0, 100, 6),
          data.ramps.map((ramp) => ramp.steps.map((each): CurvePoint => [each.step, each.lightness])),
        ),
        gap(12),
        panel(
          "duty: share of the time that power is on",
          logAxis(Math.max(0.01, roundOut(least / 1.3, "down")), 100, { suffix: " %" }),
          duties,
          lowest && { lo: lowest.dutyRatio.lo * 100, hi: lowest.dutyRatio.hi * 100 },
        ),
        gap(14),
        legend(entries, pen),
      ],
      pen,
    );
  });
}
