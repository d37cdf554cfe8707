import { type ChannelOf, type Front, obstacleWords, type Plan } from "@fusebook/core/plan";
import type { CoachIndex } from "@fusebook/core/record";
import { columns, wrap } from "./columns.js";
import { money } from "./money.js";

const pickNames = (front: Front, id: string): string =>
  front.picks
    .filter((pick) => pick.plan === id)
    .map((pick) => pick.name)
    .join(", ");

/** The plans as a table, cheapest first: the named picks, or with `isWhole` the whole front. */
export function frontTable(front: Front, currency: string, width: number, isWhole: boolean): string {
  const picked = new Set(front.picks.map((pick) => pick.plan));
  const shown = isWhole ? front.plans : front.plans.filter((each) => picked.has(each.id));
  const rows = shown.map((each) => [
    each.id,
    money(each.costCents, currency),
    String(each.dims.length),
    String(each.wiresMoved),
    String(each.modulesTouched),
    `${each.minutes} min`,
    String(each.mustsLeft),
    pickNames(front, each.id),
  ]);
  const left = front.plans.length - shown.length;
  return [
    columns(
      [["plan", "cost", "lights", "wires", "modules", "time", "musts left", "pick"], ...rows],
      width,
      [1, 2, 3, 4, 5, 6],
    ),
    ...(left === 0 ? [] : [`and ${left} more that no other beats; --front lists them all`]),
  ].join("\n");
}

/** What one plan does, line by line: modules, wires, fuses. */
export function planLines(plan: Plan, index: CoachIndex, currency: string): string[] {
  const moduleName = (id: string): string => index.modules.get(id)?.name ?? id;
  const at = ({ module, channel }: ChannelOf): string => `${moduleName(module)}, channel ${channel}`;
  const circuitName = (id: string): string => {
    const circuit = index.circuits.get(id);
    const loads = (circuit?.loads ?? []).map((load) => index.loads.get(load)?.name ?? load);
    return circuit?.name ?? (loads.length > 0 ? loads.join(", ") : id);
  };
  const loadName = (id: string): string => index.loads.get(id)?.name ?? id;
  return [
    `${plan.id}: ${money(plan.costCents, currency)}, parts ${money(plan.partsCents, currency)} and labour ${money(plan.labourCents, currency)}`,
    ...plan.modules
      .filter((each) => each.isTouched)
      .map(
        (choice) =>
          `  ${moduleName(choice.module)}: ${choice.isReplaced ? `${choice.from ?? "?"} out, ${choice.to} in` : `keep ${choice.to}`}; switches ${choice.positions ?? `not known (needs ${choice.positionsNeed.join(", ")})`}; dims ${choice.enables.join(", ") || "nothing"}`,
      ),
    ...plan.moves.map((move) => `  wire of ${circuitName(move.circuit)}: from ${at(move.from)} to ${at(move.to)}`),
    ...plan.steadyFeeds.map(
      (feed) =>
        `  ${loadName(feed.load)}: off ${at(feed.from)}, on to a feed of its own from ${index.nodes.get(feed.node)?.name ?? feed.node}, ${feed.fuseA} A`,
    ),
    ...plan.rewires.map(
      (rewire) =>
        `  new wire for ${circuitName(rewire.circuit)}: ${rewire.toGauge} in place of ${rewire.fromGauge ?? "what is there"}`,
    ),
    ...plan.fuses.map(
      (change) => `  fuse of ${circuitName(change.circuit)}: ${change.fromA ?? "?"} A out, ${change.toA} A in`,
    ),
  ];
}

/** Why the wishes that this plan leaves are not met. */
export function unmetLines(plan: Plan, index: CoachIndex, width: number): string[] {
  return plan.unmet.flatMap((wish) => {
    const name = index.loads.get(wish.load)?.name ?? wish.load;
    const rules = [...new Set(wish.stoppedBy.map((obstacle) => obstacleWords(obstacle, index)))];
    return wrap(
      rules.length === 0 ? `${name}: --why "${name}" says what stops it` : `${name}: ${rules.join("; ")}`,
      width,
    );
  });
}

/** What the check took out, and what it could not look at, in sentences. */
export function cutLines(front: Front, isStopped: boolean): string[] {
  return [
    ...(front.cuts.length === 0
      ? []
      : [
          `${front.cuts.length} ${front.cuts.length === 1 ? "choice was" : "choices were"} taken out, because the coach would have been less safe after them.`,
        ]),
    ...(isStopped
      ? ["Stopped before the end: these are the best plans found so far, and the list is not complete."]
      : front.isComplete || front.unchecked.length > 0
        ? []
        : ["The list is not complete: the search ended before every plan taken out was replaced by its next best."]),
    ...(front.unchecked.length === 0
      ? []
      : [
          `Not checked by the findings as a whole, so nobody knows yet whether they are safe: ${front.unchecked.join(", ")}.`,
        ]),
  ];
}

/** What must be said of a plan that somebody chose and that the search did not check. */
export const uncheckedLine = (front: Front, chosen: Plan | undefined): string | undefined =>
  chosen !== undefined && front.unchecked.includes(chosen.id)
    ? `${chosen.id}: not checked by the findings as a whole; run fusebook check on the record after it before any work`
    : undefined;
