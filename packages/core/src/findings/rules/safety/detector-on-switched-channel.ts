import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { circuitName, ofLoad } from "../../subject.js";

export const detectorOnSwitchedChannel = defineRule(
  {
    code: "detector-on-switched-channel",
    asks: "Is every smoke, carbon monoxide and gas detector fed past all switching?",
    severity: "stop",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const load of index.loads.values()) {
      const circuit = index.circuitOfLoad.get(load.id);
      if (load.class !== "detector" || circuit === undefined) continue;
      const subject = ofLoad(index, load);
      const isUnsure = circuit.module === undefined && circuit.fusePosition === undefined;
      const path = index.pathOf("circuits", circuit.id);
      yield {
        subject,
        verdict: circuit.module !== undefined ? "fails" : isUnsure ? "open" : "holds",
        parameters: { circuit: circuitName(index, circuit) },
        settledBy: isUnsure
          ? [{ path: `${path}.fusePosition`, instrument: "look", minutes: minutesFor(index, "look", load.place) }]
          : [],
      };
    }
  },
);
