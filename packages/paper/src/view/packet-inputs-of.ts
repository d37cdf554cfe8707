import { checkRecord } from "@fusebook/core/findings";
import { applyPlan, type Plan } from "@fusebook/core/plan";
import { procedureOf } from "@fusebook/core/procedure";
import { movedByPlan, testsOf } from "@fusebook/core/proof";
import type { UnitChoice } from "@fusebook/core/quantity";
import { type CoachIndex, indexRecord, type Job } from "@fusebook/core/record";
import type { PacketInputs } from "./packet-view-of.js";

/** Everything a packet says, worked out by the engines from the coach as found and the plan chosen. */
export function packetInputsOf(given: {
  readonly before: CoachIndex;
  readonly plan: Plan;
  readonly job?: Job | undefined;
  readonly date: string;
  readonly id: string;
  readonly units?: UnitChoice;
}): PacketInputs {
  const { before, plan } = given;
  const after = indexRecord(applyPlan(before.record, plan));
  const procedure = procedureOf(before, plan, after);
  return {
    before,
    after,
    plan,
    ...(given.job === undefined ? {} : { job: given.job }),
    procedure,
    tests: testsOf(after, movedByPlan(plan)),
    findings: checkRecord(after),
    date: given.date,
    id: given.id,
    ...(given.units === undefined ? {} : { units: given.units }),
  };
}
