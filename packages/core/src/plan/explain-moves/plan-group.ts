import type { ConflictGroup, GroupNature } from "../conflict/index.js";

/** Every kind of thing that a conflict may name. The words come from `words-of-conflict.ts`. */
export const PLAN_GROUP_CODES = [
  "wish",
  "budget",
  "minutes",
  "module-locked",
  "circuit-locked",
  "kind-ruled-out",
  "means-ruled-out",
  "choice-made",
  "move-not-said",
  "feed-not-said",
  "load-must-not-dim",
  "load-not-known",
  "current-unknown",
  "channel-not-recorded",
  "dimmed-rating",
  "switched-rating",
  "total-rating",
  "channel-fuse-limit",
  "kind-does-not-fit",
  "kind-not-to-be-had",
  "kind-blocks",
  "reach",
  "control-fixed",
  "program-fixed",
  "feeder-limit",
] as const;

export type PlanGroupCode = (typeof PLAN_GROUP_CODES)[number];

/** One thing in a conflict, as a code with parameters. */
export interface PlanGroup {
  /** The code and what it is about: no two groups of one question have the same. */
  readonly name: string;
  readonly nature: GroupNature;
  readonly code: PlanGroupCode;
  readonly parameters: Readonly<Record<string, string | number>>;
}

export const planGroup = (
  nature: GroupNature,
  code: PlanGroupCode,
  about: string,
  parameters: PlanGroup["parameters"],
): PlanGroup => ({ name: about === "" ? code : `${code} ${about}`, nature, code, parameters });

/** A group that only has a name to the search: what it means is supposed otherwise in the record, not in bounds. */
export const bareGroup = (group: PlanGroup): ConflictGroup => ({
  name: group.name,
  nature: group.nature,
  rows: [],
  columns: [],
});
