import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { runsInUse } from "../../runs-in-use.js";
import { minutesFor } from "../../settle.js";

export const wireLengthMissing = defineRule(
  {
    code: "wire-length-missing",
    asks: "Is the length or the resistance of every wire and cable known?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    for (const { subject, path, run } of runsInUse(context)) {
      const isKnown = run?.lengthM !== undefined || run?.resistanceOhm !== undefined;
      const instrument = "tape measure";
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        settledBy: isKnown
          ? []
          : [{ path: `${path}.lengthM`, instrument, minutes: minutesFor(context.index, instrument, run?.place) }],
      };
    }
  },
);
