import { type Milp, type MilpAnswer, type MilpRequest, objectiveOf } from "@fusebook/core/plan";
import { boundByEnds } from "./cost-unit.js";
import { holds, tidyValues } from "./tidy-answer.js";

/** What is known of a request before any solving: its start, where that keeps every row, and a bound by the ends of the columns alone. */
export interface Beforehand {
  readonly start?: readonly number[];
  readonly bound: number;
}

/** See `Beforehand`. */
export function beforehand(milp: Milp, request: MilpRequest): Beforehand {
  const changed = new Map((request.columnBounds ?? []).map((change) => [change.at, change]));
  const ends = milp.columns.map((column, at) => changed.get(at) ?? column);
  const bound = boundByEnds(
    ends,
    milp.columns.map((column, at) => request.costs?.[at] ?? column.cost),
  );
  if (request.start === undefined) return { bound };
  const start = tidyValues(milp, request.start);
  return holds(milp, start, request) ? { start, bound } : { bound };
}

/** The answer of a solve that was stopped: the best of what was found and the start, and the better of the two bounds; `optimal` where they meet. */
export function stoppedAnswer(
  milp: Milp,
  request: MilpRequest,
  known: Beforehand,
  found: { readonly values?: readonly number[] | undefined; readonly bound: number; readonly nodes: number },
): MilpAnswer {
  const proven = Math.max(known.bound, found.bound);
  const costOf = (values: readonly number[]) => objectiveOf(milp, values, request.costs);
  const [best] = [found.values, known.start]
    .flatMap((values) => (values === undefined ? [] : [{ values, objective: costOf(values) }]))
    .sort((a, b) => a.objective - b.objective);
  if (best === undefined) return { status: "stopped", bound: proven, nodes: found.nodes };
  const bound = Math.min(best.objective, proven);
  return { status: bound === best.objective ? "optimal" : "stopped", ...best, bound, nodes: found.nodes };
}
