import type { FindingCode } from "../codes.js";
import { fieldWords } from "./field-words.js";
import type { Say, Speaker, Spoken } from "./say.js";

const asked = (say: Say, title: string, wanted: string, whileOpen: string): Spoken => ({
  title,
  isQuestion: true,
  wanted,
  got: say.finding.verdict === "holds" ? "it" : "nothing on the record",
  remedy: whileOpen,
  whileOpen,
});

/** Which conductor of its owner is asked about. */
const run = (say: Say): string =>
  ({ out: "the wire", return: "the return wire", tail: "the load's own wire", structure: "the ground path" })[
    say.text("run")
  ] ?? "the cable";

export const UNKNOWN_WORDS = {
  "fuse-rating-missing": (say) =>
    asked(
      say,
      "Fuse rating not known",
      "the fuse's rating",
      "Read it off the fuse; wire and channel cannot be judged without it",
    ),
  "wire-gauge-missing": (say) =>
    asked(
      say,
      "Wire gauge not known",
      `the gauge of ${run(say)}`,
      "Read it off the insulation; the fuse cannot be judged without it",
    ),
  "wire-length-missing": (say) =>
    asked(
      say,
      "Wire length not known",
      `the length of ${run(say)}`,
      "Measure or pace it; the drop cannot be judged without it",
    ),
  "insulation-unknown": (say) =>
    asked(
      say,
      "Insulation class not known",
      "the temperature class of the insulation",
      "Read it off the insulation; how much the wire may carry depends on it",
    ),
  "load-current-missing": (say) =>
    asked(say, "Load's draw not known", "the amps or watts that it draws", "Clamp it while it runs, or read its plate"),
  "load-class-missing": (say) =>
    asked(say, "Sort of load not known", "what sort of load it is", "Look at it; whether it may dim depends on it"),
  "kind-missing": (say) =>
    asked(
      say,
      "Kind of module not known",
      "what kind of module it is",
      "Read its label; ratings and switches depend on it",
    ),
  "kind-rating-missing": (say) => ({
    title: "Ratings of this kind not known",
    isQuestion: true,
    wanted: "the ratings on its sheet",
    got:
      say.finding.verdict === "holds"
        ? "all of them"
        : `nothing for ${say.text("fields").split(", ").map(fieldWords).join(", ")}`,
    remedy: "Copy them from the sheet",
    whileOpen: "Copy them from the sheet or the part",
  }),
  "nominal-voltage-assumed": (say) => ({
    title: "Taken for a 12 V coach",
    isQuestion: true,
    wanted: "whether the coach is 12 V or 24 V",
    got: say.finding.verdict === "holds" ? "it" : "nothing on the record, so 12 V is taken",
    remedy: "Measure the battery",
    whileOpen: "Measure the battery",
  }),
  "survey-cell-unread": (say) => ({
    title: "Survey cell not understood",
    isQuestion: true,
    wanted: `a figure in the column ${say.text("column")}`,
    got: `"${say.text("text")}"`,
    remedy: "Say what is meant",
    whileOpen: "Say what is meant, or look again",
  }),
  "policy-memory-figure": (say) => ({
    title: "Figures from memory are in use",
    wanted: "figures that a text was opened for",
    got: say.finding.verdict === "holds" ? "only those" : `${say.text("count")} from memory: ${say.text("names")}`,
    remedy: "Measure what they stand for, or choose a rule whose tables were seen; nothing here stops a job on them",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
