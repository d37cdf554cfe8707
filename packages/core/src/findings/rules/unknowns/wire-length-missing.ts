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
    for (const { subject, path, run, isWire, which } of runsInUse(context)) {
      const hasCopper = run?.gauge !== undefined || run?.sectionMm2 !== undefined;
      const isKnown = run?.resistanceOhm !== undefined || (run?.lengthM !== undefined && (isWire || hasCopper));
      // A chassis or a strap has no length to speak of: its resistance is read.
      const [field, instrument] = isWire
        ? (["lengthM", "tape measure"] as const)
        : (["resistanceOhm", "ohmmeter"] as const);
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        parameters: { run: which },
        settledBy: isKnown
          ? []
          : [{ path: `${path}.${field}`, instrument, minutes: minutesFor(context.index, instrument, run?.place) }],
      };
    }
  },
);
