import { showQuantity } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import { circuitName, moduleName } from "./names.js";
import type { Step } from "./procedure.js";
import { type StepWords, say } from "./say.js";
import type { StepCode } from "./step-codes.js";

/** Steps at a wire that goes to another place. */
export type WireStepCode = Extract<
  StepCode,
  | "label-wire"
  | "unplug-wire"
  | "move-wire"
  | "rewire"
  | "steady-feed"
  | "leave-detector"
  | "label-channels"
  | "change-program"
  | "energise-circuit"
  | "energise-feed"
>;

/** One of those steps as what the hand does. */
export function wireStepWords(code: WireStepCode, step: Step, before: CoachIndex, after: CoachIndex): StepWords {
  const at = step.parameters;
  const text = (key: string): string | undefined => (at[key] === undefined ? undefined : String(at[key]));
  const what = text("what") ?? step.circuit ?? "this circuit";
  const end = (side: "from" | "to", withPins = true): string => {
    const module = text(`${side}Module`);
    if (module === undefined) return "its own fuse position";
    const pins = withPins ? text(`${side}Pins`) : undefined;
    return `channel ${text(`${side}Channel`)} of ${moduleName(before, module)}${pins === undefined ? "" : ` (${pins})`}`;
  };
  const node = text("node");
  const nodeName = node === undefined ? "the feed of its module" : (before.nodes.get(node)?.name ?? node);
  const fuse = text("fuseA") === undefined ? "a fuse whose size is not on record" : `a ${text("fuseA")} A fuse`;
  const isOtherFuse = text("fuseFromA") !== text("fuseA");
  const out =
    at.screwed === 1
      ? "Its fuse is screwed in: fit it now, while the coach is dead; it gets power with the feed."
      : "The fuse stays in the holder until its turn; it goes in last.";
  switch (code) {
    case "label-wire":
      return say(
        at.kind === "feed"
          ? `Label the wire of ${what} at ${end("from")}: its name, this channel, and "own feed".`
          : at.kind === "rewire"
            ? `Label the wire of ${what} at both ends: its name and ${end("to")}.`
            : `Label the wire of ${what} at ${end("from")}: its name, this channel, and where it goes, ${end("to", false)}.`,
        "Before it is unplugged. Read the label back aloud, and see by the record or by tugging it that it is this wire.",
      );
    case "unplug-wire":
      return say(
        at.shares === 1
          ? `Take ${what} off its splice on the circuit of ${end("from")}; the other loads of the circuit stay on it.`
          : at.fuseIsOut === 1
            ? `Take the wire of ${what} off ${end("from")} and cover the bare end.`
            : `Take the fuse of ${what} out, then its wire off ${end("from")}, and cover the bare end.`,
        at.shares === 1
          ? "Close the splice again and cover the bare end."
          : text("fuseA") === undefined
            ? "What fuse is there is not on record: write its size on the label."
            : `Its fuse (${text("fuseA")} A on record) stays with it: mark its slot in the holder with the wire's name.`,
      );
    case "move-wire":
      return say(
        `Fit the wire of ${what} to ${end("to")}, and pull at it.`,
        `It comes from ${end("from", false)}. The channel must be empty first. No joint and no added piece: where the wire does not reach without strain, stop and go back.`,
        text("fuseA") === undefined
          ? "Its fuse is not on record: find the right size before it gets power."
          : isOtherFuse
            ? `Lay ${fuse} in the holder at this channel, in place of ${text("fuseFromA") ?? "?"} A.`
            : `Its fuse goes with it: lay ${fuse} in the holder at this channel.`,
        out,
      );
    case "rewire":
      return say(
        `Lay a new wire of ${text("toGauge") ?? "the size named"} for ${what} from ${end("to")} to the load${text("lengthM") === undefined ? "" : `, about ${showQuantity(Number(at.lengthM), "length", "metric")}`}.`,
        `At least ${showQuantity(Number(at.areaMm2 ?? 0), "section", "metric")} of copper${text("fromGauge") === undefined ? "" : `, in place of ${text("fromGauge")}`}; clear of edges, heat and moving parts, clipped as the old one was.`,
        "Take the old wire off at both ends, cover both, tag it dead, and leave it where it is until the work is signed.",
        isOtherFuse
          ? `Lay ${fuse} in the holder at this channel, in place of ${text("fuseFromA") ?? "?"} A; it never goes in before the new wire.`
          : `Lay ${fuse} in the holder at this channel.`,
        out,
      );
    case "steady-feed":
      return say(
        `Give ${what} a feed of its own from ${nodeName}: a holder for ${fuse} as near to that point as it can sit, and a wire that this fuse protects.`,
        "Land it beside the feed that is there, tighten, and pull at it. Nothing switches this feed: the load has power whenever the coach has.",
        "Label the holder with the load's name. The fuse stays out until its turn.",
      );
    case "leave-detector":
      return say(
        `STOP at ${what}: this wire feeds a detector. Leave it where it is, whatever the plan says.`,
        "Correct the record or the plan, and make the papers again.",
      );
    case "label-channels":
      return say(
        `Label the changed channels of ${moduleName(before, step.module)} as they are now.`,
        takenLine(step, before, after),
        text("spare") === undefined
          ? undefined
          : `Spare, no wire and no fuse: channel ${text("spare")}. Write "spare".`,
      );
    case "change-program":
      return say(
        `Change the controller's program: what worked ${end("from", false)} for ${what} must work ${end("to", false)}, and no button may work the old channel for it.`,
        text("controls") === undefined ? undefined : `Buttons on record that work it: ${text("controls")}.`,
        "Note the old setting first. The fuse of this wire is still out, so nothing starts.",
      );
    case "energise-circuit":
      return say(
        `See that ${step.module === undefined ? "the circuit" : end("to", false)} is off, then fit ${fuse} for ${what}.`,
        "Then work its button: only this load may answer. Anything else, or nothing: fuse out.",
      );
    case "energise-feed":
      return say(
        `Fit ${fuse} in the new holder of ${what}, with somebody at the load.`,
        "It has power from now on, whatever button is pressed.",
      );
  }
}

/** The channels that a wire came to or was renewed on, each with what it feeds and its fuse. */
function takenLine(step: Step, before: CoachIndex, after: CoachIndex): string | undefined {
  if (step.parameters.taken === undefined) return undefined;
  const lines = String(step.parameters.taken)
    .split(", ")
    .map((channel) => {
      const circuit = (after.circuitsOfModule.get(step.module ?? "") ?? []).find(
        (each) => String(each.channel) === channel,
      );
      if (circuit === undefined) return `channel ${channel}`;
      const rated = circuit.fuse?.ratedA;
      const size = rated === undefined ? "fuse not on record" : `${typeof rated === "number" ? rated : rated.value} A`;
      return `channel ${channel}: ${circuitName(before, before.circuits.get(circuit.id) ?? circuit)}, ${size}`;
    });
  return `${lines.join("; ")}.`;
}
