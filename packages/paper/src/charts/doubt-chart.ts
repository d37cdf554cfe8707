import type { Outcome } from "@fusebook/core/quantity";
import { gap } from "./block.js";
import type { ChartLook } from "./chart-style.js";
import { ChartFault, checkNumber, checkSpan, checkWords, drawn } from "./check-data.js";
import type { ChartHead, ChartSpan, Labelled } from "./curve.js";
import { quantityPlot } from "./doubt-quantity.js";
import { rankedReadings } from "./doubt-readings.js";
import { penFor, sheetOf } from "./sheet.js";

/** A quantile of the samples: this share of them is at or below the value. */
export interface ChartQuantile {
  readonly ratio: number;
  readonly value: number;
}

/** A bar of a histogram: the share of the samples from `lo` to `hi`. */
export interface ChartBin extends ChartSpan {
  readonly ratio: number;
}

/** The quantity that a rule compares with its limit, with all that is known of it. */
export interface ComparedQuantity extends Labelled {
  /** "V", "A", "%"; empty where it has none. */
  readonly unit: string;
  /** The exact bounds. */
  readonly exact: ChartSpan;
  /** In rising order, two at least; the outermost pair is drawn thin, the inner ones thicker. */
  readonly quantiles: readonly ChartQuantile[];
  /** The distribution itself, where there is one to draw. */
  readonly bins?: readonly ChartBin[];
  readonly limit: Labelled & { readonly value: number; readonly sense: "at most" | "at least" };
  /** Probability that the quantity breaks the limit, 0..1. */
  readonly failsRatio: number;
}

/** One reading that would narrow the doubt, best first. */
export interface RankedReading extends Labelled {
  /** What the reading costs: reaching the place and handling the instrument. */
  readonly minutes: number;
  /** Expected share of the doubt that goes, 0..1. */
  readonly shrinkRatio: number;
  readonly shrinkPerMinute: number;
  /** Chance that the verdict is settled by it, 0..1. */
  readonly settlesRatio?: number;
}

export interface DoubtData extends ChartHead {
  readonly quantity?: ComparedQuantity;
  readonly readings: readonly RankedReading[];
}

function check({ quantity, readings }: DoubtData): void {
  if (quantity === undefined && readings.length === 0)
    throw new ChartFault("chart-empty", "wanted a quantity or a reading, got neither");
  if (quantity) {
    checkWords(quantity.label, "quantity");
    checkSpan(quantity.exact, `${quantity.label}, exact span`);
    checkNumber(quantity.limit.value, `${quantity.label}, limit`);
    checkNumber(quantity.failsRatio, `${quantity.label}, probability that it fails`);
    if (quantity.quantiles.length < 2)
      throw new ChartFault(
        "chart-curve-empty",
        `${quantity.label}: wanted two quantiles or more, got ${quantity.quantiles.length}`,
      );
    for (const each of quantity.quantiles) checkNumber(each.value, `${quantity.label}, quantile ${each.ratio}`);
    for (const bin of quantity.bins ?? []) {
      checkSpan(bin, `${quantity.label}, bar of the distribution`);
      checkNumber(bin.ratio, `${quantity.label}, bar of the distribution`);
    }
  }
  for (const reading of readings) {
    checkWords(reading.label, "reading");
    checkNumber(reading.minutes, `${reading.label}, minutes`);
    checkNumber(reading.shrinkPerMinute, `${reading.label}, shrink per minute`);
    checkNumber(reading.shrinkRatio, `${reading.label}, shrink`);
  }
}

/**
 * Where a doubtful quantity lies against its limit (distribution, quantiles, exact span) and which readings would shrink the doubt most per minute of work,
 * best first. SVG text, or why it cannot be drawn.
 */
export function doubtChart(data: DoubtData, look: ChartLook = {}): Outcome<string> {
  const pen = penFor("doubt", data, look);
  return drawn(() => {
    check(data);
    const quantity = data.quantity ? quantityPlot(data.quantity, pen) : undefined;
    const readings = data.readings.length > 0 ? rankedReadings(data.readings, pen) : undefined;
    return sheetOf(
      data,
      [...(quantity?.spoken ?? []), ...(readings?.spoken ?? [])],
      [
        ...(quantity ? [quantity.block] : []),
        ...(quantity && readings ? [gap(18)] : []),
        ...(readings ? [readings.block] : []),
      ],
      pen,
    );
  });
}
