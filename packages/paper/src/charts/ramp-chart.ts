import type { Outcome } from "@fusebook/core/quantity";
import { n } from "../drawings/svg.js";
import { type Axis, linearAxis } from "./axis.js";
import { gap, type Pen } from "./block.js";
import { type ChartLook, type LineManner, strokesOf } from "./chart-style.js";
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
    if (lowest) entries.push({ says: lowest, swatch: { kind: "line", manner: "fails" } });
    const panel = (upSays: string, up: Axis, readOf: (step: RampStep) => number, isDuty: boolean) =>
      plot(
        {
          across,
          up,
          acrossSays: "step of the button",
          upSays,
          heightPx: isPhone ? Math.round(pen.innerPx * 0.62) : Math.round(pen.innerPx * 0.28),
          inside: (field) => {
            const parts: string[] = [];
            if (isDuty && lowest) {
              const [, y0] = field.at([across.lo, lowest.dutyRatio.hi * 100]);
              const [, y1] = field.at([across.lo, lowest.dutyRatio.lo * 100]);
              parts.push(
                `<rect x="${n(field.x)}" y="${n(y0)}" width="${n(field.w)}" height="${n(field.y + field.h - y0)}" fill="${palette.wash}"/>`,
                strokesOf(`M${n(field.x)} ${n(y0)}H${n(field.x + field.w)}`, "fails", palette, pen.id),
              );
              if (y1 - y0 > 3)
                parts.push(
                  strokesOf(`M${n(field.x)} ${n(y1)}H${n(field.x + field.w)}`, "soft-dash-dot", palette, pen.id),
                );
            }
            for (const [i, ramp] of data.ramps.entries())
              parts.push(
                line(
                  ramp.steps.map((each) => [each.step, readOf(each)]),
                  MANNERS[i % MANNERS.length]!,
                  pen,
                )(field),
              );
            return parts.join("");
          },
          over: (field) => {
            const placer = new Placer(field, pen);
            const rings = data.ramps.map((ramp, i) =>
              placer.ring(
                entries[i]!.mark!,
                placesAlong(
                  field,
                  ramp.steps.map((each) => [each.step, readOf(each)]),
                  0.6 - 0.2 * i,
                ),
              ),
            );
            if (!isDuty || !lowest) return rings.join("");
            const [, y] = field.at([across.lo, lowest.dutyRatio.hi * 100]);
            const words = placer.words(lowest.label, { sizePx: sizes.axisPx, colour: palette.soft }, [
              [field.x + 8, y - 8, "start"],
              [field.x + field.w - 8, y - 8, "end"],
              [field.x + field.w - 8, y + 18, "end"],
            ]);
            return [...rings, words].join("");
          },
        },
        pen,
      );
    const percent = linearAxis(0, 100, 6, { suffix: " %" });
    return sheetOf(
      data,
      spoken(entries),
      [
        panel("how bright it looks, CIE L*", linearAxis(0, 100, 6), (step) => step.lightness, false),
        gap(12),
        panel("duty, share of the time that power is on", percent, (step) => step.dutyRatio * 100, true),
        gap(14),
        legend(entries, pen),
      ],
      pen,
    );
  });
}
