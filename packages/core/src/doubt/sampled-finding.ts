import type { Span } from "../quantity/index.js";
import type { Compared } from "./margin.js";

/** How one figure moves a margin: the slope of a straight line through the samples, in the margin's unit for one of the figure's. */
export interface FigureSlope {
  readonly path: string;
  readonly slope: number;
  readonly nominal: number;
  readonly span: Span;
}

/** The compared quantity of one finding over drawn coaches. */
export interface SampledFinding {
  /** One value for each drawn coach that has an operating point. */
  readonly got: Float64Array;
  /** Below zero where the limit is passed. */
  readonly margin: Float64Array;
  readonly unsolved: number;
  readonly by: "network" | "rule" | "span";
  readonly slopes: readonly FigureSlope[];
}

/** Covariance of the two over the variance of `x`; 0 where `x` stands still. */
export function slopeOf(y: Float64Array, x: Float64Array): number {
  const n = Math.min(x.length, y.length);
  let meanX = 0;
  let meanY = 0;
  for (let k = 0; k < n; k++) {
    meanX += x[k]! / n;
    meanY += y[k]! / n;
  }
  let xy = 0;
  let xx = 0;
  for (let k = 0; k < n; k++) {
    const dx = x[k]! - meanX;
    xy += dx * (y[k]! - meanY);
    xx += dx * dx;
  }
  return xx > 0 ? xy / xx : 0;
}

/** In what share of the samples is the limit passed? With the slack that a comparison of spans allows for binary rounding. */
export function failsRatioOf(compared: Compared, margin: Float64Array): number {
  const slack = Math.abs(compared.limit.value) * 1e-9;
  let passed = 0;
  for (const each of margin) if (each < -slack) passed++;
  return margin.length === 0 ? 0 : passed / margin.length;
}

const BINS = 24;

/** The samples as a histogram of equal bars from the least to the greatest; none where they are all one. */
export function binsOf(values: Float64Array): { lo: number; hi: number; ratio: number }[] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  const width = (most - least) / BINS;
  if (!(width > 1e-12 * Math.max(Math.abs(least), Math.abs(most)))) return [];
  const counts = new Array<number>(BINS).fill(0);
  for (const value of values) counts[Math.min(BINS - 1, Math.floor((value - least) / width))]! += 1;
  return counts.map((count, i) => ({
    lo: least + i * width,
    hi: least + (i + 1) * width,
    ratio: count / values.length,
  }));
}
