import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofItem } from "../../subject.js";

export const bankCodeMissing = defineRule(
  {
    code: "bank-code-missing",
    asks: "Is it known how the switches of each kind in use give an address?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const kind of index.moduleKinds.values()) {
      const used = [...index.modules.values()].find((module) => module.kind === kind.id);
      if (used === undefined) continue;
      const subject = ofItem(index, "moduleKinds", kind);
      const isKnown = kind.bank?.address !== undefined;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        settledBy: isKnown
          ? []
          : [
              {
                path: `${subject.path}.bank.address`,
                instrument: "look",
                minutes: minutesFor(index, "look", used.place),
              },
            ],
      };
    }
  },
);
