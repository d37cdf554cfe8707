import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofLoad } from "../../subject.js";

export const loadNotFed = defineRule(
  { code: "load-not-fed", asks: "Does some circuit feed each load?", severity: "watch", source: COMMON_PRACTICE },
  function* ({ index }) {
    for (const load of index.loads.values())
      yield {
        subject: ofLoad(index, load),
        verdict: index.circuitOfLoad.has(load.id) ? "holds" : "fails",
      };
  },
);
