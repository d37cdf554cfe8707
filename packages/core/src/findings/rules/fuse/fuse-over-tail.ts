import { figureValue, spanOf } from "../../../quantity/index.js";
import { ceilingRatio } from "../../../tables/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { limitLeans, loadsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { circuitName, ofLoad } from "../../subject.js";

export const fuseOverTail = defineRule(
  {
    code: "fuse-over-tail",
    asks: "Does the circuit's fuse protect the load's own, thinner wire too?",
    severity: "mend",
    source: ceilingRatio("nec").source,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const ratedA = circuit.fuse?.ratedA;
      if (ratedA === undefined) continue;
      const fusePath = `${index.pathOf("circuits", circuit.id)}.fuse.ratedA`;
      for (const load of loadsOf(context, circuit)) {
        const ceiling = load.tail === undefined ? undefined : context.deviceCeiling(load.tail);
        if (load.tail === undefined || ceiling?.kind !== "known") continue;
        const subject = ofLoad(index, load);
        const { valueA, span, source, alsoRestsOn } = ceiling.value;
        const told = against(
          { value: figureValue(ratedA), span: spanOf(ratedA, "rating") },
          { value: valueA, span, unit: "A", sense: "at-most" },
        );
        yield {
          subject,
          ...told,
          parameters: { ...told.parameters, circuit: circuitName(index, circuit) },
          source,
          alsoRestsOn,
          evidence: [
            figureEvidence(fusePath, "fuse-rating", "A", ratedA, "rating"),
            { path: `${subject.path}.tail`, label: "device-ceiling", unit: "A", value: valueA, span },
          ],
          settledBy:
            told.verdict === "open"
              ? readingsThatSettle(index, limitLeans(load.tail, `${subject.path}.tail`, ceiling.value))
              : [],
        };
      }
    }
  },
);
