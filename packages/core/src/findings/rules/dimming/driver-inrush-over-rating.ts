import { figureValue, midOf, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { driversDimmedToday } from "../../driver-told.js";
import { figureEvidence } from "../../evidence.js";
import { PART_SHEET } from "../../sources.js";
import { ofCircuit } from "../../subject.js";

export const driverInrushOverRating = defineRule(
  {
    code: "driver-inrush-over-rating",
    asks: "Does each dimmed channel stand the current that its drivers' capacitors take at every pulse?",
    severity: "watch",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    for (const { circuit, kind, worst, settledBy } of driversDimmedToday(context)) {
      if (kind.ratedDimmedA === undefined) continue;
      const subject = ofCircuit(index, circuit);
      const ratedDimmedA = spanOf(kind.ratedDimmedA, "rating");
      const limit = { value: figureValue(kind.ratedDimmedA), span: ratedDimmedA, unit: "A", sense: "at-most" } as const;
      const told = against({ value: midOf(worst.peakA), span: worst.peakA }, limit);
      yield {
        subject,
        ...told,
        parameters: { ...told.parameters, knownFrom: worst.knownFrom },
        evidence: [
          { path: subject.path, label: "pulse-peak", unit: "A", value: midOf(worst.peakA), span: worst.peakA },
          figureEvidence(
            `${index.pathOf("moduleKinds", kind.id)}.ratedDimmedA`,
            "dimmed-rating",
            "A",
            kind.ratedDimmedA,
            "rating",
          ),
        ],
        alsoRestsOn: [worst.source],
        settledBy: told.verdict === "open" ? settledBy : [],
      };
    }
  },
);
