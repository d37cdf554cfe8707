import type { MilpSession, StopSignal } from "../milp/index.js";
import { type Choice, type MilpForm, type MovesProblem, type Objective, scoreOf } from "../moves/index.js";
import type { Measures } from "./corners.js";

export type CornerAnswer = { readonly choice: Choice | undefined } | "stopped";

/** A model held open, with what any answer must keep to beside the corner. */
export interface CornerSolver {
  readonly problem: MovesProblem;
  readonly form: MilpForm;
  readonly session: MilpSession;
  readonly signal: StopSignal | undefined;
}

/** The best by one objective after the other, each held while the next is sought. */
async function inTurn(
  solver: CornerSolver,
  within: Omit<Objective, "best">,
  order: readonly Objective["best"][],
): Promise<CornerAnswer> {
  let found: Choice | undefined;
  let held = within;
  for (const best of order) {
    const { costs, rowBounds } = solver.form.request({ ...held, best });
    const answer = await solver.session.solve({
      costs,
      rowBounds,
      ...(found === undefined ? {} : { start: solver.form.encode(found) }),
      ...(solver.signal === undefined ? {} : { signal: solver.signal }),
    });
    if (answer.status === "infeasible") return { choice: undefined };
    if (answer.status === "stopped" || answer.values === undefined) return "stopped";
    found = solver.form.decode(answer.values);
    const score = scoreOf(solver.problem, found);
    held =
      best === "least-cost"
        ? { ...held, mostCost: score.cost }
        : best === "most-value"
          ? { ...held, leastValue: score.value }
          : { ...held, mostWires: score.wiresMoved };
  }
  return { choice: found };
}

/** A point better than the corner in everything that nothing beats, or the proof that there is none (the ε-constraint method). */
export function solveCorner(solver: CornerSolver, corner: Measures): Promise<CornerAnswer> {
  const { costUnit, valueUnit } = solver.problem;
  const within: Omit<Objective, "best"> = {
    ...(Number.isFinite(corner.cost) ? { mostCost: corner.cost - costUnit } : {}),
    ...(Number.isFinite(corner.value) ? { leastValue: corner.value + valueUnit } : {}),
    ...(Number.isFinite(corner.wires) ? { mostWires: corner.wires - 1 } : {}),
  };
  // Where anything dearer will do, the worthiest first: so the end of the front is known early.
  return inTurn(
    solver,
    within,
    Number.isFinite(corner.cost) || !Number.isFinite(corner.value)
      ? ["least-cost", "most-value", "fewest-wires"]
      : ["most-value", "least-cost", "fewest-wires"],
  );
}
