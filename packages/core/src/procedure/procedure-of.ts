import type { Plan } from "../plan/index.js";
import type { CoachIndex } from "../record/index.js";
import { energiseSteps } from "./energise.js";
import { exchangeSteps } from "./exchange.js";
import { closeSteps, proveSteps } from "./finish.js";
import { isolateSteps } from "./isolate.js";
import { reusesOf } from "./parts-list.js";
import { prepareSteps } from "./prepare.js";
import type { Procedure } from "./procedure.js";
import { wireWorkOf, workedOn } from "./wire-work.js";

/**
 * In what order do the hands work? From the record as found, the plan, and the record as the plan leaves it: prepare, make this coach's own supplies dead and
 * prove it, exchange place by place, bring power back in stages, prove, close. A plan that touches nothing, moves no wire and changes no fuse has no steps. The order is common practice, no
 * source; local codes and licensed practice win over it.
 */
export function procedureOf(before: CoachIndex, plan: Plan, after: CoachIndex): Procedure {
  const touched = plan.modules.filter((choice) => choice.isTouched);
  const work = wireWorkOf(before, plan);
  const worked = workedOn(before, plan, work);
  const isIdle =
    worked.length === 0 && plan.fuses.length === 0 && work.jobs.length === 0 && work.detectors.length === 0;
  const section = <Code extends Procedure["sections"][number]["code"]>(
    code: Code,
    steps: () => Procedure["sections"][number]["steps"],
  ) => ({ code, steps: isIdle ? [] : steps() });
  return {
    sections: [
      section("prepare", () => prepareSteps(before, plan, worked, work)),
      section("isolate", () => isolateSteps(before, worked)),
      section("exchange", () => exchangeSteps(before, plan, after, worked, work)),
      section("energise", () => energiseSteps(before, after, touched, work)),
      section("prove", () => proveSteps(after, touched, work)),
      section("close", () => closeSteps(after, worked, reusesOf(plan, before))),
    ],
  };
}
