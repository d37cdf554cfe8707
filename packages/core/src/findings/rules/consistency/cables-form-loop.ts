import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofCable } from "../../subject.js";

export const cablesFormLoop = defineRule(
  {
    code: "cables-form-loop",
    asks: "Is there one path only from the supplies to each bar and module?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { sourceEnd, closing } = context.wiring().positive;
    for (const cable of context.index.cables.values())
      if (sourceEnd.has(cable.id))
        yield {
          subject: ofCable(context.index, cable),
          verdict: closing.includes(cable) ? "fails" : "holds",
        };
  },
);
