import { demandOf, type Milp, milpOf, movesProblemOf, writeLp, writeMps } from "@fusebook/core/plan";
import { type CoachIndex, type Job, policyOf } from "@fusebook/core/record";
import { Misuse } from "./misuse.js";

const FORMS: Readonly<Record<string, (milp: Milp) => string>> = { lp: writeLp, mps: writeMps };

export function formAsked(form: string): (milp: Milp) => string {
  const write = FORMS[form];
  if (write === undefined)
    throw new Misuse(`--export ${form}: wanted lp or mps, then the record and the file to write`);
  return write;
}

/** The whole model of this record and job: what is asked for is the most wish value; its rows named cost, value and wires hold the other sums, open at both ends. */
export const modelOf = (index: CoachIndex, job: Job | undefined): Milp =>
  milpOf(movesProblemOf(index, policyOf(index.record), demandOf(index, job)), { best: "most-value" }).milp;
