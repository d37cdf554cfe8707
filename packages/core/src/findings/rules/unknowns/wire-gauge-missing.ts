import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { runsInUse } from "../../runs-in-use.js";
import { minutesFor } from "../../settle.js";

export const wireGaugeMissing = defineRule(
  {
    code: "wire-gauge-missing",
    asks: "Is the gauge of every wire and cable known?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    for (const { subject, path, run, isWire, which } of runsInUse(context)) {
      if (!isWire) continue;
      const isKnown = run?.gauge !== undefined || run?.sectionMm2 !== undefined;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        parameters: { run: which },
        settledBy: isKnown
          ? []
          : [{ path: `${path}.gauge`, instrument: "look", minutes: minutesFor(context.index, "look", run?.place) }],
      };
    }
  },
);
