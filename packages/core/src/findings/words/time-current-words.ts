import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

const RUN: Readonly<Record<string, string>> = {
  feeder: "its feeder",
  wire: "the wire",
  return: "the way back",
  tail: "the load's own wire",
};

export const TIME_CURRENT_WORDS = {
  "inrush-over-fuse": (say) => ({
    title: "Fuse may open when its loads start",
    wanted:
      say.finding.parameters.limit === undefined
        ? `a start that every ${say.quantity("ratedA", "current")} fuse lets pass`
        : `a start of ${say.limit("current")} over its first ${say.quantity("atS", "time")}`,
    got:
      say.finding.parameters.got === undefined
        ? `a peak of ${say.quantity("peakA", "current")}, and no word of how soon this fuse may open`
        : `${say.got("current")} (peak ${say.quantity("peakA", "current")})`,
    remedy:
      "If it blows at switching on: a slow fuse of the same rating, or the next size where wire and channel allow",
  }),
  "fault-not-cleared": (say) => ({
    title: "A short may not open the fuse",
    wanted: `${say.limit("current")} into a short at ${say.text("end")}, so that the ${say.quantity("ratedA", "current")} fuse opens within ${say.quantity("withinS", "time")}`,
    got: say.got("current"),
    remedy: "Fit the smallest fuse that carries the loads, or thicker or shorter wire; a short would heat all of it",
  }),
  "fault-over-conductor": (say) => ({
    title: "Fuse too slow for the wire in a short",
    wanted: `${say.limit("section")} of copper in ${RUN[say.text("run")] ?? "the wire"} for what a ${say.quantity("ratedA", "current")} fuse lets through on a short of ${say.quantity("shortA", "current")}`,
    got: say.got("section"),
    remedy: "Fit a smaller or quicker fuse, or a thicker wire",
  }),
  "fault-over-tail": (say) => ({
    title: "Fuse too slow for the load's own wire in a short",
    wanted: `${say.limit("section")} of copper in the load's own wire for what the ${say.quantity("ratedA", "current")} fuse of ${say.text("circuit")} lets through on a short of ${say.quantity("shortA", "current")}`,
    got: say.got("section"),
    remedy: "Fit a smaller fuse, or a fuse of its own where the wire gets thinner",
  }),
  "not-selective": (say) => ({
    title: "The fuse before may open first",
    wanted: `that a short opens this ${say.quantity("lowerA", "current")} fuse and leaves ${say.text("upper")} (${say.quantity("upperA", "current")}) whole, up to ${say.quantity("uptoA", "current")}`,
    got:
      say.finding.verdict === "holds"
        ? "that at every current"
        : say.finding.verdict === "fails"
          ? `the other one opening first about ${say.quantity("atA", "current")}`
          : `opening times that overlap, most about ${say.quantity("atA", "current")}`,
    remedy: "Space the two ratings further apart, where both conductors allow; else more goes dark than the fault",
  }),
  "interrupt-under-fault": (say) => ({
    title: "Fuse may not be able to break a short",
    wanted: `a fuse that can break ${say.limit("current")}`,
    got: say.finding.parameters.got === undefined ? "no word of what it can break" : say.got("current"),
    remedy: "Fit a fuse that breaks this current at the battery's volts; one that cannot may burn on or burst",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
