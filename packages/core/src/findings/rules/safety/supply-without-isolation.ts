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
      yield {
        subject,
        verdict: isKnown ? "holds" : "fails",
        parameters: { kind: supply.kind },
        settledBy: isKnown
          ? []
          : [
              {
                path: `${subject.path}.isolation`,
                instrument: "look",
                minutes: minutesFor(index, "look", supply.place),
              },
            ],
      };
    }
  },
);
