import type { Point } from "../record/index.js";

/** The key of a point a probe can touch, as used in `CoachSolution.nodeV`: `n-bus`, `c3.07:far-end`. */
export const pointKey = (point: Pick<Point, "at" | "terminal">): string =>
  point.terminal === undefined ? point.at : `${point.at}:${point.terminal}`;
