import { COMMON_PRACTICE, figureValue } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofItem } from "../../subject.js";

export const batteryFigureImpossible = defineRule(
  {
    code: "battery-figure-impossible",
    asks: "Are each battery's exponent and charge figures that a battery can have?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const supply of index.supplies.values()) {
      if (supply.kind !== "battery") continue;
      const subject = ofItem(index, "supplies", supply);
      for (const [field, least, most] of [
        ["peukertExponent", 1, Number.POSITIVE_INFINITY],
        ["chargeRatio", 0, 1],
      ] as const) {
        const figure = supply[field];
        if (figure === undefined) continue;
        const got = figureValue(figure);
        yield {
          subject: { ...subject, path: `${subject.path}.${field}` },
          verdict: got >= least && got <= most ? "holds" : "fails",
          parameters: { field, got },
        };
      }
    }
  },
);
