import { z } from "zod";
import { BASES } from "../../quantity/index.js";
import { figure } from "./figure.js";
import { attachmentId, circuitId, controlId, loadId, moduleId, nodeId, placeId } from "./ids.js";
import { fuse, wireRun } from "./supply.js";

/** What feeds from one fuse: a module's channel, or a plain fuse position that is not on a module. */
export const circuit = z.looseObject({
  id: circuitId,
  name: z.string().optional(),
  module: moduleId.optional(),
  channel: z.number().int().min(1).max(64).optional(),
  fusePosition: z
    .looseObject({ node: nodeId.optional(), name: z.string() })
    .optional()
    .describe("a plain fuse: the node it is fed from and its name on the block"),
  label: z
    .string()
    .optional()
    .describe("what the label on the coach says, even when it is wrong; empty when there is none"),
  isSpare: z.boolean().optional(),
  fuse: fuse.optional(),
  out: wireRun.optional(),
  return: wireRun.optional(),
  connectors: z
    .array(z.looseObject({ name: z.string(), resistanceOhm: figure.optional(), place: placeId.optional() }))
    .optional(),
  loads: z.array(loadId).optional(),
  verified: z
    .looseObject({ what: z.string().optional(), at: z.string().optional(), by: z.string().optional() })
    .optional()
    .describe("how it is known that this fuse feeds these loads"),
  canMove: z.boolean().optional().describe("true: the program lets this circuit move to another channel"),
  reach: z
    .array(moduleId)
    .optional()
    .describe("modules its wire can be brought to without a joint, beside the one it is on"),
  unread: z
    .record(z.string(), z.string())
    .optional()
    .describe("survey cells that could not be read, by column, kept as written"),
  surveyRow: z.string().optional().describe("the key of the survey row it came from"),
  photos: z.array(attachmentId).optional(),
  notes: z.string().optional(),
});

export const LOAD_CLASSES = [
  "led-resistor",
  "led-linear",
  "led-driver",
  "filament",
  "motor",
  "pump",
  "fan",
  "actuator",
  "valve",
  "relay-coil",
  "heater-control",
  "inverter-remote",
  "electronics",
  "outlet",
  "detector",
  "resistive-heater",
] as const;

export const WISHES = ["must-dim", "nice-to-dim", "must-stay-steady", "none"] as const;

export const load = z.looseObject({
  id: loadId,
  name: z.string(),
  class: z.enum(LOAD_CLASSES).optional(),
  classBasis: z
    .enum(BASES)
    .optional()
    .describe("how the class is known; assumed: guessed from the name; marked where absent"),
  place: placeId.optional(),
  quantity: z.number().int().positive().optional().describe("how many alike; current and power are for one"),
  ratedV: figure.optional().describe("the voltage at which currentA or powerW holds"),
  currentA: figure.optional().describe("one piece, running"),
  powerW: figure.optional().describe("one piece, running"),
  stallA: figure.optional(),
  standbyA: figure.optional().describe("what one piece draws when it is off itself and its circuit is live"),
  inrushRatio: figure.optional().describe("peak starting current over running current"),
  runUpS: figure.optional().describe("motor: time in which the starting current loses two thirds of its excess"),
  minV: figure.optional().describe("below this it does not work as it should"),
  maxV: figure.optional(),
  dropOutV: figure.optional().describe("constant-power electronics stop below this"),
  ledForwardV: figure.optional().describe("sum of the forward voltages of one string"),
  ledResistorOhm: figure.optional(),
  drawReadings: z
    .array(
      z.looseObject({
        voltageV: figure.describe("across the load while it draws this"),
        currentA: figure,
        pieces: z.number().int().positive().optional().describe("how many alike the clamp took in; one where absent"),
        at: z.string().optional().describe("ISO date of the reading"),
        by: z.string().optional(),
        note: z.string().optional(),
      }),
    )
    .optional()
    .describe("volts across the load and its current, read together, at full duty and warm"),
  inputCapacitanceF: figure.optional().describe("capacitor at the input of a driver, one piece"),
  filamentTimeConstantS: figure.optional().describe("how slowly a filament cools from its rated heat, small changes"),
  maxFuseA: figure.optional().describe("largest fuse the load itself allows"),
  isCritical: z.boolean().optional(),
  isContinuous: z.boolean().optional().describe("on for three hours or more"),
  hasOwnSwitch: z.boolean().optional(),
  ownSwitchKind: z
    .enum(["contact", "electronic"])
    .optional()
    .describe("contact: opens the wire and does nothing else; electronic: touch, remote or memory, which PWM upsets"),
  allowsPwm: z.boolean().optional().describe("the maker states, or a reading shows, that PWM is allowed"),
  pwmEvidence: z
    .looseObject({
      from: z.enum(["maker", "reading"]),
      name: z.string().describe("which statement or which reading: sheet, page, date, what was read"),
      at: z.string().optional(),
      by: z.string().optional(),
    })
    .optional()
    .describe("what allowsPwm rests on; an exception to what common practice never dims needs it"),
  maySteadyFeed: z
    .boolean()
    .optional()
    .describe("true: it may be live all the time, on a fused feed of its own that no module switches"),
  wish: z.enum(WISHES).optional(),
  wishWeight: z.number().positive().optional(),
  tail: wireRun.optional().describe("the load's own, often thinner, wire after the splice"),
  photos: z.array(attachmentId).optional(),
  notes: z.string().optional(),
});

export const control = z.looseObject({
  id: controlId,
  name: z.string(),
  place: placeId.optional(),
  program: z.enum(["fixed", "editable"]).optional().describe("fixed where absent"),
  does: z
    .array(
      z.looseObject({
        action: z.enum(["switch", "hold-to-dim", "group", "all-off", "momentary"]),
        circuits: z.array(circuitId).optional(),
        seen: z.string().optional(),
      }),
    )
    .optional(),
  notes: z.string().optional(),
});

/** The two-wire network that modules and buttons talk on. */
export const twoWire = z.looseObject({
  trunk: z
    .array(z.looseObject({ at: z.string(), toNextM: figure.optional(), stubM: figure.optional() }))
    .optional()
    .describe("in order along the cable"),
  terminators: z.array(z.looseObject({ at: z.string(), resistanceOhm: figure.optional() })).optional(),
  bitRateKbit: figure.optional(),
  addressesSeen: z.array(z.number().int().nonnegative()).optional(),
  betweenWiresOhm: figure.optional().describe("measured between the two wires, unpowered"),
  quiescentA: figure
    .optional()
    .describe("what controller, buttons and network draw with everything off, modules not counted"),
  notes: z.string().optional(),
});
