import { FORMAT } from "./schema/record.js";
import type { CoachRecord } from "./schema/types.js";

/** The record of a coach of which nothing is known yet but its name. */
export const newRecord = (coach: { readonly id: string; readonly name: string }): CoachRecord => ({
  format: FORMAT,
  id: coach.id,
  coach: { name: coach.name },
});
