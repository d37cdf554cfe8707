export { applyPlan } from "./apply.js";
export { type Demand, demandOf } from "./demand.js";
export { type FrontChoices, frontOf } from "./front.js";
export { BANK_SETTING_MIN, FUSE_CHANGE_MIN, LABOUR_SOURCE } from "./labour.js";
export {
  type BoundChange,
  type Milp,
  type MilpAnswer,
  type MilpColumn,
  MilpError,
  type MilpErrorCode,
  type MilpFault,
  type MilpProgress,
  type MilpRequest,
  type MilpRow,
  type MilpSession,
  type MilpSolver,
  milpFaults,
  objectiveOf,
  requestFaults,
  type StopSignal,
  type Violation,
  violationsOf,
  writeLp,
  writeMps,
} from "./milp/index.js";
export {
  type Choice,
  type ChoiceFault,
  choiceFaults,
  type FeederLimit,
  type MilpForm,
  type MilpLayout,
  type MoveCircuit,
  type MoveModule,
  type MovePart,
  type MovePattern,
  type MovePlace,
  type MovesProblem,
  milpOf,
  type Objective,
  type Placing,
  type Score,
  scoreOf,
} from "./moves/index.js";
export {
  type ChannelOf,
  type CircuitMove,
  type Cut,
  type Front,
  type FuseChange,
  type ModuleChoice,
  OBSTACLE_CODES,
  type Obstacle,
  type Pick,
  type Plan,
  type PlanFault,
  type Rewire,
  type SteadyFeed,
  type UnmetWish,
} from "./plan.js";
export type { RecordCheck } from "./sift.js";
export { cutWords, obstacleWords, planWords } from "./words.js";
