import { figureValue, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { ofCircuit } from "../../subject.js";

export const fuseOverChannel = defineRule(
  {
    code: "fuse-over-channel",
    asks: "Is each fuse no larger than its module's channel allows?",
    severity: "stop",
    source: PART_SHEET,
  },
  function* ({ index }) {
    for (const circuit of index.circuits.values()) {
      const module = index.modules.get(circuit.module ?? "");
      const kind = index.moduleKinds.get(module?.kind ?? "");
      const ratedA = circuit.fuse?.ratedA;
      if (ratedA === undefined || kind?.maxFuseA === undefined) continue;
      const subject = ofCircuit(index, circuit);
      const fusePath = `${subject.path}.fuse.ratedA`;
      const limitPath = `${index.pathOf("moduleKinds", kind.id)}.maxFuseA`;
      const told = against(
        { value: figureValue(ratedA), span: spanOf(ratedA, "rating") },
        { value: figureValue(kind.maxFuseA), span: spanOf(kind.maxFuseA, "rating"), unit: "A", sense: "at-most" },
      );
      yield {
        subject,
        ...told,
        evidence: [
          figureEvidence(fusePath, "fuse-rating", "A", ratedA, "rating"),
          figureEvidence(limitPath, "channel-fuse-limit", "A", kind.maxFuseA, "rating"),
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(index, [
                { path: fusePath, figure: ratedA, instrument: "look", place: module?.place },
                { path: limitPath, figure: kind.maxFuseA, instrument: "look", place: module?.place },
              ])
            : [],
      };
    }
  },
);
