import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCoach } from "../../subject.js";

export const nominalVoltageAssumed = defineRule(
  {
    code: "nominal-voltage-assumed",
    asks: "Is it known whether the coach is 12 V or 24 V?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const isKnown = index.record.coach.nominalV !== undefined;
    const battery = [...index.supplies.values()].find((supply) => supply.kind === "battery");
    yield {
      subject: { ...ofCoach(index), path: "coach.nominalV" },
      verdict: isKnown ? "holds" : "open",
      settledBy: isKnown
        ? []
        : [
            {
              path: "coach.nominalV",
              instrument: "voltmeter",
              minutes: minutesFor(index, "voltmeter", battery?.place),
            },
          ],
    };
  },
);
