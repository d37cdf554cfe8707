import { Invariant } from "../../quantity/index.js";
import { openChannels } from "./ground.js";
import type { ChannelMode } from "./patterns-of.js";
import type { Choice } from "./problem.js";
import type { RecordProblem } from "./problem-of.js";
import { placingAt } from "./score.js";

/** Where each circuit of the problem sits when the work is done: its channel; undefined where it sits nowhere. */
export type GivenChannels = readonly ({ readonly module: number; readonly channel: number } | undefined)[];

/** Channels an arriving circuit would rather take: those that can do nothing else, then those that can do either. */
const WANTED: Readonly<Record<"dimmed" | "switched", readonly ChannelMode[]>> = {
  dimmed: ["dims", "free"],
  switched: ["switches", "free"],
};

/** Channel numbers for a choice: who stays keeps its own; arrivals, in the record's order, take the lowest free channel of their mode. */
export function givenChannels(problem: RecordProblem, choice: Choice): GivenChannels {
  const given: ({ module: number; channel: number } | undefined)[] = problem.circuits.map((circuit, c) => {
    const placing = placingAt(problem, choice, c);
    return placing?.module === undefined || placing.isMoved
      ? undefined
      : { module: circuit.home, channel: circuit.channel };
  });
  problem.modules.forEach((module, m) => {
    const at = problem.source.patterns[m]?.[choice.patterns[m] ?? -1];
    const ground = problem.source.grounds[m];
    if (at === undefined || ground === undefined) return;
    const taken = new Set(given.flatMap((each) => (each?.module === m ? [each.channel] : [])));
    const open = openChannels(ground, at.kind?.channels ?? 0).filter((channel) => !taken.has(channel));
    problem.circuits.forEach((circuit, c) => {
      const placing = placingAt(problem, choice, c);
      if (placing?.module !== m || !placing.isMoved) return;
      const wanted = WANTED[placing.isDimmed ? "dimmed" : "switched"];
      const channel = wanted
        .map((mode) => open.find((each) => !taken.has(each) && at.modeOf(each) === mode))
        .find((each) => each !== undefined);
      if (channel === undefined)
        throw new Invariant(
          "no-channel-left",
          `${circuit.circuit} was placed on ${module.module}, which has no channel left`,
        );
      taken.add(channel);
      given[c] = { module: m, channel };
    });
  });
  return given;
}
