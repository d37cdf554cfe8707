import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

export const SAFETY_WORDS = {
  "detector-on-switched-channel": (say) => ({
    title: "Detector on a switched channel",
    wanted: "a steady feed of its own, past every switch",
    got: say.text("circuit"),
    remedy:
      "Do not leave the coach in use like this: give the detector an unswitched fused feed, by its own instructions",
  }),
  "supply-without-isolation": (say) => ({
    title: "No isolation point on the record",
    wanted: `the switch, breaker or plug that makes this ${say.text("kind")} dead`,
    got: say.finding.verdict === "holds" ? "it" : "none",
    remedy: "Find it and write it down before any work; if there is none, fit one",
  }),
  "several-supplies-one-isolation": (say) => ({
    title: "Two supplies behind one isolation point",
    wanted: "to know that opening it makes both dead",
    got:
      say.text("first") === ""
        ? `${say.text("what")}, its own`
        : `${say.text("what")}, which also isolates ${say.text("first")}`,
    remedy: "Open it and measure at both supplies",
    whileOpen: "Open it once and measure that both supplies are dead",
  }),
  "bonding-under-minimum": (say) => ({
    title: "Battery bond to the chassis too thin",
    wanted: `${say.limit("section")} of copper (${say.text("minimum")})`,
    got: `${say.got("section")}${say.text("gauge") === "" ? "" : `, written ${say.text("gauge")}`}`,
    remedy: "Fit a thicker bond",
  }),
  "module-dead": (say) => ({
    title: "Module is dead",
    wanted: "a module that works",
    got: say.finding.verdict === "holds" ? "one" : `a dead one with ${say.text("circuits")} circuits on it`,
    remedy: "Replace it; note its switches and labels before it comes out",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
