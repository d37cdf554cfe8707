import type { ChannelOf, Plan } from "@fusebook/core/plan";
import { figureValue } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";
import type { WireChangeView } from "../packet/packet-view.js";
import { bladePatch } from "./fuse-patch-of.js";
import { feedsOf, moduleName } from "./names.js";

/** Every wire that the plan puts elsewhere, feeds anew or replaces: what it feeds, from where, to where, with which fuse. */
export function wireChangesOf(plan: Plan, before: CoachIndex, after: CoachIndex): WireChangeView[] {
  const at = ({ module, channel }: ChannelOf): string => {
    const found = before.modules.get(module);
    return `${found === undefined ? module : moduleName(before, found)}, channel ${channel}`;
  };
  const nameOf = (id: string): string => {
    const circuit = before.circuits.get(id);
    return circuit === undefined ? id : feedsOf(before, circuit);
  };
  const fuseOf = (id: string) => {
    const rated = after.circuits.get(id)?.fuse?.ratedA;
    return bladePatch(rated === undefined ? undefined : figureValue(rated));
  };
  return [
    ...plan.moves.map((move) => ({
      what: nameOf(move.circuit),
      from: at(move.from),
      to: at(move.to),
      fuse: fuseOf(move.circuit),
    })),
    ...plan.steadyFeeds.map((feed) => ({
      what: before.loads.get(feed.load)?.name ?? feed.load,
      from: at(feed.from),
      to: `a feed of its own from ${before.nodes.get(feed.node)?.name ?? feed.node}, live all the time`,
      fuse: bladePatch(feed.fuseA),
    })),
    ...plan.rewires.map((rewire) => ({
      what: nameOf(rewire.circuit),
      from: rewire.fromGauge ?? "the wire that is there",
      to: `a new wire of ${rewire.toGauge}`,
      fuse: fuseOf(rewire.circuit),
    })),
  ];
}

/** Why a fuse changes, in words. */
export const fuseBecause = (because: Plan["fuses"][number]["because"]): string => {
  switch (because) {
    case "fuse-over-channel":
      return "the new module allows no more on a channel";
    case "wire-changed":
      return "the wire is another";
  }
};
