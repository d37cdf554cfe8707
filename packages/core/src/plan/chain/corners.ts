/** Cost, value and wires of a plan. */
export interface Measures {
  readonly cost: number;
  readonly value: number;
  readonly wires: number;
}

export const isNoWorse = (a: Measures, b: Measures): boolean =>
  a.cost <= b.cost && a.value >= b.value && a.wires <= b.wires;

/** `point` is better than the corner in everything. */
const isInside = (point: Measures, corner: Measures): boolean =>
  point.cost < corner.cost && point.value > corner.value && point.wires < corner.wires;

/**
 * What is not beaten by any point found so far, as corners: anything not beaten is better in everything than at least one corner. Adding a point
 * splits each corner it lies inside of into the three that differ from it in cost, value or wires, and drops those that another corner covers.
 */
export function splitCorners(corners: readonly Measures[], point: Measures): Measures[] {
  const kept: Measures[] = [];
  const split: Measures[] = [];
  for (const corner of corners) {
    if (!isInside(point, corner)) {
      kept.push(corner);
      continue;
    }
    split.push({ ...corner, cost: point.cost }, { ...corner, value: point.value }, { ...corner, wires: point.wires });
  }
  if (split.length === 0) return kept;
  const isCoveredBy = (a: Measures, b: Measures): boolean => isNoWorse(a, b);
  const fresh = split.filter(
    (corner, i) =>
      !kept.some((other) => isCoveredBy(corner, other)) &&
      !split.some((other, j) => j !== i && isCoveredBy(corner, other) && (j < i || !isCoveredBy(other, corner))),
  );
  return [...kept, ...fresh];
}

/** Adds a point to a list of unbeaten points; undefined where one of them is no worse. */
export function addUnbeaten<Point extends Measures>(points: readonly Point[], point: Point): Point[] | undefined {
  if (points.some((other) => isNoWorse(other, point))) return undefined;
  return [...points.filter((other) => !isNoWorse(point, other)), point];
}
