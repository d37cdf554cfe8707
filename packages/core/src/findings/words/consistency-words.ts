import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

const WHY: Readonly<Record<string, readonly [got: string, remedy: string]>> = {
  "no-start": ["no channel and no fuse position", "Say which channel or fuse it starts from"],
  "no-channel": ["a module without a channel number", "Read the channel off the module"],
  "return-on-positive": ["a return that lands on the positive side", "Say which ground or return bar it lands on"],
  "joins-rails": [
    "a cable from the positive side straight to the return side",
    "Keep the power off; trace the cable and correct the record or the coach",
  ],
  "same-end": ["the same point at both ends", "Say where the other end goes"],
};

export const CONSISTENCY_WORDS = {
  "duplicate-id": (say) => ({
    title: "Two things share an id",
    wanted: "an id of its own",
    got: `${say.text("id")}, which ${say.text("first")} has already`,
    remedy: "Give one of the two a new id",
  }),
  "dangling-reference": (say) => ({
    title: "Refers to something that is not on the record",
    wanted: "the id of something on the record",
    got: say.finding.verdict === "holds" ? "one everywhere" : `"${say.text("id")}", which nothing has`,
    remedy: "Correct the id or add what it stands for",
  }),
  "channel-claimed-twice": (say) => ({
    title: "Two circuits claim one channel or fuse",
    wanted: "a channel or fuse of its own",
    got: `${say.text("seat")}, which ${say.text("first") || "no other circuit"} has${say.text("first") ? " already" : ""}`,
    remedy: "Look at the module and correct the one that is wrong",
  }),
  "channel-out-of-range": (say) => ({
    title: "The module has no such channel",
    wanted: `a channel from 1 to ${say.text("channels")} (${say.text("kind")})`,
    got: `channel ${say.text("channel")}`,
    remedy: "Correct the channel, the module or its kind",
  }),
  "load-claimed-twice": (say) => ({
    title: "Two circuits claim one load",
    wanted: "one circuit that feeds it",
    got: `${say.text("count")}: ${say.text("circuits")}`,
    remedy: "Pull the fuses one at a time and see which one feeds it",
  }),
  "load-not-fed": (say) => ({
    title: "No circuit feeds this load",
    wanted: "a circuit that feeds it",
    got: say.finding.verdict === "holds" ? "one" : "none on the record",
    remedy: "Find its fuse and add the load to that circuit, or take it off the record",
  }),
  "wire-to-nowhere": (say) => {
    const [got, remedy] = WHY[say.text("why")] ?? ["both", "Look at both ends"];
    return { title: "A wire that goes nowhere", wanted: "two ends on the right sides", got, remedy };
  },
  "length-not-positive": (say) => ({
    title: "A length that cannot be",
    wanted: "a length above 0",
    got: say.quantity("gotM", "length"),
    remedy: "Measure the wire again",
  }),
  "rating-not-positive": (say) => ({
    title: "A figure that cannot be",
    wanted: `${say.text("field")} above 0`,
    got: say.text("got"),
    remedy: "Read it again and correct it",
  }),
  "tolerance-over-value": (say) => ({
    title: "A tolerance wider than its figure",
    wanted: `a tolerance of ${say.text("field")} smaller than the figure`,
    got: `${say.text("got")}, give or take ${say.text("plusMinus")}: it may be nothing at all`,
    remedy: "Read it again with a finer meter, or correct the tolerance",
    whileOpen: "Read it again with a finer meter; until then everything that hangs on it is open",
  }),
  "feed-without-path": (say) => ({
    title: "No cable leads here from a supply",
    wanted: "cables from a supply to where it is fed",
    got: say.finding.verdict === "open" ? "no word of where it is fed from" : `${say.text("node")}, on its own`,
    remedy: "Trace the feeder and add the cable",
    whileOpen: "Look where it is fed from and write it down",
  }),
  "cables-form-loop": (say) => ({
    title: "A second path for the current",
    wanted: "one path from the supplies",
    got: say.finding.verdict === "holds" ? "one" : "this cable closes a ring",
    remedy: "If the second path is meant, each end needs its own fuse; else correct the ends of the cable",
  }),
  "dim-block-out-of-range": (say) => ({
    title: "A dim block names wrong channels",
    wanted: `channels from 1 to ${say.text("channels")}, each in one block`,
    got: say.finding.verdict === "holds" ? "just that" : `channel ${say.text("wrong")} too far or twice`,
    remedy: "Read the blocks off the sheet again",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
