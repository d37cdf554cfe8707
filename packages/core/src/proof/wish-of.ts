import type { CoachIndex, Load, Wish } from "../record/index.js";

/** What the owner wishes of a load: the wish of the last job that is not signed wins over the load's own. */
export function wishOf(index: CoachIndex, load: Load): Wish | undefined {
  let wish = load.wish;
  for (const job of index.record.jobs ?? []) {
    if (job.signed !== undefined) continue;
    for (const each of job.wishes ?? []) if (each.load === load.id) wish = each.wish;
  }
  return wish;
}
