export { type MilpForm, milpOf } from "./milp-of.js";
export type { MilpLayout, Objective } from "./milp-request.js";
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
