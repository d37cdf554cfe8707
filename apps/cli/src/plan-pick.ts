import type { Front, Plan } from "@fusebook/core/plan";
import type { CoachRecord, Job } from "@fusebook/core/record";
import { Misuse } from "./misuse.js";
import { meantBy } from "./nearest.js";

export const PICK_NAMES = ["least-for-all-musts", "most-light", "least-disturbance", "best-per-money"] as const;

/** The job a command works on: by id, else the record's first. */
export function jobOf(record: CoachRecord, id: string | undefined): Job | undefined {
  if (id === undefined) return record.jobs?.[0];
  const job = record.jobs?.find((each) => each.id === id);
  if (job === undefined)
    throw new Misuse(
      `--job ${id}: the record has no such job; it has ${record.jobs?.map((each) => each.id).join(", ") || "none"}`,
    );
  return job;
}

/** The plan meant by a pick's name or a plan's id. */
export function planMeant(front: Front, meant: string): Plan {
  const id = front.picks.find((pick) => pick.name === meant)?.plan ?? meant;
  const plan = front.plans.find((each) => each.id === id);
  if (plan !== undefined) return plan;
  const named = [...front.picks.map((pick) => pick.name), ...front.plans.map((each) => each.id)].map((name) => ({
    id: name,
    names: [],
  }));
  const near = meantBy(meant, named, 2);
  const hint =
    "nearest" in near && near.nearest.length > 0 ? `; nearest: ${near.nearest.map((each) => each.id).join(", ")}` : "";
  throw new Misuse(
    `--pick ${meant}: wanted ${front.picks.map((pick) => pick.name).join(", ") || "a plan"} or the id of a plan on the front (--front lists them)${hint}`,
  );
}
