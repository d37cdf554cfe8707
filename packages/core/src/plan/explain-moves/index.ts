export { moveObstacles } from "./move-obstacles.js";
export { PLAN_GROUP_CODES, type PlanGroup, type PlanGroupCode } from "./plan-group.js";
export type { PlanInShort } from "./release-plan.js";
export { type WayOut, type WhyNot, type WhyNotChoices, type WhyNotOutcome, whyNot } from "./why-not.js";
