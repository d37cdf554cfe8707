import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

export const LABEL_WORDS = {
  "label-contradicts-loads": (say) => {
    const says = say.text("says");
    const sort =
      says === "spare" ? "says that nothing is fed" : says === "place" ? "names another place" : `speaks of ${says}`;
    return {
      title: "Label and load do not agree",
      wanted: `a label that says what it feeds: ${say.text("loads")}`,
      got: `"${say.text("label")}"${say.finding.verdict === "holds" ? "" : `, which ${sort}`}`,
      remedy: "Pull the fuse and see what goes dead; then correct the label or the record",
    };
  },
  "label-missing": (say) => ({
    title: "Fuse without a label",
    wanted: "a label",
    got: say.finding.verdict === "holds" ? "one" : say.finding.verdict === "open" ? "no word of one" : "none",
    remedy: "Print one",
  }),
  "spare-fuse-fitted": (say) => ({
    title: "Fuse fitted where nothing is fed",
    wanted: "no fuse where nothing is fed",
    got: say.finding.verdict === "holds" ? "none" : "a fuse",
    remedy: "Pull it; if nothing goes dead, leave it out and label the place SPARE",
    whileOpen: "Pull it and see what goes dead",
  }),
  "circuit-unverified": (say) => ({
    title: "Nobody has seen that this fuse feeds these loads",
    isQuestion: true,
    wanted: "a look at what goes dead when the fuse is pulled",
    got: say.finding.verdict === "holds" ? "it" : "none on the record",
    remedy: "Pull the fuse and look",
    whileOpen: "Pull the fuse once, look what goes dead, and write it down",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
