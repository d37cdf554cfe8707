import { figureValue, spanOf } from "../../../quantity/index.js";
import { ceilingRatio } from "../../../tables/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { limitLeans } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const fuseOverConductor = defineRule(
  {
    code: "fuse-over-conductor",
    asks: "Is each fuse no larger than the wire out and the wire back allow?",
    severity: "stop",
    source: ceilingRatio("nec").source,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const ratedA = circuit.fuse?.ratedA;
      if (ratedA === undefined) continue;
      const subject = ofCircuit(index, circuit);
      const fusePath = `${subject.path}.fuse.ratedA`;
      const fusePlace = index.modules.get(circuit.module ?? "")?.place;
      for (const field of ["out", "return"] as const) {
        const run = circuit[field];
        const ceiling = run === undefined ? undefined : context.deviceCeiling(run);
        if (run === undefined || ceiling?.kind !== "known") continue;
        const { valueA, span, source, alsoRestsOn } = ceiling.value;
        const told = against(
          { value: figureValue(ratedA), span: spanOf(ratedA, "rating") },
          { value: valueA, span, unit: "A", sense: "at-most" },
        );
        yield {
          subject,
          ...told,
          parameters: { ...told.parameters, run: field },
          source,
          alsoRestsOn,
          evidence: [
            figureEvidence(fusePath, "fuse-rating", "A", ratedA, "rating"),
            { path: `${subject.path}.${field}`, label: "device-ceiling", unit: "A", value: valueA, span },
          ],
          settledBy:
            told.verdict === "open"
              ? readingsThatSettle(index, [
                  { path: fusePath, figure: ratedA, instrument: "look", place: fusePlace },
                  ...limitLeans(run, `${subject.path}.${field}`, ceiling.value),
                ])
              : [],
        };
      }
    }
  },
);
