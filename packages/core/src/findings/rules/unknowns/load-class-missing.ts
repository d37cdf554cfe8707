import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofLoad } from "../../subject.js";

export const loadClassMissing = defineRule(
  {
    code: "load-class-missing",
    asks: "Is it known what sort of load each one is?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const load of index.loads.values()) {
      const subject = ofLoad(index, load);
      const isKnown = load.class !== undefined;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        settledBy: isKnown
          ? []
          : [{ path: `${subject.path}.class`, instrument: "look", minutes: minutesFor(index, "look", load.place) }],
      };
    }
  },
);
