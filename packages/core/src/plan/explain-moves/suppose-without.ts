import type { CoachIndex, CoachRecord, Job, LoadId } from "../../record/index.js";
import { askedOf, readAsked, type Supposing, supposing, withLimits, withWish } from "./asked.js";
import { choiceGroupsOf } from "./choice-groups.js";
import { nearOf } from "./near.js";
import { physicalGroupsOf } from "./physical-groups.js";
import type { PlanGroup } from "./plan-group.js";

/** Everything that may be named about this load, beside wishes and limits: what is somebody's choosing, and what is not. */
export function groupsAround(
  index: CoachIndex,
  job: Job | undefined,
  load: LoadId,
): { readonly choices: readonly PlanGroup[]; readonly facts: readonly PlanGroup[] } {
  const asked = askedOf(index, job);
  const near = nearOf(index, index.circuitOfLoad.get(load));
  if (near === undefined) return { choices: [], facts: [] };
  return {
    choices: choiceGroupsOf(asked, near).map((each) => each.group),
    facts: physicalGroupsOf(index, readAsked(asked).demand, near).map((each) => each.group),
  };
}

/**
 * How would the question about this load read without these groups (by name, as `whyNot` gives them)? The record and the job with each of them supposed otherwise:
 * for trying a way out, and for proving a conflict anew. Undefined where the load hangs on no module.
 */
export function supposeWithout(
  index: CoachIndex,
  job: Job | undefined,
  load: LoadId,
  names: ReadonlySet<string>,
): { readonly record: CoachRecord; readonly job: Job } | undefined {
  const asked = askedOf(index, job);
  const near = nearOf(index, index.circuitOfLoad.get(load));
  if (near === undefined) return undefined;
  const { demand } = readAsked(asked);
  const lifts = new Map<string, Supposing>([
    ["budget", withLimits(() => ({ budget: undefined }))],
    ["minutes", withLimits(() => ({ maxMinutes: undefined }))],
    ...[...demand.wishes.keys()].map((id): [string, Supposing] => [`wish ${id}`, withWish(id, "nice-to-dim", 0.001)]),
    ...choiceGroupsOf(asked, near).map(({ group, lift }): [string, Supposing] => [group.name, lift]),
    ...physicalGroupsOf(index, demand, near).map(({ group, lift }): [string, Supposing] => [group.name, lift]),
  ]);
  return supposing(
    asked,
    [...names].flatMap((name) => lifts.get(name) ?? []),
  );
}
