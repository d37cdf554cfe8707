import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofItem } from "../../subject.js";

export const batteryFiguresMissing = defineRule(
  {
    code: "battery-figures-missing",
    asks: "Is it known what each battery holds?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const supply of index.supplies.values()) {
      if (supply.kind !== "battery") continue;
      const subject = ofItem(index, "supplies", supply);
      const isKnown = supply.capacityAh !== undefined;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        settledBy: isKnown
          ? []
          : [
              {
                path: `${subject.path}.capacityAh`,
                instrument: "look",
                minutes: minutesFor(index, "look", supply.place),
              },
            ],
      };
    }
  },
);
