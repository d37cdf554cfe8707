export { applyPlan } from "./apply.js";
export { type Demand, demandOf } from "./demand.js";
export { type FrontChoices, frontOf } from "./front.js";
export { BANK_SETTING_MIN, FUSE_CHANGE_MIN, LABOUR_SOURCE } from "./labour.js";
export {
  type Cut,
  type Front,
  type FuseChange,
  type ModuleChoice,
  OBSTACLE_CODES,
  type Obstacle,
  type Pick,
  type Plan,
  type PlanFault,
  type UnmetWish,
} from "./plan.js";
export type { RecordCheck } from "./sift.js";
export { cutWords, obstacleWords, planWords } from "./words.js";
