export { type MilpForm, milpOf } from "./milp-of.js";
export type { MilpLayout, Objective } from "./milp-request.js";
export type { StayReason } from "./movable.js";
export { staysBecause } from "./movable.js";
export { planOfChoice } from "./plan-of-choice.js";
export type {
  Choice,
  FeederLimit,
  MoveCircuit,
  MoveModule,
  MovePart,
  MovePattern,
  MovePlace,
  MovesProblem,
  Placing,
} from "./problem.js";
export { problemFaults } from "./problem-faults.js";
export { movesProblemOf, type RecordProblem } from "./problem-of.js";
export { mayBeLive } from "./relief.js";
export {
  type ChoiceFault,
  centsOfCost,
  choiceFaults,
  patternAt,
  placesOpenedBy,
  placingAt,
  type Score,
  scoreOf,
} from "./score.js";
