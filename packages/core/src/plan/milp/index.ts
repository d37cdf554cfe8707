export type { Milp, MilpColumn, MilpRow } from "./milp.js";
export { MilpError, type MilpErrorCode } from "./milp-error.js";
export { type MilpFault, milpFaults } from "./milp-faults.js";
export type {
  BoundChange,
  MilpAnswer,
  MilpProgress,
  MilpRequest,
  MilpSession,
  MilpSolver,
  StopSignal,
} from "./milp-solver.js";
export { requestFaults } from "./request-faults.js";
export { objectiveOf, type Violation, violationsOf } from "./violations.js";
export { writeLp } from "./write-lp.js";
export { writeMps } from "./write-mps.js";
