import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const returnMissing = defineRule(
  {
    code: "return-missing",
    asks: "Does the record say how the current of each circuit gets back?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const loads = loadsOf(context, circuit);
      if (loads.length === 0) continue;
      const subject = ofCircuit(index, circuit);
      const back = circuit.return;
      const isTold =
        back !== undefined &&
        [back.node, back.gauge, back.sectionMm2, back.lengthM, back.resistanceOhm].some((field) => field !== undefined);
      const isKnown = isTold && back.node !== undefined;
      const field = isTold ? "return.node" : "return";
      yield {
        subject,
        verdict: isKnown ? "holds" : isTold ? "open" : "fails",
        parameters: { lands: isTold ? "no" : "" },
        settledBy: isKnown
          ? []
          : [
              {
                path: `${subject.path}.${field}`,
                instrument: "look",
                minutes: minutesFor(index, "look", loads[0]?.place),
              },
            ],
      };
    }
  },
);
