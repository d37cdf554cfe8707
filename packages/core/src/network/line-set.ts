import type { Span } from "../quantity/index.js";

/** A line of current on volts: `slopeS * V + atZeroA`. For a ballasted LED the slope is 1 / ohm, and it meets no current at the forward volts. */
export interface Line {
  readonly slopeS: number;
  readonly atZeroA: number;
}

/** A point that a line has to pass, as wide as its meters make it. */
export interface Box {
  readonly voltageV: Span;
  readonly currentA: Span;
}

/** slope * x + atZero * y <= bound */
type Fence = readonly [x: number, y: number, bound: number];

/** Rising lines that pass through a box: below its upper left corner and above its lower right one. */
const fencesOf = ({ voltageV, currentA }: Box): Fence[] => [
  [voltageV.lo, 1, currentA.hi],
  [-voltageV.hi, -1, -currentA.lo],
];

/**
 * All rising lines through every box whose forward volts lie in `forwardV`, as the corners of the polygon they fill. None where no line fits. The
 * polygon is bounded where two boxes stand apart in volts, or where `forwardV` ends below a box; else the answer is none too: check before.
 */
export function linesThrough(boxes: readonly Box[], forwardV: Span): Line[] {
  const fences: Fence[] = [...boxes.flatMap(fencesOf), [-1, 0, 0], [forwardV.lo, 1, 0]];
  if (Number.isFinite(forwardV.hi)) fences.push([-forwardV.hi, -1, 0]);
  const corners: Line[] = [];
  for (const [i, [a, b, e]] of fences.entries())
    for (const [c, d, f] of fences.slice(i + 1)) {
      const det = a * d - b * c;
      if (Math.abs(det) < 1e-12) continue;
      const slopeS = (e * d - b * f) / det;
      const atZeroA = (a * f - e * c) / det;
      const isInside = fences.every(
        ([x, y, bound]) => slopeS * x + atZeroA * y <= bound + 1e-9 * (Math.abs(slopeS * x) + Math.abs(bound) + 1e-3),
      );
      if (isInside && slopeS > 0) corners.push({ slopeS, atZeroA });
    }
  return corners;
}

export const currentOn = (line: Line, voltageV: number): number => line.slopeS * voltageV + line.atZeroA;

/** The span of anything over the corners of a polygon; exact for what is linear or a ratio in the line. */
export const spanOver = (lines: readonly Line[], of: (line: Line) => number): Span => {
  const all = lines.map(of);
  return { lo: Math.min(...all), hi: Math.max(...all) };
};
