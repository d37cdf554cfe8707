import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofItem } from "../../subject.js";

export const supplyWithoutIsolation = defineRule(
  {
    code: "supply-without-isolation",
    asks: "Is it known what to open to make each supply dead?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const supply of index.supplies.values()) {
      const subject = ofItem(index, "supplies", supply);
      const isKnown = supply.isolation !== undefined && supply.isolation.what.trim() !== "";
      // Nobody has said that there is none: the switch may be there and not written down.
      yield {
        subject,
        verdict: isKnown ? "holds" : supply.isolation === undefined ? "open" : "fails",
        parameters: { kind: supply.kind },
        settledBy:
          supply.isolation === undefined
            ? [
                {
                  path: `${subject.path}.isolation`,
                  instrument: "look",
                  minutes: minutesFor(index, "look", supply.place),
                },
              ]
            : [],
      };
    }
  },
);
