import { suitabilityOf } from "../../../dimming/index.js";
import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { isDimmedToday } from "../../enabled-blocks.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { circuitName, ofLoad } from "../../subject.js";

export const dimmedLoadNotSuited = defineRule(
  {
    code: "dimmed-load-not-suited",
    asks: "Is every lamp that dims today of a sort that takes PWM?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const dims = isDimmedToday(context, circuit);
      if (dims.kind !== "known" || !dims.value) continue;
      for (const load of loadsOf(context, circuit)) {
        const { may, code, source } = suitabilityOf(load);
        // A load that must never dim, or whose class is not known, is told by `steady-load-on-dim-block`.
        if (may === "unknown" || (may === "no" && code !== "statement-forbids")) continue;
        // A switch of its own is asked about by `own-switch-on-dimmed`.
        if (code === "own-switch") continue;
        const subject = ofLoad(index, load);
        yield {
          subject,
          verdict: may === "yes" ? "holds" : may === "no" ? "fails" : "open",
          severity: may === "no" ? "mend" : "watch",
          source,
          parameters: { circuit: circuitName(index, circuit), why: code },
          settledBy:
            may === "only-if"
              ? [
                  {
                    path: `${subject.path}.allowsPwm`,
                    instrument: "ask",
                    minutes: minutesFor(index, "ask", load.place),
                  },
                ]
              : [],
        };
      }
    }
  },
);
