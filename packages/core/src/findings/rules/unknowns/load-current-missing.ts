import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { drawOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { ofLoad } from "../../subject.js";

export const loadCurrentMissing = defineRule(
  {
    code: "load-current-missing",
    asks: "Is it known what every load draws?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const load of index.loads.values()) {
      if (!index.circuitOfLoad.has(load.id)) continue;
      const isKnown =
        load.currentA !== undefined ||
        load.powerW !== undefined ||
        load.drawReadings?.[0] !== undefined ||
        (load.ledForwardV !== undefined && load.ledResistorOhm !== undefined);
      yield {
        subject: ofLoad(index, load),
        verdict: isKnown ? "holds" : "open",
        settledBy: isKnown ? [] : readingsThatSettle(index, [drawOf(context, load)]),
      };
    }
  },
);
