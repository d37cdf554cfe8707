import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

const RUN: Readonly<Record<string, string>> = {
  out: "the wire",
  return: "the return wire",
  tail: "the load's own wire",
};

export const FUSE_WORDS = {
  "fuse-over-conductor": (say) => ({
    title: "Fuse too large for the wire",
    wanted: `a fuse of ${say.limit("current")} for ${RUN[say.text("run")] ?? "the wire"}`,
    got: say.got("current"),
    remedy: "Do not energise: fit the smaller fuse, or a thicker wire",
  }),
  "fuse-over-tail": (say) => ({
    title: "Fuse too large for the load's own wire",
    wanted: `a fuse of ${say.limit("current")} for the load's own thinner wire`,
    got: `${say.got("current")} on ${say.text("circuit")}`,
    remedy: "Fit a smaller fuse, or a fuse of its own where the wire gets thinner",
  }),
  "fuse-over-channel": (say) => ({
    title: "Fuse too large for the channel",
    wanted: `a fuse of ${say.limit("current")} on this channel`,
    got: say.got("current"),
    remedy: "Do not energise: fit a fuse that the channel allows; if it then blows, the load belongs elsewhere",
  }),
  "fuse-over-load-limit": (say) => ({
    title: "Fuse larger than the load allows",
    wanted: `a fuse of ${say.limit("current")}, as the load states`,
    got: `${say.got("current")} on ${say.text("circuit")}`,
    remedy: "Fit the smaller fuse, or an in-line fuse at the load",
  }),
  "load-over-fuse": (say) => ({
    title: "Loads draw more than the fuse",
    wanted: `loads of ${say.limit("current")}`,
    got: say.got("current"),
    remedy: "Do not fit a larger fuse before the wire is checked; move a load to another circuit",
  }),
  "continuous-load-over-fuse": (say) => ({
    title: "Lasting load too near the fuse's rating",
    wanted: `loads left on for hours of ${say.limit("current")} on a ${say.quantity("ratedA", "current")} fuse`,
    got: say.got("current"),
    remedy: "Take the next fuse size if wire and channel allow it, else move a load",
  }),
  "fuse-rating-nonstandard": (say) => {
    const [below, above] = [say.text("below"), say.text("above")];
    const sizes = [below === "0" ? "" : `${below} A`, above === "Infinity" ? "" : `${above} A`].filter(Boolean);
    return {
      title: "Fuse size that is not made",
      wanted: `a size that is made${sizes.length === 0 ? "" : `, such as ${sizes.join(" or ")}`}${say.finding.source.how === "memory" ? " (sizes from memory)" : ""}`,
      got: say.quantity("got", "current"),
      remedy: "Read the print on the fuse again",
    };
  },
  "fuse-type-wrong": (say) => ({
    title: "Wrong type of fuse",
    wanted: `a ${say.text("wanted")} fuse, which ${say.text("kind")} takes`,
    got: `a ${say.text("got")} fuse`,
    remedy: "Fit the right type in the same rating",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
