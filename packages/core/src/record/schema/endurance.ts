import { z } from "zod";
import { LOAD_CLASSES } from "./circuit.js";
import { circuitId, loadId } from "./ids.js";

/** What is on in one span of a profile, for how much of the time, and at what duty where its channel dims. */
export const profileItem = z.looseObject({
  classes: z.array(z.enum(LOAD_CLASSES)).optional().describe("every circuit that feeds a load of one of these classes"),
  circuits: z.array(circuitId).optional().describe("these circuits; what is said of a circuit wins over its classes"),
  loads: z.array(loadId).optional().describe("the circuits that feed these loads"),
  shareRatio: z.number().optional().describe("part of the time it is on, 0..1; all of it where absent"),
  dutyRatio: z
    .number()
    .optional()
    .describe("duty where its channel dims, 0..1; full where absent or where it does not dim"),
});

export const profileSpan = z.looseObject({
  name: z.string().optional(),
  hours: z.number().describe("how long it lasts"),
  on: z.array(profileItem),
  chargerOn: z.boolean().optional(),
  engineOn: z.boolean().optional(),
});

/** A load profile: spans of hours, one after the other, begun again when they are over. */
export const loadProfile = z.looseObject({
  id: z.string().min(1).max(64),
  name: z.string().optional(),
  startsAtHour: z
    .number()
    .optional()
    .describe("by the clock, 0..24: when its first span begins; sets when the sun shines"),
  spans: z.array(profileSpan),
  notes: z.string().optional(),
});

/** How the coach is used on battery, and what the owner asks of the battery. */
export const enduranceWish = z.looseObject({
  profiles: z.array(loadProfile).optional().describe("the coach's own; one with the id of a common one replaces it"),
  wanted: z
    .array(z.looseObject({ profile: z.string(), hours: z.number(), notes: z.string().optional() }))
    .optional()
    .describe("hours on battery that the owner asks for, by profile"),
});
