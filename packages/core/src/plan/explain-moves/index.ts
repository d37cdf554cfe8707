export { moveObstacles } from "./move-obstacles.js";
export { PLAN_GROUP_CODES, type PlanGroup, type PlanGroupCode } from "./plan-group.js";
export type { PlanInShort } from "./release-plan.js";
export { groupsAround, supposeWithout } from "./suppose-without.js";
export { openWhatIf, type Trial, type WhatIf, type WhatIfAnswer, type WhatIfQuestion } from "./what-if.js";
export { type WayOut, type WhyNot, type WhyNotChoices, type WhyNotOutcome, whyNot } from "./why-not.js";
