import type { CoachIndex, Job, Load, Module } from "../record/index.js";
import { isPriced } from "./candidate.js";
import type { Demand } from "./demand.js";
import type { Chosen } from "./explain.js";
import type { Position } from "./option.js";
import type { Plan, PlanFault } from "./plan.js";

/** Kinds that no plan can reckon with because they have no price, or only as if they cost nothing. */
export function priceFaults(index: CoachIndex, demand: Demand): PlanFault[] {
  const faults: PlanFault[] = [];
  for (const kind of index.moduleKinds.values()) {
    if (kind.price !== undefined || kind.isObtainable === false || demand.forbidden.has(kind.id)) continue;
    const path = `${index.pathOf("moduleKinds", kind.id)}.price`;
    faults.push({
      path,
      code: "kind-without-price",
      message: isPriced(index)
        ? `${path}: ${kind.name} has no price, other kinds have; it is left out beyond its stock until it has one`
        : `${path}: no kind has a price; parts count as nothing in every cost`,
    });
  }
  return faults;
}

/** Wishes to dim what is never dimmed by any plan. */
export function detectorFaults(index: CoachIndex, demand: Demand): PlanFault[] {
  const faults: PlanFault[] = [];
  for (const wish of demand.wishes.values())
    if (wish.wish !== "must-stay-steady" && index.loads.get(wish.load)?.class === "detector") {
      const path = index.pathOf("loads", wish.load);
      faults.push({
        path,
        code: "wish-on-detector",
        message: `${path}: a life-safety detector is never dimmed and never moved by a plan; remove the wish`,
      });
    }
  return faults;
}

/** A module that no plan can work on as it should be. */
export function moduleFaults(
  index: CoachIndex,
  { module, present, isLocked, keepsDead }: Pick<Position, "module" | "present" | "isLocked" | "keepsDead">,
): PlanFault[] {
  const path = index.pathOf("modules", module.id);
  const faults: PlanFault[] = [];
  if (present === undefined)
    faults.push({
      path: `${path}.kind`,
      code: "kind-unknown",
      message: `${path}.kind: what kind ${module.name ?? module.id} is, is not on record; the plan leaves it alone until it is`,
    });
  if (keepsDead)
    faults.push({
      path,
      code: isLocked ? "dead-module-locked" : "dead-module-no-kind",
      message: isLocked
        ? `${path}: ${module.name ?? module.id} is dead and locked; every plan leaves it dead`
        : `${path}: ${module.name ?? module.id} is dead and no kind on record may be fitted; every plan leaves it dead`,
    });
  return faults;
}

/** A must that its locked module does not meet as it is. */
export function lockedMustFault(
  index: CoachIndex,
  demand: Demand,
  jobPath: string,
  module: Module,
  load: Load,
): PlanFault {
  const path = index.pathOf("modules", module.id);
  return {
    path: demand.locked.has(module.id) ? `${jobPath}.constraints.lockedModules` : `${path}.isLocked`,
    code: "must-on-locked-module",
    message: `${path}: ${load.name} must dim, but ${module.name ?? module.id} is locked and does not dim it as it is; unlock it or give up the wish`,
  };
}

/** What in the wishes, limits and prices cannot be right together, found once the positions are known. */
export function demandFaults(
  index: CoachIndex,
  demand: Demand,
  positions: readonly Position[],
  plans: readonly Plan[],
  beyond: readonly Chosen[],
  job: Job | undefined,
): PlanFault[] {
  const faults: PlanFault[] = [];
  const jobPath = job === undefined ? "jobs" : index.pathOf("jobs", job.id);
  faults.push(...priceFaults(index, demand));
  for (const position of positions) {
    const { module, isLocked, loads } = position;
    faults.push(...moduleFaults(index, position));
    if (!isLocked) continue;
    for (const { loads: here } of loads)
      for (const load of here)
        if (demand.wishes.get(load.id)?.wish === "must-dim" && !plans.some((plan) => plan.dims.includes(load.id)))
          faults.push(lockedMustFault(index, demand, jobPath, module, load));
  }
  faults.push(...detectorFaults(index, demand));
  if (plans.length === 0 && beyond.length > 0) {
    const cheapest = beyond.reduce((least, each) => (each.plan.costCents < least.plan.costCents ? each : least));
    faults.push({
      path: `${jobPath}.constraints`,
      code: "nothing-within-limits",
      message: `${jobPath}.constraints: no plan keeps within the limits; the cheapest costs ${(cheapest.plan.costCents / 100).toFixed(2)} and takes ${cheapest.plan.minutes} minutes`,
    });
  }
  return faults;
}
