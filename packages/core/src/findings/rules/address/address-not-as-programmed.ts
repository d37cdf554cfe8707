import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofModule } from "../../subject.js";

export const addressNotAsProgrammed = defineRule(
  {
    code: "address-not-as-programmed",
    asks: "Does each module answer to the address that the controller's program uses for it?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const module of index.modules.values()) {
      if (module.address === undefined || module.answersTo === undefined) continue;
      const subject = ofModule(index, module);
      yield {
        subject,
        verdict: module.address === module.answersTo ? "holds" : "fails",
        parameters: { address: module.address, answersTo: module.answersTo },
        evidence: [
          { path: `${subject.path}.address`, label: "address", unit: "count", value: module.address, basis: "marked" },
          {
            path: `${subject.path}.answersTo`,
            label: "answers-to",
            unit: "count",
            value: module.answersTo,
            basis: "measured",
          },
        ],
      };
    }
  },
);
