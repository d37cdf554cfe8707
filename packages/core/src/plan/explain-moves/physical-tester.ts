import type { ConflictGroup, GroupTester, StopRule } from "../conflict/index.js";
import type { ValuedWish } from "../demand.js";
import type { MilpSolver } from "../milp/index.js";
import { milpOf } from "../moves/index.js";
import { type Asked, supposing } from "./asked.js";
import type { PhysicalGroup } from "./physical-groups.js";
import { problemAsked } from "./wish-model.js";
import { wishRow } from "./wish-rows.js";

/** What holds in every test: the question with all other choices lifted, the wishes forced, and whether its limits count. */
export interface HeldApart {
  readonly asked: Asked;
  readonly wishes: readonly ValuedWish[];
  readonly holdsBudget: boolean;
  readonly holdsMinutes: boolean;
}

/**
 * Tests sets of facts: each set is a record of its own in which all other facts are supposed otherwise, read, modelled and solved like any other. Slower than
 * bounds on one model, but a fact takes part in too many rules to be a row.
 */
export function physicalTester(
  held: HeldApart,
  facts: readonly PhysicalGroup[],
  solver: MilpSolver,
  stop: StopRule = {},
): GroupTester {
  let solves = 0;
  return {
    get solves() {
      return solves;
    },
    async test(groups: readonly ConflictGroup[]) {
      const holding = new Set(groups.map((group) => group.name));
      const lifted = facts.filter((fact) => !holding.has(fact.group.name));
      const { problem } = problemAsked(
        supposing(
          held.asked,
          lifted.map((fact) => fact.lift),
        ),
      );
      const form = milpOf({
        ...problem,
        mostCost: held.holdsBudget ? problem.mostCost : undefined,
        mostMinutes: held.holdsMinutes ? problem.mostMinutes : undefined,
      });
      const wished = held.wishes.map((wish) => wishRow(problem, form, wish));
      // Nothing that may be done dims it: there is nothing to solve.
      if (wished.some((row) => row.terms.length === 0 && row.lower > 0)) return "cannot-be";
      const rows = [...form.milp.rows, ...wished];
      solves++;
      const session = await solver.open({ ...form.milp, rows });
      try {
        const answer = await session.solve({ ...stop, costs: form.milp.columns.map(() => 0) });
        return answer.values !== undefined ? "can-be" : answer.status === "infeasible" ? "cannot-be" : "unknown";
      } finally {
        session.close();
      }
    },
  };
}
