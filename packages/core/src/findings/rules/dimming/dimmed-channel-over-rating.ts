import { dimmedRating } from "../../../dimming/index.js";
import { figureValue, midOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { isDimmedToday } from "../../enabled-blocks.js";
import { figureEvidence } from "../../evidence.js";
import { drawsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { ofCircuit } from "../../subject.js";

export const dimmedChannelOverRating = defineRule(
  {
    code: "dimmed-channel-over-rating",
    asks: "Does the dimmed rating of each channel that dims today carry its loads?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const dims = isDimmedToday(context, circuit);
      const kind = index.moduleKinds.get(index.modules.get(circuit.module ?? "")?.kind ?? "");
      if (dims.kind !== "known" || !dims.value || kind?.ratedDimmedA === undefined) continue;
      const rating = dimmedRating(index, circuit, kind);
      if (rating.kind !== "known") continue;
      const { currentA, ratedDimmedA } = rating.value;
      const subject = ofCircuit(index, circuit);
      const limit = { value: figureValue(kind.ratedDimmedA), span: ratedDimmedA, unit: "A", sense: "at-most" } as const;
      const told = against({ value: midOf(currentA), span: currentA }, limit);
      const path = `${index.pathOf("moduleKinds", kind.id)}.ratedDimmedA`;
      yield {
        subject,
        ...told,
        verdict: rating.value.verdict,
        evidence: [
          { path: subject.path, label: "channel-current", unit: "A", value: midOf(currentA), span: currentA },
          figureEvidence(path, "dimmed-rating", "A", kind.ratedDimmedA, "rating"),
        ],
        settledBy: told.verdict === "open" ? readingsThatSettle(index, drawsOf(context, circuit)) : [],
      };
    }
  },
);
