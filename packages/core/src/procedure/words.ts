import { showQuantity } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import { moduleName } from "./names.js";
import type { Procedure, Step } from "./procedure.js";
import { type StepWords, say, sentence } from "./say.js";
import { isStepCode } from "./step-codes.js";
import { fuseLines, stepNames } from "./step-names.js";
import { switchLines } from "./switch-lines.js";
import { wireStepWords } from "./wire-words.js";

/** What a section is called. */
export function sectionWords(code: Procedure["sections"][number]["code"]): string {
  switch (code) {
    case "prepare":
      return "Prepare";
    case "isolate":
      return "Make it dead";
    case "exchange":
      return "Exchange";
    case "energise":
      return "Bring power back";
    case "prove":
      return "Prove";
    case "close":
      return "Close up";
  }
}

/** What every supply of this kind asks, where the record's own words do not say it. Common practice, no source. */
function supplyHow(kind: string, how: string): string | undefined {
  if (kind === "charger")
    return /shore/i.test(how) && /licen[cs]ed/i.test(how)
      ? undefined
      : "Unplug the shore cord; the mains side is for a licensed electrician only.";
  if (kind === "solar") return "Panels give volts as long as light falls on them.";
  if (kind === "alternator") return /key/i.test(how) ? undefined : "Engine off, key out and in your pocket.";
  return 'Tag it "people at work" and keep its key in your pocket; where there is no switch, take off the negative first.';
}

/** One step as what the hand does. `before`: the coach as found; `after`: as the plan leaves it. */
export function stepWords(step: Step, before: CoachIndex, after: CoachIndex): StepWords {
  if (!isStepCode(step.code)) return { text: step.code };
  const at = step.parameters;
  const names = stepNames(step, before, after);
  const { module, supply, place } = names;
  const text = (key: string): string | undefined => (at[key] === undefined ? undefined : String(at[key]));
  switch (step.code) {
    case "photograph":
      return say(
        `Photograph ${module} in ${names.modulePlace}: the whole module, its switches close up, every label, every connector with its wires.`,
        text("positionsFound") === undefined
          ? "Its switch positions are not on record: write them down now."
          : `On record its switches stand at ${text("positionsFound")} (1 is ON, 0 is OFF, ? not read).`,
      );
    case "read-labels":
      return say(
        `Read every label of ${module} aloud against the book and write down each that differs.`,
        text("labels") === undefined ? "No label is on record." : `On record: ${text("labels")}.`,
      );
    case "note-what-is-on":
      return say(
        "Walk through the coach and write down what is on and how each thing stands: slides, lifts, awning, valves, taps.",
      );
    case "tell-owner":
      return say(
        `Tell the owner that the coach will be without power for about ${at.minutes} minutes.`,
        text("circuits") === undefined ? undefined : `Being worked on: ${text("circuits")}.`,
        "The refrigerator, alarms and anything kept on charge go dead too.",
      );
    case "detectors-lose-feed":
      return say(
        `Keep people out of the coach, or set up a battery alarm, while these have no power: ${text("detectors")}.`,
        "A detector is never bypassed, dimmed or moved by this work.",
      );
    case "lay-out-parts":
      return say(
        "Lay out the parts of the parts list and check each against its sheet.",
        `New modules: ${at.modules}.`,
      );
    case "lay-out-tools":
      return say("Lay out the tools of the tools list and check the meter, its leads and its battery.");
    case "isolate-supply":
      return say(
        at.kind === "battery"
          ? `Open the battery isolation of ${supply}: ${text("what")}, in ${place}.`
          : `Cut off ${supply}: ${text("what")}, in ${place}.`,
        text("how") === undefined ? undefined : sentence(text("how") ?? ""),
        supplyHow(String(at.kind), text("how") ?? ""),
      );
    case "isolation-unknown":
      return say(
        `STOP at ${supply}: the record does not say what makes it dead. Find it, write it in the record, and go no further until then.`,
        supplyHow(String(at.kind), text("how") ?? ""),
      );
    case "no-supply-on-record":
      return say(
        "STOP: no supply is on record. Find every battery, charger, alternator feed and panel, and record how each is cut off, before any work.",
      );
    case "remote-starts-off":
      return say(
        `Switch off at its own panel, so that none starts by itself: ${text("loads")}.`,
        "Write down how each stood.",
      );
    case "loads-off":
      return say("Switch every load off at its own switch or button, so that the isolation opens without current.");
    case "wait-for-capacitors":
      return say(
        "Wait five minutes.",
        "Inverters and dimmers hold a charge; the dead test shows whether it is gone. The time is common practice, no source.",
      );
    case "prove-meter":
      return say(
        "Prove the meter: read volts across the battery posts, which stay live.",
        step.expect.length === 0 ? "No battery is on record: use any battery known to be charged." : undefined,
      );
    case "dead-test":
      return say(
        "Read volts from each point below to battery negative, with a long lead where needed; a local ground may be open and lie.",
        `Dead is at most ${showQuantity(Number(at.limitV ?? 0), "voltage", "metric")}: a meter picks up a little and capacitors keep a little (common practice, no source).`,
        text("withoutFeed") === undefined
          ? undefined
          : `Where the feed sits is not on record, find it and read there too: ${(text("withoutFeed") ?? "")
              .split(",")
              .map((id) => moduleName(before, id))
              .join(", ")}.`,
      );
    case "prove-meter-again":
      return say(
        "Prove the meter again across the battery posts: a meter that died in between would have read dead too.",
      );
    case "open-place":
      return say(`Open ${place}.`, text("reachedBy") === undefined ? undefined : sentence(text("reachedBy") ?? ""));
    case "mark-connectors":
      return say(
        `Mark each connector of ${module} with its name, then unplug them in that order${text("connectors") === undefined ? "" : `: ${text("connectors")}`}.`,
        "Pull on the housing, not on the wires.",
      );
    case "take-fuses":
      return say(
        `Take out the fuses of ${module} and lay each in a holder marked with its channel.`,
        fuseLines(step, before, before),
      );
    case "remove-module":
      return say(
        `Take the feed off ${module}${names.feedNode === undefined ? "" : ` (${names.feedNode})`}, cover its end, then take the module (${names.fromKind}) out.`,
        names.feedNode === undefined
          ? "Where its feed lands is not on record: write it down as it comes off."
          : undefined,
      );
    case "set-bank":
      return say(
        `Set the switches of ${module} to ${text("positions")} now, before it has power, and read them back aloud.`,
        switchLines(step, after),
        at.address === undefined ? undefined : `That is address ${at.address}.`,
        text("enables") === undefined ? "No dim block is enabled." : `Dim blocks enabled: ${text("enables")}.`,
        text("found") === undefined ? undefined : `Found at ${text("found")}.`,
      );
    case "set-bank-unknown":
      return say(
        `STOP at ${module}: how its switches must stand is not known. Do not give it power until it is.`,
        `Needed in the record: ${text("needs") || "the bank code and the address"}.`,
      );
    case "no-bank":
      return say(
        `Check that ${module} has no switches to set.`,
        at.address === undefined ? undefined : `Its address must be ${at.address}; see its sheet for how it takes one.`,
      );
    case "fit-module":
      return say(
        text("reusedFrom") === undefined
          ? `Fit ${names.toKind} as ${module} in the old place and screw it down.`
          : `Fit the ${names.toKind} that came out of ${moduleName(before, text("reusedFrom"))} as ${module} and screw it down.`,
        names.feedNode === undefined ? "Leave its feed off." : `Put its feed on (${names.feedNode}) and tighten it.`,
      );
    case "seat-harness": {
      const rows = Number(at.pinMapRows ?? 0);
      return say(
        `Seat the harness of ${module}${text("connectors") === undefined ? "" : `: ${text("connectors")}`}; push until each catch clicks.`,
        rows === 0
          ? "The connectors are the same as before."
          : "The connectors differ: move each wire by the pin map, one at a time, and tick it.",
        Number(at.unknownPins ?? 0) > 0
          ? `${at.unknownPins} of the map's ${rows} rows lack a pin on record: where a channel in use is among them, stop and find it first.`
          : undefined,
      );
    }
    case "hold-feed":
      return say(
        `Leave the feed of ${module} off its stud, cover its end, leave the connectors unplugged, and tag it.`,
        "It gets no power before its switches are known and set.",
      );
    case "sort-fuses":
      return say(
        Number(at.screwed ?? 0) > 0
          ? `Screw in the bolted fuses of ${module} now, while it is dead; keep its other fuses in their holder by channel.`
          : `Sort the fuses of ${module} in their holder by channel; they go in later, one at a time.`,
        fuseLines(step, before, after),
      );
    case "change-fuse":
      return say(
        `Fit a ${at.toA} A fuse for ${after.circuits.get(step.circuit ?? "")?.name ?? step.circuit}${at.fromA === undefined ? "" : ` in place of ${at.fromA} A`}.`,
      );
    case "label-wire":
    case "unplug-wire":
    case "move-wire":
    case "rewire":
    case "steady-feed":
    case "leave-detector":
    case "label-channels":
    case "change-program":
    case "energise-circuit":
    case "energise-feed":
      return wireStepWords(step.code, step, before, after);
    case "label-module":
      return say(
        at.isReplaced === 1
          ? `Stick the new label strip on ${module} and the address and switch positions beside it; keep the old label.`
          : `Write the new switch positions beside the old ones on ${module}'s label.`,
      );
    case "check-screws":
      return say(`Check every screw and stud of ${module} for tightness, and pull gently at each wire.`);
    case "clear-away":
      return say(
        "Count the tools out, look for loose strands and bare ends, and send everybody to their place; no charging source is on yet.",
      );
    case "energise-battery":
      return say(
        `Close the battery isolation of ${supply}${text("what") === undefined ? "" : `: ${text("what")}, in ${place}`}.`,
        "The fuses of the modules worked on, and of moved wires, are still out. Everything else comes alive now. Smoke, smell or a spark that stays: open it again at once.",
      );
    case "feed-module":
      return say(
        `Read the feed of ${module}${names.feedNode === undefined ? "" : ` at ${names.feedNode}`} with its fuses out, and look at its lamps.`,
        at.dropMaxV === undefined
          ? "What it must read is not known: the record lacks its feed or the battery."
          : `Not more than ${showQuantity(Number(at.dropMaxV), "voltage", "metric")} below what you just read at the battery. If a lamp says the switch setting is not valid, go back.`,
      );
    case "energise-module":
      return say(
        `See that every channel of ${module} is off, then fit its fuses one at a time from channel 1 up, and wait three seconds after each.`,
        "Where a channel's lamp is lit, leave its fuse out until you know why. A bolted fuse is never fitted live.",
        fuseLines(step, before, after),
      );
    case "energise-held":
      return say(
        `Leave ${module} without power: its switches are not known.`,
        `Needed in the record: ${text("needs") || "the bank code and the address"}.`,
      );
    case "energise-supply":
      return say(
        `Put ${supply} back${text("what") === undefined ? "" : `: ${text("what")}, in ${place}`}.`,
        step.expect.length === 0 ? "What it must give is not on record." : undefined,
        at.kind === "charger" ? "Plug the shore cord in last." : undefined,
      );
    case "run-tests":
      return say("Work through the test sheet from the top and write in every reading.");
    case "watch-movers":
      return say("Run each of these once, with somebody at it, and see that it moves the right way and stops.");
    case "test-detectors":
      return say(
        `Press the test button of each: ${text("loads")}.`,
        "Each must sound before anybody sleeps in the coach.",
      );
    case "refit-covers":
      return say(`Refit the cover of ${module}; no wire pinched.`);
    case "check-labels":
      return say(`Check each label of ${module} against the book.`);
    case "keep-old-part":
      return say(
        `Tag the old part of ${module} (${names.fromKind}) with coach, module, address and date, and keep it until the work is signed.`,
      );
    case "close-place":
      return say(`Close ${place} as it was.`);
    case "set-back":
      return say(
        "Set everything back as it was noted at the start: switches, taps, valves, and what was switched off at its own panel.",
        "Nothing goes on with nobody at it.",
      );
    case "write-book":
      return say(
        "Write in the record what was done: serial numbers, switch positions seen, addresses answered, readings, fuses.",
      );
    case "show-owner":
      return say("Show the owner what changed, what is not proved yet, and where the book lies.");
  }
}
