import { checkRecord } from "@fusebook/core/findings";
import {
  demandOf,
  type MilpSolver,
  milpOf,
  movesProblemOf,
  planFront,
  planOfChoice,
  writeLp,
} from "@fusebook/core/plan";
import { indexRecord, openRecord, policyOf } from "@fusebook/core/record";

/** Enough to see that the findings say the same; which plans are checked is part of what is compared. */
const MOST_CHECKS = 4;

/** What is compared between machines: every plan of the front with its figures and its first checks, the model's text, and what the solver answers to it. */
export async function plansAsText(recordText: string, solver: MilpSolver): Promise<string> {
  const opened = openRecord(recordText);
  if (opened.kind !== "read") throw new Error(opened.faults.map((fault) => fault.message).join("; "));
  const index = indexRecord(opened.record);
  const job = opened.record.jobs?.[0];
  const problem = movesProblemOf(index, policyOf(opened.record), demandOf(index, job));
  const form = milpOf(problem, { best: "most-value" });
  const session = await solver.open(form.milp);
  const { nodes, ...answer } = await session.solve();
  session.close();
  return JSON.stringify({
    front: await planFront(index, job, {
      solver,
      check: (record) => checkRecord(indexRecord(record), { atLeast: "mend" }),
      mostChecks: MOST_CHECKS,
    }),
    model: writeLp(form.milp),
    answer,
    plan: answer.values === undefined ? null : planOfChoice(problem, form.decode(answer.values)),
  });
}
