import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { runsInUse } from "../../runs-in-use.js";
import { minutesFor } from "../../settle.js";

export const insulationUnknown = defineRule(
  {
    code: "insulation-unknown",
    asks: "Is the temperature class of every wire's insulation known?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    for (const { subject, path, run, isWire, which } of runsInUse(context)) {
      // The return and the tail run with the out wire; their classes are asked for where they decide a verdict.
      if (!isWire || which === "return" || which === "tail") continue;
      // Without a gauge the class would settle nothing yet; `wire-gauge-missing` asks for that first.
      if (run === undefined || (run.gauge === undefined && run.sectionMm2 === undefined)) continue;
      const isKnown = run.insulationC !== undefined;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        parameters: { run: which },
        settledBy: isKnown
          ? []
          : [
              {
                path: `${path}.insulationC`,
                instrument: "look",
                minutes: minutesFor(context.index, "look", run.place),
              },
            ],
      };
    }
  },
);
