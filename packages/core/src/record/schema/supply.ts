import { z } from "zod";
import { figure, notedText } from "./figure.js";
import { attachmentId, cableId, nodeId, placeId, supplyId } from "./ids.js";

export const SUPPLY_KINDS = ["battery", "charger", "alternator", "solar"] as const;
export const CHEMISTRIES = ["flooded", "agm", "gel", "lifepo4"] as const;

/** What must be opened before work, where, and how. */
export const isolation = z.looseObject({
  what: z.string().describe("the switch, breaker or plug to open, as it is called on the coach"),
  place: placeId.optional(),
  how: z.string().optional(),
});

/** A source: battery bank, charger or converter, alternator feed, solar. One schema; fields that do not apply stay absent. */
export const supply = z.looseObject({
  id: supplyId,
  kind: z.enum(SUPPLY_KINDS),
  name: z.string(),
  node: nodeId.optional().describe("where its positive connects"),
  returnNode: nodeId.optional().describe("where its negative connects; the first battery's is the reference, 0 V"),
  place: placeId.optional(),
  isolation: isolation.optional(),
  chemistry: z.enum(CHEMISTRIES).optional(),
  capacityAh: figure.optional(),
  ratedHours: z.number().positive().optional().describe("the hours at which capacityAh is rated; usually 20"),
  openCircuitV: figure.optional().describe("rested, at the state of charge found"),
  chargeRatio: figure.optional().describe("state of charge found, 0..1"),
  openCircuitCurve: z.array(z.looseObject({ chargeRatio: z.number(), openCircuitV: z.number() })).optional(),
  internalResistanceOhm: figure.optional(),
  peukertExponent: figure.optional(),
  temperatureC: figure.optional().describe("battery: its own temperature when it is used"),
  selfDischargePerMonthRatio: figure.optional().describe("battery: share of its capacity lost in a month at rest"),
  sunHoursPerDay: figure.optional().describe("solar: hours a day at ratedA, all of a day's sun gathered in them"),
  outputV: figure.optional().describe("charger, alternator, solar: regulated output"),
  ratedA: figure.optional().describe("charger, alternator, solar: most it can give"),
  photos: z.array(attachmentId).optional(),
  notes: z.string().optional(),
});

export const NODE_KINDS = ["busbar", "stud", "ground", "splice", "terminal"] as const;

export const node = z.looseObject({
  id: nodeId,
  kind: z.enum(NODE_KINDS),
  name: z.string(),
  rail: z.enum(["positive", "return"]).optional(),
  ratedA: figure.optional().describe("what the bar or stud may carry"),
  place: placeId.optional(),
  photos: z.array(attachmentId).optional(),
  notes: z.string().optional(),
});

export const FUSE_TYPES = [
  "blade",
  "blade-slow",
  "glass-fast",
  "glass-slow",
  "bolt-down",
  "cartridge",
  "breaker",
  "fusible-link",
] as const;

export const fuse = z.looseObject({
  ratedA: figure.optional(),
  type: z.enum(FUSE_TYPES).optional(),
  interruptA: figure.optional().describe("the short-circuit current it may break"),
  resistanceOhm: figure.optional().describe("cold, measured"),
  gates: z
    .array(
      z.looseObject({
        ratio: z.number().positive().describe("current over rating"),
        minS: z.number().nonnegative().optional().describe("shortest opening time there"),
        maxS: z.number().nonnegative().optional().describe("longest opening time there"),
      }),
    )
    .optional()
    .describe("opening times off the fuse's own sheet; they win over its family's published ones"),
  notes: z.string().optional(),
});

const conductor = {
  gauge: notedText.optional().describe("as written: 14 AWG, 14 SAE, 2.5 mm²"),
  sectionMm2: figure.optional().describe("wins over gauge"),
  resistanceOhm: figure.optional().describe("measured end to end; wins over length and gauge"),
  insulationC: figure.optional().describe("temperature class of the insulation: 60, 75, 80, 90, 105, 125, 200"),
  bundleCount: figure.optional().describe("current-carrying conductors run together, this one included"),
  isSheathed: z.boolean().optional(),
  zone: z.string().optional(),
  place: placeId.optional(),
};

/** A wire of a circuit: one conductor, one way. */
export const wireRun = z.looseObject({
  ...conductor,
  lengthM: figure.optional().describe("of this conductor, one way"),
  node: nodeId
    .optional()
    .describe(
      "return: the ground stud, bar or splice it lands on; out: the splice it leaves from, when not the channel itself",
    ),
});

export const CABLE_KINDS = ["wire", "chassis", "strap", "bar"] as const;

/** A feeder or return between two nodes. `chassis` and `strap` count by their resistance. */
export const cable = z.looseObject({
  id: cableId,
  kind: z.enum(CABLE_KINDS).optional().describe("wire where absent"),
  name: z.string().optional(),
  from: nodeId,
  to: nodeId,
  ...conductor,
  lengthM: figure.optional().describe("of this conductor, one way"),
  protection: fuse
    .extend({ distanceFromSourceM: figure.optional().describe("along the conductor from where the supply connects") })
    .optional()
    .describe("the device at its source end"),
  disconnect: z
    .looseObject({ name: z.string(), isClosed: z.boolean().optional(), place: placeId.optional() })
    .optional(),
  photos: z.array(attachmentId).optional(),
  notes: z.string().optional(),
});
