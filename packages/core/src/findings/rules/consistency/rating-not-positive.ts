import { COMMON_PRACTICE, figureValue } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { figuresOf, isLengthField } from "../../record-figures.js";

export const ratingNotPositive = defineRule(
  {
    code: "rating-not-positive",
    asks: "Is every rating, current, resistance and capacity more than nothing?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const field of figuresOf(index)) {
      if (isLengthField(field.name)) continue;
      const value = figureValue(field.figure);
      const wrong = field.mayBeZero ? value < 0 : value <= 0;
      yield {
        subject: { path: field.path, id: field.owner.id, name: field.owner.name },
        verdict: wrong ? "fails" : "holds",
        parameters: { field: field.name, got: value },
      };
    }
  },
);
