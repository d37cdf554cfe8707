import {
  type Dimension,
  type Figure,
  figureBasis,
  figureValue,
  type Span,
  showQuantity,
  type UnitChoice,
} from "@fusebook/core/quantity";
import { type NotedText, textValue } from "@fusebook/core/record";
import type { Noted } from "../document/blocks.js";

/** A figure with how it is known under it; a question mark where there is none. */
export function shownFigure(figure: Figure | undefined, dimension: Dimension, units: UnitChoice): Noted {
  if (figure === undefined) return { text: "?", under: "not known" };
  const note = typeof figure === "number" ? undefined : figure.by;
  const under = note === undefined ? figureBasis(figure) : `${figureBasis(figure)}, ${note}`;
  return { text: showQuantity(figureValue(figure), dimension, units), under };
}

/** A span with its unit once, "11.80 to 12.40 V"; an end that is next to nothing beside the other is written 0. */
export function shownSpan(span: Span, dimension: Dimension, units: UnitChoice): string {
  const lo = Math.abs(span.lo) < 1e-4 * Math.abs(span.hi) ? 0 : span.lo;
  const [from, to] = [showQuantity(lo, dimension, units), showQuantity(span.hi, dimension, units)];
  const [number, unit] = from.split(" ");
  return unit !== undefined && to.endsWith(` ${unit}`) && from.split(" ").length === 2
    ? `${number} to ${to}`
    : `${from} to ${to}`;
}

/** A gauge as written with how it is known. */
export function shownGauge(gauge: NotedText | undefined, sectionMm2: Figure | undefined, units: UnitChoice): Noted {
  if (sectionMm2 !== undefined) return shownFigure(sectionMm2, "section", units);
  if (gauge === undefined) return { text: "?", under: "not seen" };
  return { text: textValue(gauge), under: typeof gauge === "string" ? "marked" : gauge.basis };
}
