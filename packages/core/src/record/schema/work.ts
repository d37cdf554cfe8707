import { z } from "zod";
import { WISHES } from "./circuit.js";
import {
  attachmentId,
  circuitId,
  dimBlockId,
  jobId,
  loadId,
  moduleId,
  moduleKindId,
  nodeId,
  readingId,
} from "./ids.js";

/**
 * A point a probe can touch: the id of a node, supply, module, circuit or load, and which end of it.
 * Terminals: node: none; supply: positive, negative; module: feed; circuit: fuse-in, fuse-out, output, far-end, return-end; load: positive, negative.
 */
export const point = z.looseObject({ at: z.string(), terminal: z.string().optional() });

/** What was on when a reading was taken. */
export const readingState = z.looseObject({
  name: z.string().optional(),
  on: z.union([z.literal("all"), z.literal("none"), z.array(circuitId)]).optional(),
  dutyRatio: z.record(z.string(), z.number().min(0).max(1)).optional().describe("by circuit id"),
  chargerOn: z.boolean().optional(),
  engineOn: z.boolean().optional(),
  chargeRatio: z.number().min(0).max(1).optional(),
});

export const READING_KINDS = ["voltage", "current", "resistance", "temperature", "lamp", "symptom", "address"] as const;

export const reading = z.looseObject({
  id: readingId,
  kind: z.enum(READING_KINDS),
  point: point.optional(),
  against: point.optional().describe("the other probe; battery negative where absent"),
  valueV: z.number().optional(),
  valueA: z.number().optional(),
  valueOhm: z.number().optional(),
  valueC: z.number().optional(),
  address: z.number().int().optional(),
  said: z.string().optional().describe("lamp colour, or yes / no for a symptom"),
  about: z.string().optional().describe("lamp or symptom asked about"),
  plusMinus: z.number().nonnegative().optional(),
  state: readingState.optional(),
  at: z.string().optional(),
  by: z.string().optional().describe("instrument"),
  notes: z.string().optional(),
});

/** A module as the plan leaves it. */
export const plannedModule = z.looseObject({
  module: moduleId,
  kind: moduleKindId,
  enables: z.array(z.string()).describe("ids of the dim blocks the option setting enables"),
  positions: z.string().optional(),
});

export const chosenPlan = z.looseObject({
  modules: z.array(plannedModule),
  fuses: z.array(z.looseObject({ circuit: circuitId, ratedA: z.number().positive() })).optional(),
  moves: z
    .array(
      z.looseObject({
        circuit: circuitId,
        from: z.looseObject({ module: moduleId, channel: z.number().int().min(1) }),
        to: z.looseObject({ module: moduleId, channel: z.number().int().min(1) }),
      }),
    )
    .optional()
    .describe("circuits that go to another channel"),
  steadyFeeds: z
    .array(
      z.looseObject({
        load: loadId,
        circuit: circuitId,
        node: nodeId.optional(),
        ratedA: z.number().positive().optional(),
      }),
    )
    .optional()
    .describe("loads taken off a channel on to a fused feed of their own"),
  rewires: z
    .array(z.looseObject({ circuit: circuitId, gauge: z.string().optional(), sectionMm2: z.number().positive() }))
    .optional()
    .describe("circuits that get a thicker wire"),
  cost: z.number().optional(),
  currency: z.string().optional(),
  minutes: z.number().optional(),
});

export const PLAN_MEANS = ["moves", "steady-feeds", "rewires", "reuse"] as const;

/** A choice the user has made beforehand: this module gets this kind or setting, this circuit goes there; or, forbidden, must not. */
export const fixedChoice = z.looseObject({
  module: moduleId.optional().describe("what is fixed about this module: its kind, its setting, or both"),
  kind: moduleKindId.optional(),
  enables: z.array(dimBlockId).optional().describe("exactly these dim blocks"),
  circuit: circuitId.optional().describe("where this circuit sits when the work is done"),
  toModule: moduleId.optional().describe("its own module too; absent: anywhere"),
  isDimmed: z.boolean().optional().describe("on a channel that dims, or on one that does not"),
  isForbidden: z.boolean().optional().describe("true: what is named must not be"),
});

export const job = z.looseObject({
  id: jobId,
  title: z.string(),
  complaint: z.string().optional(),
  wishes: z
    .array(z.looseObject({ load: loadId, wish: z.enum(WISHES), weight: z.number().positive().optional() }))
    .optional()
    .describe("wins over the load's own wish"),
  constraints: z
    .looseObject({
      budget: z.number().optional(),
      lockedModules: z.array(moduleId).optional(),
      lockedCircuits: z.array(circuitId).optional().describe("stay on their channel"),
      lockedLoads: z.array(loadId).optional().describe("stay on their circuit, and that on its channel"),
      fixedChoices: z.array(fixedChoice).optional(),
      rulesOut: z.array(z.enum(PLAN_MEANS)).optional().describe("what no plan of this job may do"),
      forbiddenKinds: z.array(moduleKindId).optional(),
      maxMinutes: z.number().optional(),
    })
    .optional(),
  chosen: chosenPlan.optional(),
  steps: z
    .array(z.looseObject({ id: z.string(), doneAt: z.string().optional(), note: z.string().optional() }))
    .optional(),
  signed: z.looseObject({ at: z.string(), by: z.string() }).optional(),
  notes: z.string().optional(),
});

export const attachment = z.looseObject({
  id: attachmentId,
  sha256: z.string().regex(/^[0-9a-f]{64}$/, "a SHA-256 is 64 hexadecimal digits"),
  mediaType: z.string(),
  name: z.string().optional(),
  bytes: z.number().int().nonnegative().optional(),
  caption: z.string().optional(),
});

export const surveyMemory = z.looseObject({
  mappings: z
    .array(
      z.looseObject({
        name: z.string().optional(),
        headings: z.array(z.string()),
        columns: z.record(z.string(), z.string()).describe("heading as typed -> field"),
      }),
    )
    .optional(),
  unread: z
    .array(z.looseObject({ row: z.string(), column: z.string(), text: z.string(), why: z.string().optional() }))
    .optional(),
});
