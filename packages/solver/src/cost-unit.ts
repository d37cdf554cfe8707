import type { Milp } from "@fusebook/core/plan";

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/**
 * The greatest whole number that every possible answer's cost is a multiple of, or undefined where the cost is not bound to whole numbers. A proof may
 * stop as soon as the gap is below one such unit, and the costs are handed to the solver counted in it.
 */
export function costUnit(milp: Milp, costs: readonly number[]): number | undefined {
  let unit = 0;
  for (const [at, column] of milp.columns.entries()) {
    const cost = Math.abs(costs[at] ?? 0);
    if (cost === 0) continue;
    if (!column.isInteger || !Number.isSafeInteger(cost)) return undefined;
    unit = gcd(unit, cost);
  }
  return unit === 0 ? 1 : unit;
}

/** What no answer can undercut by the ends of the columns alone, in the model's own units. */
export function boundByEnds(
  ends: readonly { readonly lower: number; readonly upper: number }[],
  costs: readonly number[],
): number {
  return ends.reduce((sum, { lower, upper }, at) => {
    const cost = costs[at] ?? 0;
    return cost === 0 ? sum : sum + cost * (cost > 0 ? lower : upper);
  }, 0);
}
