import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const circuitUnverified = defineRule(
  {
    code: "circuit-unverified",
    asks: "Has somebody seen that this fuse feeds these loads?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.record.circuits ?? []) {
      const isSpare = circuit.isSpare === true || circuit.loads?.length === 0;
      if (isSpare) continue;
      const subject = ofCircuit(index, circuit);
      const isListed = circuit.loads !== undefined;
      const isVerified = isListed && circuit.verified !== undefined;
      const place = loadsOf(context, circuit)[0]?.place;
      const field = isListed ? "verified" : "loads";
      yield {
        subject,
        verdict: isVerified ? "holds" : "open",
        parameters: { loads: (circuit.loads ?? []).length },
        settledBy: isVerified
          ? []
          : [{ path: `${subject.path}.${field}`, instrument: "look", minutes: minutesFor(index, "look", place) }],
      };
    }
  },
);
