import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofModule } from "../../subject.js";

export const addressUnknown = defineRule(
  {
    code: "address-unknown",
    asks: "Is it known which address each module has?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const module of index.modules.values()) {
      const subject = ofModule(index, module);
      const isKnown = module.address !== undefined || module.answersTo !== undefined;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        settledBy: isKnown
          ? []
          : [
              {
                path: `${subject.path}.positionsFound`,
                instrument: "look",
                minutes: minutesFor(index, "look", module.place),
              },
            ],
      };
    }
  },
);
