import { z } from "zod";
import { circuit, control, load, twoWire } from "./circuit.js";
import { coach, place, policy } from "./coach.js";
import { enduranceWish } from "./endurance.js";
import { module, moduleKind } from "./module.js";
import { cable, node, supply } from "./supply.js";
import { attachment, job, reading, surveyMemory } from "./work.js";

export const FORMAT = "fusebook/1";

/** Everything known about one coach. Only the format, the id and the coach's name must be there. Unknown fields are kept. */
export const coachRecord = z.looseObject({
  format: z.literal(FORMAT),
  id: z.string().min(1).max(64),
  revision: z.number().int().nonnegative().optional(),
  coach,
  policy: policy.optional(),
  places: z.array(place).optional(),
  supplies: z.array(supply).optional(),
  nodes: z.array(node).optional(),
  cables: z.array(cable).optional(),
  moduleKinds: z.array(moduleKind).optional(),
  modules: z.array(module).optional(),
  circuits: z.array(circuit).optional(),
  loads: z.array(load).optional(),
  controls: z.array(control).optional(),
  network: twoWire.optional(),
  endurance: enduranceWish.optional(),
  readings: z.array(reading).optional(),
  jobs: z.array(job).optional(),
  attachments: z.array(attachment).optional(),
  survey: surveyMemory.optional(),
});
