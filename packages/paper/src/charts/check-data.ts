import { type Outcome, refused } from "@fusebook/core/quantity";
import type { ChartSpan, CurvePoint } from "./curve.js";

/** What a chart cannot show, found before anything is drawn: a picture is whole or it is refused, naming the place and the remedy. */
export class ChartFault {
  constructor(
    readonly code: string,
    readonly because: string,
  ) {}
}

type Axis = "linear" | "log";

export function checkNumber(value: number, where: string, axis: Axis = "linear"): void {
  if (!Number.isFinite(value))
    throw new ChartFault("chart-number", `${where}: wanted a number, got ${value}; leave out what is not known`);
  if (axis === "log" && value <= 0)
    throw new ChartFault("chart-log-axis", `${where}: ${value} has no place on a logarithmic axis; begin above 0`);
}

export function checkCurve(points: readonly CurvePoint[], where: string, x: Axis, y: Axis, least = 2): void {
  if (points.length < least)
    throw new ChartFault(
      "chart-curve-empty",
      `${where}: wanted at least ${least} points, got ${points.length}; leave the curve out where it is not known`,
    );
  for (const [i, point] of points.entries()) {
    checkNumber(point[0], `${where}, point ${i + 1}, across`, x);
    checkNumber(point[1], `${where}, point ${i + 1}, up`, y);
  }
}

export function checkSpan(span: ChartSpan, where: string, axis: Axis = "linear"): void {
  checkNumber(span.lo, `${where}, low end`, axis);
  checkNumber(span.hi, `${where}, high end`, axis);
  if (span.lo > span.hi)
    throw new ChartFault("chart-span-inverted", `${where}: from ${span.lo} to ${span.hi} is the wrong way round`);
}

export function checkWords(text: string, where: string): void {
  if (text.trim() === "") throw new ChartFault("chart-words", `${where}: wanted words, got none`);
}

/** Draws, or says why not. */
export function drawn(draw: () => string): Outcome<string> {
  try {
    return { kind: "known", value: draw() };
  } catch (fault) {
    if (fault instanceof ChartFault) return refused(fault.code, fault.because);
    throw fault;
  }
}
