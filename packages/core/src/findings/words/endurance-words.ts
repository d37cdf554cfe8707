import type { FindingCode } from "../codes.js";
import { fieldWords } from "./field-words.js";
import type { Say, Speaker } from "./say.js";

const count = (say: Say, name: string): number => {
  const value = say.finding.parameters[name];
  return typeof value === "number" ? value : Number.NaN;
};

/** Days or hours with the span they may lie in; beyond ten years it hardly matters. */
function long(say: Say, unit: "days" | "h"): string {
  const show = (value: number): string =>
    unit === "days"
      ? value > 3650
        ? "years"
        : `${Math.round(value)} ${unit}`
      : `${value.toFixed(value < 10 ? 1 : 0)} ${unit}`;
  if (!Number.isFinite(count(say, "got"))) return "an unknown figure";
  const [got, lo, hi] = ["got", "gotLo", "gotHi"].map((name) => show(count(say, name)));
  return lo === hi ? `${got}` : `${got} (it may be ${lo} to ${hi})`;
}

export const ENDURANCE_WORDS = {
  "battery-figures-missing": (say) => ({
    title: "Battery's capacity not known",
    isQuestion: true,
    wanted: "the ampere-hours on its label",
    got: say.finding.verdict === "holds" ? "them" : "nothing on the record",
    remedy: "Read it off the battery; hours on battery depend on it",
    whileOpen: "Read it off the battery; hours on battery depend on it",
  }),
  "battery-figure-impossible": (say) => ({
    title: "Figure that no battery has",
    wanted: say.text("field") === "chargeRatio" ? "a charge from 0 to 1" : "an exponent of 1 or more",
    got: `${say.text("got")} for ${fieldWords(say.text("field"))}`,
    remedy: "Read it again; a charge of 80 % is written 0.8, an exponent below 1 is a slip",
  }),
  "exponent-assumed": (say) => ({
    title: "How hard the battery may be drawn is taken from its class",
    isQuestion: true,
    wanted: "its Peukert exponent, or its ampere-hours at two rates",
    got:
      say.finding.verdict === "holds"
        ? "it"
        : `nothing on the record, so ${say.text("taken")} is taken (${say.text("takenLo")} to ${say.text("takenHi")}${say.finding.source.how === "memory" ? ", from memory" : ""})`,
    remedy: "Look it up on the battery's sheet",
    whileOpen: "Look it up on the battery's sheet; hours at heavy draw depend on it",
  }),
  "flat-in-storage": (say) => ({
    title: "Batteries go flat in storage",
    wanted: `${say.text("limit") || "some"} days with everything off and no charger`,
    got: `${long(say, "days")}, ${say.quantity("totalA", "current")} drawn all the time`,
    remedy:
      "Find what draws, leave a charger on, or open the house disconnect while nobody is aboard (the detectors are dead then): a lead battery left flat is spoiled",
    whileOpen: "Clamp the battery's cable with everything off, and read how full the battery is",
  }),
  "hours-below-wanted": (say) => ({
    title: "Batteries do not last the hours asked for",
    wanted: `${say.text("limit") || "some"} h (${say.text("profile")})`,
    got: long(say, "h"),
    remedy: "Tell the owner: dim or leave off what draws most (fusebook hours lists it), or fit more capacity",
  }),
  "profile-faulty": (say) => ({
    title: "Load profile cannot be followed",
    wanted: "spans of hours whose circuits and loads are on the record",
    got: say.finding.verdict === "holds" ? "one" : say.text("because"),
    remedy: "Put the profile right, or take it out",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
