import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const fuseRatingMissing = defineRule(
  {
    code: "fuse-rating-missing",
    asks: "Is the rating of every fuse known?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const circuit of index.record.circuits ?? []) {
      if (circuit.isSpare === true || (circuit.module === undefined && circuit.fusePosition === undefined)) continue;
      const subject = ofCircuit(index, circuit);
      const isKnown = circuit.fuse?.ratedA !== undefined;
      const place = circuit.module === undefined ? undefined : index.modules.get(circuit.module)?.place;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        settledBy: isKnown
          ? []
          : [
              {
                path: `${subject.path}.fuse.ratedA`,
                instrument: "look",
                minutes: minutesFor(index, "look", place),
              },
            ],
      };
    }
  },
);
