import type { Job } from "../../record/index.js";
import { detectorFaults, lockedMustFault, moduleFaults, priceFaults } from "../demand-faults.js";
import type { PlanFault } from "../plan.js";
import { staysBecause } from "./movable.js";
import type { RecordProblem } from "./problem-of.js";

/** What is wrong in the reach and the freedom of circuits. */
function circuitFaults(problem: RecordProblem): PlanFault[] {
  const { index, demand } = problem.source.basis;
  const faults: PlanFault[] = [];
  for (const circuit of index.circuits.values()) {
    const path = index.pathOf("circuits", circuit.id);
    (circuit.reach ?? []).forEach((module, i) => {
      if (!index.modules.has(module))
        faults.push({
          path: `${path}.reach[${i}]`,
          code: "reach-names-no-module",
          message: `${path}.reach[${i}]: the record has no module ${module}; correct the id or remove it`,
        });
    });
    if (circuit.canMove !== true) continue;
    const stays = staysBecause(index, demand, circuit);
    if (stays === "program-fixed")
      faults.push({
        path: `${path}.canMove`,
        code: "move-contradicts-control",
        message: `${path}.canMove: the circuit is said to move, but a control that works it has a fixed program; it stays until one of the two is corrected`,
      });
    if (stays === "has-detector")
      faults.push({
        path: `${path}.canMove`,
        code: "detector-does-not-move",
        message: `${path}.canMove: a life-safety detector is on it; no plan moves it, take it off the switched channel`,
      });
    if (stays === "shares-channel")
      faults.push({
        path: `${path}.canMove`,
        code: "shared-channel-does-not-move",
        message: `${path}.canMove: another circuit is on the same channel; it stays until the record says which of them is there`,
      });
  }
  return faults;
}

/**
 * What in the record, the wishes, the limits and the choices cannot be right together, each by its path and with a remedy? Nothing of it is dropped in silence: what
 * is left out of the problem is named here.
 */
export function problemFaults(problem: RecordProblem, job?: Job): PlanFault[] {
  const { basis, grounds } = problem.source;
  const { index, demand } = basis;
  const jobPath = job === undefined ? "jobs" : index.pathOf("jobs", job.id);
  const faults: PlanFault[] = [
    ...demand.faults,
    ...problem.faults,
    ...priceFaults(index, demand),
    ...circuitFaults(problem),
  ];
  grounds.forEach((ground, m) => {
    const patterns = problem.modules[m]?.patterns ?? [];
    const keepsDead = ground.isDead && !patterns.some((pattern) => pattern.isReplaced);
    faults.push(...moduleFaults(index, { ...ground, keepsDead }));
    if (!ground.isLocked) return;
    for (const { loads } of ground.loads)
      for (const load of loads)
        if (
          demand.wishes.get(load.id)?.wish === "must-dim" &&
          !patterns.some((pattern) => pattern.dims.includes(load.id))
        )
          faults.push(lockedMustFault(index, demand, jobPath, ground.module, load));
  });
  faults.push(...detectorFaults(index, demand));
  return faults;
}
