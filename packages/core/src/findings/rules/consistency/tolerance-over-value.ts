import { COMMON_PRACTICE, figureValue } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { figuresOf } from "../../record-figures.js";

export const toleranceOverValue = defineRule(
  {
    code: "tolerance-over-value",
    asks: "Is every stated tolerance smaller than the figure it belongs to?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const { path, name, figure, owner, mayBeZero } of figuresOf(index)) {
      // Where nothing at all is a fair reading, a meter that reads no finer is one too.
      if (mayBeZero || typeof figure === "number" || figure.plusMinus === undefined) continue;
      const value = figureValue(figure);
      if (value <= 0) continue;
      yield {
        subject: { path, id: owner.id, name: owner.name },
        verdict: figure.plusMinus > value ? "fails" : "holds",
        parameters: { field: name, got: value, plusMinus: figure.plusMinus },
      };
    }
  },
);
