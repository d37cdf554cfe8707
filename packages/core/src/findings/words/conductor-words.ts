import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

export const CONDUCTOR_WORDS = {
  "protection-missing": (say) => ({
    title: "Cable without a fuse",
    wanted: "a fuse or breaker at the source end, no larger than the cable carries",
    got: say.finding.verdict === "holds" ? say.text("by") : say.text("by") || "none",
    remedy: "Do not energise: fit a fuse where the cable leaves its supply",
    whileOpen: "Look for a fuse or breaker where the cable starts, and read its rating",
  }),
  "protection-far-from-source": (say) => ({
    title: "Fuse too far from the supply",
    wanted: `${say.limit("length")} of cable before its fuse`,
    got: say.finding.parameters.got === undefined ? "no word of the distance" : say.got("length"),
    remedy: "Move the fuse to the supply's end; keep the cable before it covered and clear of metal",
  }),
  "feeder-device-over-conductor": (say) => ({
    title: "Feeder fuse too large for the cable",
    wanted: `a device of ${say.limit("current")} for this cable`,
    got: say.got("current"),
    remedy: "Do not energise: fit the smaller device, or a thicker cable",
  }),
  "conductor-under-minimum": (say) => ({
    title: "Wire thinner than the rules allow",
    wanted: `${say.limit("section")} of copper (${say.text("minimum")})`,
    got: `${say.got("section")}${say.text("gauge") === "" ? "" : `, written ${say.text("gauge")}`}`,
    remedy: "Replace it when the circuit is next opened; until then keep its fuse small",
  }),
  "return-missing": (say) => ({
    title: "Way back not on the record",
    isQuestion: true,
    wanted: "the return wire and the ground it lands on",
    got:
      say.finding.verdict === "holds" ? "both" : say.text("lands") === "no" ? "only the wire" : "nothing on the record",
    remedy: "Follow the negative wire from the load and write down where it lands",
  }),
  "shared-return-poor": (say) => ({
    title: "Shared ground is poor",
    wanted: `${say.limit("resistance")} from this ground, which ${say.text("count")} circuits share`,
    got: `${say.got("resistance")}${say.text("riseV") === "" ? "" : `; with everything on it lifts the ground by ${say.quantity("riseV", "voltage")}`}`,
    remedy: "Clean and tighten the ground, or run a return wire to the battery side; then measure again",
  }),
  "ground-resistance-high": (say) => ({
    title: "Ground path resists",
    wanted: `${say.limit("resistance")} through the ground path`,
    got: say.got("resistance"),
    remedy: "Clean and tighten both ends, then measure again",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
