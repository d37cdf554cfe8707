import type { CoachIndex, CoachRecord, Job, LoadId } from "../../record/index.js";
import { askedOf, readAsked, type Supposing, supposing, withLimits, withWish } from "./asked.js";
import { choiceGroupsOf } from "./choice-groups.js";
import { nearOf } from "./near.js";
import { physicalGroupsOf } from "./physical-groups.js";

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
    ...[...demand.wishes.keys()].map((id): [string, Supposing] => [`wish ${id}`, withWish(id, "none", undefined)]),
    ...choiceGroupsOf(asked, near).map(({ group, lift }): [string, Supposing] => [group.name, lift]),
    ...physicalGroupsOf(index, demand, near).map(({ group, lift }): [string, Supposing] => [group.name, lift]),
  ]);
  return supposing(
    asked,
    [...names].flatMap((name) => lifts.get(name) ?? []),
  );
}
