import { COMMON_PRACTICE, figureValue } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import type { SettledBy } from "../../finding.js";
import { figuresOf } from "../../record-figures.js";
import { minutesFor } from "../../settle.js";

/** By the unit in its name: what reads it. What is printed on a part is looked at again. */
const instrumentFor = (field: string): SettledBy["instrument"] => {
  if (/[a-z]M$/.test(field)) return "tape measure";
  if (/^(currentA|stallA|standbyA|quiescentA)$/.test(field)) return "clamp meter";
  if (/Ohm$/.test(field)) return "ohmmeter";
  return field === "openCircuitV" ? "voltmeter" : "look";
};

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
      const isWider = figure.plusMinus > value;
      const instrument = instrumentFor(name);
      // Open, not failed: it may well be right, and a finer reading tells.
      yield {
        subject: { path, id: owner.id, name: owner.name },
        verdict: isWider ? "open" : "holds",
        parameters: { field: name, got: value, plusMinus: figure.plusMinus },
        settledBy: isWider ? [{ path, instrument, minutes: minutesFor(index, instrument, undefined) }] : [],
      };
    }
  },
);
