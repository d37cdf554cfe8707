import { type Milp, MilpError, type MilpFault, type MilpRequest, milpFaults, requestFaults } from "@fusebook/core/plan";

/** Refuses a model that has faults, naming them. */
export const refuseFaults = (milp: Milp): void => refuse(milp, milpFaults(milp));

/** Refuses a request that does not fit its model, naming what is wrong. */
export const refuseRequest = (milp: Milp, request: MilpRequest): void => refuse(milp, requestFaults(milp, request));

function refuse(milp: Milp, faults: readonly MilpFault[]): void {
  if (faults.length === 0) return;
  const shown = faults.slice(0, 3).map(({ path, message }) => `${path}: ${message}`);
  const more = faults.length > 3 ? `; and ${faults.length - 3} more` : "";
  throw new MilpError("model-not-readable", `${milp.name}: ${shown.join("; ")}${more}`, faults);
}
