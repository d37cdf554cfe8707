import { z } from "zod";
import { figure } from "./figure.js";
import { attachmentId, placeId } from "./ids.js";

/** The coach itself. No personal data is required. */
export const coach = z.looseObject({
  name: z.string(),
  yearBuilt: z.number().int().optional(),
  lengthM: figure.optional(),
  nominalV: z.number().positive().optional().describe("12 or 24; taken as 12 where absent, and said so"),
  keptAt: z.string().optional(),
  ownerWords: z.string().optional().describe("what the owner said, in their words"),
  isInvented: z.boolean().optional().describe("true for demo coaches: every paper and screen says so"),
  notes: z.string().optional(),
});

export const CONDUCTOR_RULES = ["nec", "marine", "road-vehicle"] as const;
export const AREA_BASES = ["awg", "sae"] as const;
export const BUNDLING_RULES = ["nec", "marine", "none"] as const;
export const UNIT_CHOICES = ["us", "metric", "both"] as const;

/** Which published limits apply, and how to show them. Every field has a default, listed in `record/policy.ts`. */
export const policy = z.looseObject({
  conductorRule: z
    .enum(CONDUCTOR_RULES)
    .optional()
    .describe(
      "nec: device not above ampacity, NEC 240.4(D) for small conductors; marine: 33 CFR 183; road-vehicle: 125 % next size",
    ),
  areaBasis: z.enum(AREA_BASES).optional().describe("what a bare gauge number means: AWG area or SAE minimum area"),
  bundling: z.enum(BUNDLING_RULES).optional(),
  overcurrentCeilingRatio: z
    .number()
    .positive()
    .optional()
    .describe(
      "device rating allowed over conductor ampacity: 1.0 NEC, 1.5 33 CFR 183.455, 1.25 a state vehicle specification",
    ),
  continuousFactor: z
    .number()
    .positive()
    .optional()
    .describe("device rating over continuous load, NEC 210.20(A): 1.25"),
  maxDropRatioCritical: z.number().positive().optional(),
  maxDropRatioGeneral: z.number().positive().optional(),
  maxDropRatioFeeder: z.number().positive().optional(),
  ambientC: z.number().optional().describe("where no zone says otherwise"),
  ambientPlusMinusC: z
    .number()
    .nonnegative()
    .optional()
    .describe(
      "how far all zones together may be warmer or cooler; none where absent: the limits hold at the ambients stated",
    ),
  zoneAmbientC: z.record(z.string(), z.number()).optional().describe("by zone name: cabin, engine, bay, outside"),
  reserveRatio: z
    .number()
    .optional()
    .describe("charge to be kept in the battery, 0..1; half for lead, a fifth for lithium where absent"),
  storedDays: z
    .number()
    .positive()
    .optional()
    .describe("days the coach should stand unused without a flat battery; 30 where absent"),
  labourRatePerHour: z.number().nonnegative().optional(),
  bankSettingMin: z.number().nonnegative().optional().describe("minutes to set the bank of a module that stays"),
  fuseChangeMin: z.number().nonnegative().optional().describe("minutes to change one fuse and its label"),
  moveWithinMin: z
    .number()
    .nonnegative()
    .optional()
    .describe("minutes to move a circuit to another channel of its module, program included"),
  moveBetweenMin: z
    .number()
    .nonnegative()
    .optional()
    .describe("minutes to bring a circuit to another module in its reach, program included"),
  steadyFeedMin: z.number().nonnegative().optional().describe("minutes to give one load a fused feed of its own"),
  steadyFeedParts: z
    .number()
    .nonnegative()
    .optional()
    .describe("holder, fuse and wire of one such feed, in the policy's currency"),
  rewireBaseMin: z.number().nonnegative().optional().describe("minutes to change the wire of one circuit, ends only"),
  rewireMinPerM: z.number().nonnegative().optional().describe("minutes for each metre of it, one way"),
  rewirePartsPerM: z.number().nonnegative().optional().describe("wire by the metre, in the policy's currency"),
  taxRatio: z.number().nonnegative().optional(),
  currency: z.string().optional(),
  unitsShown: z.enum(UNIT_CHOICES).optional(),
  paper: z.enum(["letter", "a4"]).optional(),
});

export const place = z.looseObject({
  id: placeId,
  name: z.string(),
  within: placeId.optional(),
  zone: z.string().optional().describe("ambient zone: cabin, engine, bay, outside"),
  reachedBy: z.string().optional().describe("how to get at it, in words"),
  accessMin: figure.optional().describe("minutes to open it"),
  photos: z.array(attachmentId).optional(),
  notes: z.string().optional(),
});
