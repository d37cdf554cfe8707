import { type CoachIndex, policyOf } from "../record/index.js";
import type { PlanGroup, PlanInShort, WayOut, WhyNot } from "./explain-moves/index.js";
import { obstacleWords, reasonWords } from "./words.js";

type Given = Readonly<Record<string, string | number>>;

const text = (given: Given, key: string): string => String(given[key] ?? "");
const money = (cents: number): string => (cents / 100).toFixed(2);

const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;

type Named = { readonly name?: string | undefined; readonly label?: string | undefined };

function nameOf(
  index: CoachIndex,
  collection: "modules" | "circuits" | "loads" | "moduleKinds" | "nodes" | "cables",
  id: string,
): string {
  const item = (index[collection] as ReadonlyMap<string, Named>).get(id);
  return item?.name || item?.label || id;
}

const MEANS_WORDS: Readonly<Record<string, string>> = {
  moves: "moving wires to other channels",
  "steady-feeds": "feeds of their own",
  rewires: "thicker wires",
  reuse: "fitting again what is taken out",
};

const choiceWords = (given: Given, index: CoachIndex): string => {
  const isForbidden = given.isForbidden === 1;
  const what =
    text(given, "module") !== ""
      ? `${nameOf(index, "modules", text(given, "module"))}${text(given, "kind") === "" ? "" : ` as ${nameOf(index, "moduleKinds", text(given, "kind"))}`}`
      : `${nameOf(index, "circuits", text(given, "circuit"))}${text(given, "toModule") === "" ? "" : ` on ${nameOf(index, "modules", text(given, "toModule"))}`}`;
  return isForbidden ? `the job forbids ${what}` : `the job has settled ${what}`;
};

/** One thing in a conflict, as a clause that stands by itself. */
export function groupWords(group: PlanGroup, index: CoachIndex): string {
  const given = group.parameters;
  const kind = nameOf(index, "moduleKinds", text(given, "kind"));
  const module = nameOf(index, "modules", text(given, "module"));
  const circuit = nameOf(index, "circuits", text(given, "circuit"));
  const load = nameOf(index, "loads", text(given, "load"));
  switch (group.code) {
    case "wish":
      return given.wish === "must-stay-steady" ? `${load} is to stay steady` : `${load} is to dim`;
    case "budget":
      return `the budget is ${money(Number(given.budgetCents))}`;
    case "minutes":
      return `the work may take ${text(given, "maxMinutes")} minutes`;
    case "module-locked":
      return `${module} is locked`;
    case "circuit-locked":
      return `${circuit} or a load of it is locked`;
    case "kind-ruled-out":
      return `the job rules out ${kind}`;
    case "means-ruled-out":
      return `the job rules out ${MEANS_WORDS[text(given, "means")] ?? text(given, "means")}`;
    case "choice-made":
      return choiceWords(given, index);
    case "move-not-said":
      return `nobody has said that the program lets ${circuit} move`;
    case "feed-not-said":
      return `nobody has said whether ${load} has a switch of its own, so that it might be live all the time`;
    case "load-must-not-dim":
      return `${load} must not dim: it ${reasonWords(text(given, "why"))}`;
    case "load-not-known":
      return `${load} is not known to be fit for dimming: it ${reasonWords(text(given, "why"))}`;
    case "current-unknown":
      return `what ${circuit} draws is not known: fill ${text(given, "need")}`;
    case "channel-not-recorded":
      return `nobody has looked at channel ${text(given, "channel")} of ${module}`;
    case "dimmed-rating":
      return `${kind} dims no more on a channel than its sheet says`;
    case "switched-rating":
      return `${kind} switches no more on a channel than its sheet says`;
    case "total-rating":
      return `${kind} carries no more in all than its sheet says`;
    case "channel-fuse-limit":
      return `${kind} allows no larger fuse on a channel than its sheet says`;
    case "kind-does-not-fit":
      return `${kind} does not take every position`;
    case "kind-not-to-be-had":
      return `${kind} cannot be bought, or has no price on record`;
    case "kind-blocks":
      return `the channels of ${kind} dim only in the blocks and settings of its sheet`;
    case "reach":
      return `the wire of ${circuit} reaches no further without a joint`;
    case "control-fixed":
      return `the program of ${text(given, "name")} is fixed, so what it works stays on its channels`;
    case "program-fixed":
      return `the program does not let ${circuit} move`;
    case "feeder-limit":
      return `${text(given, "name")} carries no more than its rating and its protection allow`;
  }
}

/** What giving up one group means in work or in words, `plan` being the plan it then comes to. */
function givingUp(group: PlanGroup, plan: PlanInShort, index: CoachIndex): string {
  const given = group.parameters;
  const circuit = nameOf(index, "circuits", text(given, "circuit"));
  const move = plan.moves.find((each) => each.circuit === given.circuit);
  const moved =
    move === undefined
      ? ""
      : move.from === move.to
        ? ` and move it to another channel of ${nameOf(index, "modules", move.to)} (${move.minutes} min)`
        : ` and move it to a channel of ${nameOf(index, "modules", move.to)} (${move.minutes} min)`;
  switch (group.code) {
    case "wish":
      if (given.wish === "must-stay-steady")
        return given.mayDim === 1
          ? `let ${nameOf(index, "loads", text(given, "load"))} dim`
          : `leave ${nameOf(index, "loads", text(given, "load"))} where it is not steady`;
      return `do without dimming ${nameOf(index, "loads", text(given, "load"))}`;
    case "budget":
      return `raise the budget from ${money(Number(given.budgetCents))} to ${money(plan.costCents)}`;
    case "minutes":
      return `allow ${plan.minutes} minutes in place of ${text(given, "maxMinutes")}`;
    case "module-locked":
      return `unlock ${nameOf(index, "modules", text(given, "module"))}`;
    case "circuit-locked":
      return `unlock ${circuit}${moved}`;
    case "kind-ruled-out":
      return `allow ${nameOf(index, "moduleKinds", text(given, "kind"))}`;
    case "means-ruled-out":
      return `allow ${MEANS_WORDS[text(given, "means")] ?? text(given, "means")}`;
    case "choice-made":
      return `take back that ${choiceWords(given, index)}`;
    case "move-not-said":
      return `make sure that the program lets ${circuit} move${moved}`;
    case "feed-not-said":
      return `make sure that ${nameOf(index, "loads", text(given, "load"))} has a switch of its own and may be live all the time, and give it a feed of its own`;
    default:
      // What is physical is never given up: a way out that names it is our mistake, and says so.
      return `(cannot be given up: ${groupWords(group, index)})`;
  }
}

/** What the plan does beside, in a few words. */
function doing(plan: PlanInShort, given: readonly PlanGroup[], index: CoachIndex): string[] {
  const said = new Set(given.map((group) => group.parameters.circuit));
  return [
    ...plan.fits.map(
      ({ module, kind }) => `fits ${nameOf(index, "moduleKinds", kind)} at ${nameOf(index, "modules", module)}`,
    ),
    ...plan.setsAnew.map(({ module }) => `sets the switches of ${nameOf(index, "modules", module)} anew`),
    ...plan.moves
      .filter(({ circuit }) => !said.has(circuit))
      .map(({ circuit, from, to }) =>
        from === to
          ? `moves ${nameOf(index, "circuits", circuit)} to another channel of ${nameOf(index, "modules", to)}`
          : `moves ${nameOf(index, "circuits", circuit)} to ${nameOf(index, "modules", to)}`,
      ),
    ...plan.steadyFeeds
      .filter((load) => !given.some(({ code, parameters }) => code === "feed-not-said" && parameters.load === load))
      .map((load) => `gives ${nameOf(index, "loads", load)} a feed of its own`),
    ...plan.rewires.map((circuit) => `changes the wire of ${nameOf(index, "circuits", circuit)}`),
  ];
}

const planInWords = (plan: PlanInShort, given: readonly PlanGroup[], index: CoachIndex): string => {
  const { currency } = policyOf(index.record);
  const does = doing(plan, given, index);
  return `the plan then costs ${money(plan.costCents)} ${currency} and takes about ${plan.minutes} minutes${does.length === 0 ? "" : `; it ${listed(does)}`}`;
};

/** One way out in a sentence. */
export function wayOutWords(way: WayOut, index: CoachIndex): string {
  const what = listed(way.groups.map((group) => givingUp(group, way.plan, index)));
  return `${what.charAt(0).toUpperCase()}${what.slice(1)}: ${planInWords(way.plan, way.groups, index)}.`;
}

/** Why a wish is not met, in sentences: the outcome, what is in whose way, the ways out (cheapest first), then each rule by itself. */
export function whyNotWords(why: WhyNot, index: CoachIndex): string[] {
  const name = nameOf(index, "loads", why.load);
  const { outcome } = why;
  const rules =
    why.rules.length === 0
      ? []
      : ["The rules that stop it where it is:", ...why.rules.map((rule) => `- ${obstacleWords(rule, index)}.`)];
  switch (outcome.kind) {
    case "can-be":
      return [
        `The wish for ${name} can be met with all that is asked, every other must of the best plan kept: ${planInWords(outcome.plan, [], index)}.`,
        ...rules,
      ];
    case "conflict":
      return [
        `The wish for ${name} is not met, because these cannot all hold:`,
        ...outcome.groups.map(
          (group) => `- ${groupWords(group, index)}${group.nature === "physical" ? " (a fact)" : ""};`,
        ),
        ...(outcome.waysOut.length === 0
          ? ["Nothing that may be given up meets it."]
          : [
              "The cheapest way out:",
              ...outcome.waysOut.slice(0, 1).map((way) => `- ${wayOutWords(way, index)}`),
              ...(outcome.waysOut.length > 1 ? ["Or:"] : []),
              ...outcome.waysOut.slice(1).map((way) => `- ${wayOutWords(way, index)}`),
            ]),
        ...rules,
      ];
    case "physical":
      return [
        `No change of plan can meet the wish for ${name}. These facts stand against it together:`,
        ...outcome.groups
          .filter((group) => group.nature === "physical")
          .map((group) => `- ${groupWords(group, index)};`),
        ...rules,
      ];
    case "no-wish":
      return [`Nothing is asked of ${name}.`];
    case "not-on-module":
      return [`No module channel that is on record feeds ${name}.`, ...rules];
    case "stopped":
      return [`Stopped before it was known why the wish for ${name} is not met.`, ...rules];
  }
}
