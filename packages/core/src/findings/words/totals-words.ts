import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

export const TOTALS_WORDS = {
  "channel-over-rating": (say) => ({
    title: "Channel carries more than its rating",
    wanted: `${say.limit("current")} through this channel`,
    got: say.got("current"),
    remedy: "Move a load to another channel, or drive it through a relay of its own",
  }),
  "relay-contact-derating": (say) => ({
    title: "Contacts will wear early",
    wanted: `a contact rated ${say.limit("current")} for ${say.text("sort")} loads (${say.text("factor")} times what they draw)`,
    got: say.got("current"),
    remedy: "Expect the contact to wear; keep a spare module, or move the load to a stouter relay",
  }),
  "module-over-rating": (say) => ({
    title: "Module carries more than its rating",
    wanted: `${say.limit("current")} through the module`,
    got: `${say.got("current")} with ${say.text("state")}${say.text("isAtLeast") === "yes" ? ", counting only loads that are known" : ""}`,
    remedy: "Move circuits to another module",
  }),
  "feeder-over-ampacity": (say) => ({
    title: "Feeder carries more than the cable stands",
    wanted: `${say.limit("current")} in this cable`,
    got: `${say.got("current")} with ${say.text("state")}${say.text("isAtLeast") === "yes" ? ", counting only loads that are known" : ""}`,
    remedy: "Fit a thicker cable or a second feeder",
  }),
  "feeder-over-device": (say) => ({
    title: "Feeder carries more than its fuse",
    wanted: `${say.limit("current")} through this feeder's device`,
    got: `${say.got("current")} with ${say.text("state")}${say.text("isAtLeast") === "yes" ? ", counting only loads that are known" : ""}`,
    remedy: "Move circuits to another feeder; a larger fuse only if the cable allows it",
  }),
  "busbar-over-rating": (say) => ({
    title: "Bus bar carries more than its rating",
    wanted: `${say.limit("current")} on this bar`,
    got: `${say.got("current")} with ${say.text("state")}${say.text("isAtLeast") === "yes" ? ", counting only loads that are known" : ""}`,
    remedy: "Fit a stouter bar or split the feeds",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
