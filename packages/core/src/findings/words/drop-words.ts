import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

export const DROP_WORDS = {
  "drop-over-limit": (say) => ({
    title: "Too much voltage lost on the way",
    wanted: `a drop of ${say.limit("voltage")} with ${say.text("state")}`,
    got: `${say.got("voltage")}${say.text("most") === "" ? "" : `, most of it in the ${say.text("most")}`}`,
    remedy: "Put right where most is lost: a thicker or shorter wire, a clean ground, a new connector",
  }),
  "feeder-drop-over-limit": (say) => ({
    title: "Too much voltage lost before the module",
    wanted: `a drop of ${say.limit("voltage")} from supply to module with ${say.text("state")}`,
    got: say.got("voltage"),
    remedy: "Fit a thicker feeder, or clean and tighten its ends",
  }),
  "voltage-under-minimum": (say) => ({
    title: "Too little voltage at the load",
    wanted: `${say.limit("voltage")} at the load with ${say.text("state")}`,
    got: say.got("voltage"),
    remedy: "Cut the drop on the way: thicker wire, clean ground, fewer loads on one feeder",
  }),
  "voltage-over-maximum": (say) => ({
    title: "Too much voltage at the load",
    wanted: `${say.limit("voltage")} at the load while a charger runs`,
    got: say.got("voltage"),
    remedy: "Lower the charger's setting, or feed the load through a regulator",
  }),
  "no-operating-point": (say) => ({
    title: "The coach cannot run like this",
    wanted: `a state that the supplies can carry with ${say.text("state")}`,
    got: say.finding.verdict === "holds" ? "one" : say.text("because") || "none",
    remedy: "Switch fewer loads on at once, or put the feeders and battery right",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
