import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofModule } from "../../subject.js";

export const kindMissing = defineRule(
  { code: "kind-missing", asks: "Is it known what kind each module is?", severity: "watch", source: COMMON_PRACTICE },
  function* ({ index }) {
    for (const module of index.modules.values()) {
      const subject = ofModule(index, module);
      const isKnown = module.kind !== undefined;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        settledBy: isKnown
          ? []
          : [{ path: `${subject.path}.kind`, instrument: "look", minutes: minutesFor(index, "look", module.place) }],
      };
    }
  },
);
