import { z } from "zod";
import { figure } from "./figure.js";
import { attachmentId, dimBlockId, moduleId, moduleKindId, nodeId, placeId } from "./ids.js";
import { FUSE_TYPES } from "./supply.js";

/** Positions in switch order, one sign a switch: 1 is ON, 0 is OFF, ? is not read. */
export const positions = z
  .string()
  .regex(/^[01?]{1,16}$/, "positions are 1 (ON), 0 (OFF) or ? (not read), one sign a switch, 1 to 16 switches");

/**
 * The rule from address to positions.
 * `weights`: the coded value (address - firstAddress, or its Gray code) is the sum of the weights of the switches that count; each weight a
 * distinct power of two from 1 up; `onMeans` 1 where ON counts the weight, 0 where OFF counts it.
 * `table`: every address listed.
 */
export const addressCode = z.discriminatedUnion("kind", [
  z.looseObject({
    kind: z.literal("weights"),
    coding: z.enum(["binary", "gray"]),
    firstAddress: z.number().int().nonnegative().describe("the address whose coded value is 0"),
    switches: z.array(
      z.looseObject({
        switch: z.number().int().min(1).max(16),
        weight: z.number().int().positive(),
        onMeans: z.union([z.literal(0), z.literal(1)]),
      }),
    ),
  }),
  z.looseObject({
    kind: z.literal("table"),
    switches: z
      .array(z.number().int().min(1).max(16))
      .describe("which switches of the bank, in the order of the positions below"),
    rows: z.array(z.looseObject({ address: z.number().int().nonnegative(), positions })),
  }),
]);

/** One setting of the option switches and the dim blocks it enables. */
export const optionSetting = z.looseObject({
  enables: z.array(dimBlockId),
  set: z.array(
    z.looseObject({ switch: z.number().int().min(1).max(16), position: z.union([z.literal(0), z.literal(1)]) }),
  ),
});

/** The row of two-position switches on a module. */
export const bank = z.looseObject({
  switches: z.number().int().min(1).max(16).describe("how many switches in the row"),
  onIs: z.enum(["up", "down", "left", "right"]).optional().describe("where ON is, part upright as it is mounted"),
  printed: z.array(z.string()).optional().describe("what is printed at each switch, in order"),
  address: addressCode.optional(),
  options: z.array(optionSetting).optional().describe("every setting of the option switches that the sheet lists"),
  unused: z
    .array(z.looseObject({ switch: z.number().int().min(1).max(16), position: z.union([z.literal(0), z.literal(1)]) }))
    .optional(),
});

export const moduleKind = z.looseObject({
  id: moduleKindId,
  name: z.string(),
  partNumber: z.string().optional().describe("the user's own part number"),
  channels: z.number().int().min(1).max(64),
  output: z.enum(["relay", "pwm", "mixed"]).optional(),
  ratedSwitchedA: figure.optional().describe("per channel, switched"),
  ratedDimmedA: figure.optional().describe("per channel, dimmed"),
  ratedTotalA: figure.optional(),
  maxFuseA: figure.optional().describe("largest fuse a channel allows"),
  fuseType: z.enum(FUSE_TYPES).optional(),
  onResistanceOhm: figure.optional().describe("contact or transistor, one channel, on"),
  pwmHz: figure.optional(),
  minDutyRatio: figure.optional().describe("lowest duty it can give, 0..1"),
  dutySteps: z
    .number()
    .int()
    .min(1)
    .max(65536)
    .optional()
    .describe("equal steps of duty from off to full that it can give: 100 is whole percents, 255 eight bits"),
  side: z.enum(["high", "low"]).optional().describe("high: switches the positive; low: switches the return"),
  bank: bank.optional(),
  dimBlocks: z
    .array(
      z.looseObject({
        id: dimBlockId,
        name: z.string().optional(),
        channels: z.array(z.number().int().min(1).max(64)),
      }),
    )
    .optional(),
  lamps: z.array(z.looseObject({ name: z.string(), colour: z.string().optional(), meaning: z.string() })).optional(),
  connectors: z
    .array(
      z.looseObject({
        name: z.string(),
        columns: z.number().int().positive().optional().describe("pins in a row, as seen from the mating face"),
        keyedAt: z.string().optional(),
        pins: z.array(
          z.looseObject({
            pin: z.string(),
            channel: z.number().int().positive().optional(),
            is: z
              .string()
              .optional()
              .describe("what it is when not a channel: feed, return, network high, network low"),
          }),
        ),
      }),
    )
    .optional(),
  quiescentA: figure.optional(),
  labelPitchMm: figure.optional(),
  labelWidthMm: figure.optional().describe("along the row of fuses; the pitch where absent"),
  labelHeightMm: figure.optional(),
  price: z.number().nonnegative().optional().describe("in the policy's currency"),
  installMin: figure.optional().describe("minutes to change one, access not counted"),
  inStock: z.number().int().nonnegative().optional().describe("parts already on hand"),
  isObtainable: z.boolean().optional().describe("false: cannot be bought any more; true where absent"),
  fitsInPlaceOf: z
    .array(moduleKindId)
    .optional()
    .describe("kinds whose position and harness it takes; any with the same channels or fewer where absent"),
  photos: z.array(attachmentId).optional(),
  notes: z.string().optional(),
});

export const module = z.looseObject({
  id: moduleId,
  name: z.string().optional().describe("as the coach calls it"),
  kind: moduleKindId.optional(),
  place: placeId.optional(),
  feedNode: nodeId.optional(),
  returnNode: nodeId.optional().describe("for its own electronics"),
  address: z.number().int().nonnegative().optional().describe("the address the controller's program uses for it"),
  answersTo: z.number().int().nonnegative().optional().describe("the address it was seen to answer to"),
  positionsFound: positions.optional(),
  serial: z.string().optional(),
  isDead: z.boolean().optional(),
  isLocked: z.boolean().optional().describe("true: the plan may not touch it"),
  photos: z.array(attachmentId).optional(),
  notes: z.string().optional(),
});
