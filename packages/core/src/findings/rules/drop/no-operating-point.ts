import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofCoach } from "../../subject.js";

export const noOperatingPoint = defineRule(
  {
    code: "no-operating-point",
    asks: "Can all that is on at once really run together?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    for (const [state, severity] of [
      [context.busyState(), "mend"],
      [context.allOnState(), "watch"],
    ] as const) {
      const solved = context.inState(state);
      // Missing figures and spans that cannot be bounded say nothing about whether the loads can run.
      if (solved.kind === "missing" || (solved.kind === "refused" && solved.code !== "no-operating-point")) continue;
      yield {
        subject: ofCoach(context.index),
        verdict: solved.kind === "known" ? "holds" : "fails",
        severity,
        parameters: { state: state.name, because: solved.kind === "refused" ? solved.because : "" },
      };
    }
  },
);
