import { figureValue, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { loadsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { circuitName, ofLoad } from "../../subject.js";

export const fuseOverLoadLimit = defineRule(
  {
    code: "fuse-over-load-limit",
    asks: "Is each fuse no larger than every load on it allows?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const ratedA = circuit.fuse?.ratedA;
      if (ratedA === undefined) continue;
      const fusePath = `${index.pathOf("circuits", circuit.id)}.fuse.ratedA`;
      const fusePlace = index.modules.get(circuit.module ?? "")?.place;
      for (const load of loadsOf(context, circuit)) {
        if (load.maxFuseA === undefined) continue;
        const limitPath = `${index.pathOf("loads", load.id)}.maxFuseA`;
        const told = against(
          { value: figureValue(ratedA), span: spanOf(ratedA, "rating") },
          { value: figureValue(load.maxFuseA), span: spanOf(load.maxFuseA, "rating"), unit: "A", sense: "at-most" },
        );
        yield {
          subject: ofLoad(index, load),
          ...told,
          parameters: { ...told.parameters, circuit: circuitName(index, circuit) },
          evidence: [
            figureEvidence(fusePath, "fuse-rating", "A", ratedA, "rating"),
            figureEvidence(limitPath, "load-fuse-limit", "A", load.maxFuseA, "rating"),
          ],
          settledBy:
            told.verdict === "open"
              ? readingsThatSettle(index, [
                  { path: fusePath, figure: ratedA, instrument: "look", place: fusePlace },
                  { path: limitPath, figure: load.maxFuseA, instrument: "look", place: load.place },
                ])
              : [],
        };
      }
    }
  },
);
