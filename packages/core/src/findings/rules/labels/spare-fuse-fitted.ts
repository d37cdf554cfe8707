import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const spareFuseFitted = defineRule(
  {
    code: "spare-fuse-fitted",
    asks: "Is a fuse fitted where nothing is known to be fed?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const circuit of index.record.circuits ?? []) {
      if ((circuit.loads ?? []).length > 0) continue;
      const subject = ofCircuit(index, circuit);
      const ratedA = circuit.fuse?.ratedA;
      const path = `${subject.path}.fuse.ratedA`;
      const isSpare = circuit.isSpare === true || /\bspare\b/i.test(circuit.label ?? "");
      const place = circuit.module === undefined ? undefined : index.modules.get(circuit.module)?.place;
      // A fuse on a circuit that nobody calls spare may well feed something: that is not known to be wrong.
      const verdict = ratedA === undefined ? "holds" : isSpare ? "fails" : "open";
      yield {
        subject,
        verdict,
        evidence: ratedA === undefined ? [] : [figureEvidence(path, "fuse-rating", "A", ratedA, "rating")],
        settledBy:
          verdict === "open"
            ? [{ path: `${subject.path}.loads`, instrument: "look", minutes: minutesFor(index, "look", place) }]
            : [],
      };
    }
  },
);
