import { type Weights, weigh } from "./chain-problem.js";
import { addUnbeaten, isNoWorse, type Measures, splitCorners } from "./corners.js";

/** No limit in anything. */
export const ANYTHING: Measures = {
  cost: Number.POSITIVE_INFINITY,
  value: Number.NEGATIVE_INFINITY,
  wires: Number.POSITIVE_INFINITY,
};

/** A front on its way: points found, corners in which there may be more, and what was proved to be nowhere. */
export class OpenFront<Point extends Measures> {
  points: readonly Point[] = [];
  corners: readonly Measures[];
  private readonly proven: { readonly weights: Weights; readonly bound: number; readonly within: Measures }[] = [];

  /** `step`: the least difference of two points in each measure. `within`: nothing is looked for beyond it. */
  constructor(
    private readonly step: Measures,
    within: Measures = ANYTHING,
  ) {
    this.corners = [within];
  }

  /** The worst point that is better than the corner in everything. */
  aimOf(corner: Measures): Measures {
    return {
      cost: corner.cost - this.step.cost,
      value: corner.value + this.step.value,
      wires: corner.wires - this.step.wires,
    };
  }

  add(points: readonly Point[]): void {
    for (const point of points) {
      const added = addUnbeaten(this.points, point);
      if (added === undefined) continue;
      this.points = added;
      this.corners = splitCorners(this.corners, point).filter((corner) => !this.isClosed(corner));
    }
  }

  /** No point within these limits that is not found yet weighs `bound` or less. */
  prove(weights: Weights, bound: number, within: Measures): void {
    this.proven.push({ weights, bound, within });
    this.corners = this.corners.filter((corner) => !this.isClosed(corner));
  }

  /** Nothing that is not found yet is inside this corner. */
  close(corner: Measures): void {
    this.corners = this.corners.filter((each) => each !== corner);
  }

  /** Of the points found within these limits. */
  bestWeighed(weights: Weights, within: Measures): number {
    let best = Number.POSITIVE_INFINITY;
    for (const point of this.points) if (isNoWorse(point, within)) best = Math.min(best, weigh(point, weights));
    return best;
  }

  private isClosed(corner: Measures): boolean {
    if (corner.wires <= 0) return true;
    const aim = this.aimOf(corner);
    return this.proven.some((each) => isNoWorse(aim, each.within) && weigh(aim, each.weights) <= each.bound);
  }
}
