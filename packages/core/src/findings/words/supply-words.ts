import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

export const SUPPLY_WORDS = {
  "no-supply": (say) => ({
    title: "Supply not known",
    isQuestion: true,
    wanted: "a battery, and where both ends of every supply connect",
    got:
      say.finding.verdict === "holds"
        ? "them"
        : say.text("count") === "0"
          ? "no supply on the record"
          : "only some of it",
    remedy: "Write down the battery and the bar it feeds",
    whileOpen: "Write down the battery, the bar that it feeds and where its negative lands; volts and drops need it",
  }),
  "supply-voltage-odd": (say) => ({
    title: "Supply does not fit the coach's voltage",
    wanted: `${say.quantity("lowest", "voltage")} to ${say.quantity("highest", "voltage")} in a ${say.text("nominalV")} V coach`,
    got: say.got("voltage"),
    remedy:
      "Measure it; if it is right, the coach's nominal voltage or this supply is wrong: connect nothing until it is clear",
  }),
  "termination-wrong": (say) => {
    const byMeter = say.text("by") === "resistance";
    return {
      title: "Network terminators wrong",
      wanted: byMeter
        ? `${say.quantity("lowest", "resistance")} to ${say.quantity("highest", "resistance")} between the two wires, power off`
        : "two terminators, one at each end",
      got: byMeter ? say.got("resistance") : say.finding.verdict === "open" ? "no word of them" : say.text("got"),
      remedy:
        "120 Ω between the wires means that one is missing, 40 Ω that there are three: put one at each end of the trunk",
    };
  },
  "network-too-long": (say) => ({
    title: "Network trunk too long for its bit rate",
    wanted:
      say.finding.limit === undefined
        ? "the bit rate, to know how long it may be"
        : `a trunk of ${say.limit("length")}`,
    got: say.got("length"),
    remedy: "Shorten the trunk, or split the network",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
