import type { Options } from "./command.js";
import { PICK_NAMES } from "./plan-pick.js";

/** What limits the plans, the same for every command that looks for one. */
export const ASKED_OPTIONS: Options = {
  job: { type: "string" },
  lock: { type: "string", multiple: true },
  forbid: { type: "string", multiple: true },
  budget: { type: "string" },
  minutes: { type: "string" },
};

export const ASKED_HELP: Readonly<Record<string, string>> = {
  job: "the job whose wishes count; the first where absent",
  lock: "a module, circuit or load that stays as it is, or m2=D12 (this module gets this kind), c2.02=m4 (this circuit goes there); may be given again",
  forbid:
    "a module kind that is not fitted; moves, steady-feeds, rewires or reuse; or m2=D12, c2.02=m4; may be given again",
  budget: "most it may cost, tax not counted",
  minutes: "most minutes the work may take",
};

export const PICK_HELP = `${PICK_NAMES.join(", ")}, or the id of a plan`;
