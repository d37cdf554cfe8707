import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const labelMissing = defineRule(
  {
    code: "label-missing",
    asks: "Does every fuse in use have a label on the coach?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const circuit of index.record.circuits ?? []) {
      if (circuit.isSpare === true || (circuit.loads ?? []).length === 0) continue;
      const subject = ofCircuit(index, circuit);
      const label = circuit.label?.trim();
      const place = circuit.module === undefined ? undefined : index.modules.get(circuit.module)?.place;
      yield {
        subject,
        verdict: label === undefined ? "open" : label === "" ? "fails" : "holds",
        severity: label === undefined ? "note" : "watch",
        settledBy:
          label === undefined
            ? [{ path: `${subject.path}.label`, instrument: "look", minutes: minutesFor(index, "look", place) }]
            : [],
      };
    }
  },
);
