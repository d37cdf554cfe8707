import type { BlockReason } from "../dimming/index.js";
import { showQuantity, type UnitChoice } from "../quantity/index.js";
import { type CoachIndex, policyOf } from "../record/index.js";
import type { StayReason } from "./moves/index.js";
import type { Cut, Obstacle, Plan } from "./plan.js";

/** Why a load must not dim, or is not known to be fit for it, as half a sentence after the load's name. */
const REASON_WORDS: Readonly<Record<BlockReason["code"], string>> = {
  "follows-duty": "follows the duty",
  "glows-down": "glows down with the duty",
  "linear-regulator": "has a linear regulator",
  "stated-on-record": "may dim, as stated on record",
  "statement-forbids": "is stated on record not to take PWM",
  "repeated-inrush":
    "has a driver that draws its inrush at every pulse; it may dim only if its maker or a reading says so",
  "statement-unnamed": "is said to take PWM, but the record names no statement or reading that says so",
  "own-switch-electronic": "has a touch or electronic switch of its own, which PWM upsets",
  "own-switch": "has a switch of its own; somebody must see that it stands PWM",
  moves: "turns or moves something",
  "opens-or-holds": "opens or holds something by a coil",
  "signal-not-power": "is a signal, not power",
  "electronics-inside": "has electronics inside",
  "anything-may-be-plugged-in": "is an outlet: anything may be plugged in",
  "life-safety": "is a life-safety detector",
  heats: "heats",
  "class-unknown": "is of a class that is not on record",
  "wished-steady": "was asked to stay steady",
  "loads-not-listed": "has no load listed and is not marked spare",
  "load-not-in-record": "names a load that is not in the record",
  "channel-not-recorded": "is not in the record",
};

/** Why a circuit stays where it is, as half a sentence. */
const STAY_WORDS: Readonly<Record<StayReason, string>> = {
  "not-on-module": "no module channel on record feeds it",
  spare: "there is nothing on it",
  "not-said": "nobody has said that the program lets it move",
  "program-fixed": "a control whose program is fixed works it",
  "has-detector": "it feeds a life-safety detector, which is never moved",
  "shares-channel": "it shares its channel with another circuit",
  "module-locked": "its module is locked",
  "circuit-locked": "it or a load of it is locked",
  "moves-ruled-out": "the job rules out moving wires",
};

type Given = Readonly<Record<string, string | number>>;

/** Why a load must not dim, or is not known to be fit for it, as half a sentence after its name. */
export const reasonWords = (why: string): string => REASON_WORDS[why as BlockReason["code"]] ?? why;

const reason = (given: Given): string => reasonWords(String(given.why ?? ""));
const text = (given: Given, key: string): string => String(given[key] ?? "");
const amps = (given: Given, key: string, units: UnitChoice): string =>
  typeof given[key] === "number" ? showQuantity(given[key], "current", units) : "an unknown current";
const money = (cents: string | number | undefined): string =>
  typeof cents === "number" ? (cents / 100).toFixed(2) : "an unknown sum";
const count = (given: Given, key: string): string =>
  given[key] === undefined ? "an unknown number of" : String(given[key]);

function nameOf(index: CoachIndex, collection: "modules" | "circuits" | "loads", id: string): string {
  const item = (index[collection] as ReadonlyMap<string, { name?: string | undefined; label?: unknown }>).get(id);
  return item?.name ?? (typeof item?.label === "string" && item.label !== "" ? item.label : id);
}

function onChannel(given: Given, index: CoachIndex): string {
  const what = text(given, "name") || (text(given, "circuit") && nameOf(index, "circuits", text(given, "circuit")));
  return what ? `${what} (channel ${given.channel})` : `channel ${given.channel}`;
}

/** What stops a wish, as a sentence without its full stop. `index`: the record the plan is for. */
export function obstacleWords(
  obstacle: Obstacle,
  index: CoachIndex,
  units: UnitChoice = policyOf(index.record).unitsShown,
): string {
  const given = obstacle.parameters;
  const kind = text(given, "kindName") || text(given, "kind");
  const module = nameOf(index, "modules", text(given, "module"));
  const channel = `channel ${text(given, "channel")}`;
  switch (obstacle.code) {
    case "load-must-not-dim":
      return `it must not dim: it ${reason(given)}`;
    case "load-unknown":
      return `it is not known to be fit for dimming: it ${reason(given)}`;
    case "load-has-detector":
      return "it is a life-safety detector, which is never dimmed or moved";
    case "load-left-spoiled":
      return `it stays on a dim block that is enabled on ${module}`;
    case "kind-cannot-dim":
      return `${kind} cannot dim`;
    case "kind-unknown":
      return `what kind ${module} is, is not on record`;
    case "kind-forbidden":
      return `the job rules out ${kind}`;
    case "kind-not-obtainable":
      return `${kind} cannot be bought any more and none is in stock`;
    case "kind-has-no-price":
      return `${kind} has no price on record, other kinds have`;
    case "no-kind-fits":
      return `${kind} does not take the place of ${nameOfKind(index, text(given, "present"))}`;
    case "switches-other-side":
      return `${kind} switches the ${side(given.side)}, this position the ${side(given.presentSide)}`;
    case "block-has-steady-load":
      return `${onChannel(given, index)} is in the same dim block of ${kind} and ${reason(given)}`;
    case "block-has-unknown-load":
      return `${onChannel(given, index)} is in the same dim block of ${kind} and ${reason(given)}`;
    case "channel-not-in-block":
      return `no dim block of ${kind} holds ${channel}`;
    case "setting-not-listed":
      return `the sheet of ${kind} lists no switch setting that dims ${channel} without dimming a load that must not dim`;
    case "setting-not-known":
      return `which dim blocks are enabled on ${module} could not be read from its switches`;
    case "current-unknown":
      return `the current on ${channel} is not known: fill ${text(given, "need")}`;
    case "rating-unknown":
      return `the sheet of ${kind} lacks a figure: fill ${text(given, "need")}`;
    case "over-dimmed-rating":
      return `${channel} may draw ${amps(given, "currentA", units)}; ${kind} dims at most ${amps(given, "ratedA", units)} a channel`;
    case "over-switched-rating":
      return `${channel} may draw ${amps(given, "currentA", units)}; ${kind} switches at most ${amps(given, "ratedA", units)} a channel`;
    case "over-module-rating":
      return `everything on may draw ${amps(given, "currentA", units)}; ${kind} carries at most ${amps(given, "ratedA", units)} in all`;
    case "fuse-over-channel":
      return given.need === undefined
        ? `${channel} has a ${amps(given, "fuseA", units)} fuse, ${kind} allows ${amps(given, "channelA", units)}, and no size that small carries the load`
        : `${channel} has a ${amps(given, "fuseA", units)} fuse, ${kind} allows ${amps(given, "channelA", units)}, and the load is not known well enough to fit less: fill ${text(given, "need")}`;
    case "not-on-module":
      return "no module channel that is on record feeds it";
    case "module-locked":
      return `${module} is locked`;
    case "over-budget":
      return `the cheapest plan that does it costs ${money(given.costCents)}; the budget is ${money(given.budgetCents)}`;
    case "over-minutes":
      return `the cheapest plan that does it takes ${count(given, "minutes")} minutes; the limit is ${count(given, "maxMinutes")}`;
    case "cut-by-check":
      return `with ${kind} on ${module} the coach would have a new finding that must be put right`;
    case "dearer-than-chosen":
      return Number(given.moreCents) > 0
        ? `plan ${text(given, "plan")} does it for ${money(given.moreCents)} more`
        : `plan ${text(given, "plan")} does it instead of something else`;
    case "circuit-stays":
      return `${nameOf(index, "circuits", text(given, "circuit"))} stays on its channel: ${STAY_WORDS[given.why as StayReason] ?? text(given, "why")}`;
    case "nothing-in-reach":
      return `the wire of ${nameOf(index, "circuits", text(given, "circuit"))} reaches no other module without a joint, as far as is on record`;
    case "no-channel-free":
      return `${module} has no spare channel and nothing on it may move`;
    case "nothing-dims-there":
      return `neither what stands at ${module} nor anything that may be fitted there dims`;
    case "module-full":
      return `${module} as ${kind} has ${amps(given, "leftA", units)} left; the circuit may draw ${amps(given, "currentA", units)}`;
  }
}

const side = (which: string | number | undefined): string => (which === "low" ? "return" : "positive");
const nameOfKind = (index: CoachIndex, id: string): string =>
  [...index.moduleKinds.values()].find((kind) => kind.id === id)?.name ?? id;

/** A plan in sentences: what is done to each module, fuses, money and time, what it gives, what stays unmet. */
export function planWords(plan: Plan, index: CoachIndex): string[] {
  const { currency } = policyOf(index.record);
  const touched = plan.modules.filter((choice) => choice.isTouched);
  const sentences: string[] = [];
  for (const choice of touched) {
    const module = nameOf(index, "modules", choice.module);
    const blocks =
      choice.enables.length === 0
        ? "no dim block enabled"
        : `dim block${choice.enables.length > 1 ? "s" : ""} ${choice.enables.join(", ")} enabled`;
    const bank =
      choice.positions === undefined
        ? `switches not known yet: fill ${choice.positionsNeed.join(", ")}`
        : choice.positions === ""
          ? "no switches to set"
          : `switches ${choice.positions}`;
    sentences.push(
      choice.isReplaced
        ? `${module}: fit ${nameOfKind(index, choice.to)} in place of ${choice.from === undefined ? "what is there" : nameOfKind(index, choice.from)}, ${blocks}, ${bank}.`
        : `${module}: keep it and set its switches anew, ${blocks}, ${bank}.`,
    );
  }
  for (const change of plan.fuses)
    sentences.push(
      `${nameOf(index, "circuits", change.circuit)}: fit a ${change.toA} A fuse in place of ${change.fromA === undefined ? "what is there" : `${change.fromA} A`}, because ${change.because === "wire-changed" ? "its wire is changed" : "the new module allows no more"}.`,
    );
  for (const move of plan.moves)
    sentences.push(
      `${nameOf(index, "circuits", move.circuit)}: move it from channel ${move.from.channel} of ${nameOf(index, "modules", move.from.module)} to channel ${move.to.channel}${move.to.module === move.from.module ? "" : ` of ${nameOf(index, "modules", move.to.module)}`}; its fuse and its label go with it.`,
    );
  for (const feed of plan.steadyFeeds)
    sentences.push(
      `${nameOf(index, "loads", feed.load)}: take it off channel ${feed.from.channel} of ${nameOf(index, "modules", feed.from.module)} on to a feed of its own from ${index.nodes.get(feed.node)?.name ?? feed.node}, ${feed.fuseA} A fuse; it is then live all the time.`,
    );
  for (const rewire of plan.rewires)
    sentences.push(
      `${nameOf(index, "circuits", rewire.circuit)}: change its wire${rewire.fromGauge === undefined ? "" : ` from ${rewire.fromGauge}`} to ${rewire.toGauge}, because the fuse wants more copper.`,
    );
  if (touched.length === 0 && plan.wiresMoved === 0) sentences.push("Everything stays as found.");
  sentences.push(
    `Parts ${money(plan.partsCents)}, labour ${money(plan.labourCents)}, together ${money(plan.costCents)} ${currency} before tax; about ${plan.minutes} minutes.`,
  );
  if (plan.dims.length > 0) sentences.push(`Dims ${plan.dims.map((load) => nameOf(index, "loads", load)).join(", ")}.`);
  if (plan.spoiled.length > 0)
    sentences.push(
      `Leaves on an enabled dim block, though they must not dim: ${plan.spoiled.map((load) => nameOf(index, "loads", load)).join(", ")}.`,
    );
  if (plan.detectors.length > 0)
    sentences.push(
      `Without power during the work: ${plan.detectors.map((load) => nameOf(index, "loads", load)).join(", ")}. A life-safety detector does not belong on a switched channel; the plan neither dims nor moves it.`,
    );
  if (plan.costNeeds.length > 0)
    sentences.push(`Counted as nothing because the record lacks it: ${plan.costNeeds.join(", ")}.`);
  return sentences;
}

/** What the check took out, and why, in one sentence. */
export const cutWords = (cut: Cut, index: CoachIndex): string =>
  `${cut.modules.map((module) => nameOf(index, "modules", module)).join(" and ")}: a choice was taken out because the coach would then have ${cut.findings
    .map((finding) => `${finding.code} (${finding.severity}) at ${finding.subject}`)
    .join(", ")}.`;
