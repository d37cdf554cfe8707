import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { isDimmedToday } from "../../enabled-blocks.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { circuitName, ofLoad } from "../../subject.js";

export const ownSwitchOnDimmed = defineRule(
  {
    code: "own-switch-on-dimmed",
    asks: "Is every switch in a lamp that dims today a plain contact, which PWM does not upset?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const dims = isDimmedToday(context, circuit);
      if (dims.kind !== "known" || !dims.value) continue;
      for (const load of loadsOf(context, circuit)) {
        if (load.hasOwnSwitch !== true) continue;
        const subject = ofLoad(index, load);
        const kind = load.ownSwitchKind;
        // A lamp of which somebody saw that it takes PWM, switch and all.
        const isSettled = kind === "contact" || load.allowsPwm === true;
        yield {
          subject,
          verdict: isSettled ? "holds" : kind === undefined ? "open" : "fails",
          parameters: { circuit: circuitName(index, circuit), kind: kind ?? "" },
          settledBy: isSettled
            ? []
            : [
                {
                  path: `${subject.path}.ownSwitchKind`,
                  instrument: "look",
                  minutes: minutesFor(index, "look", load.place),
                },
              ],
        };
      }
    }
  },
);
