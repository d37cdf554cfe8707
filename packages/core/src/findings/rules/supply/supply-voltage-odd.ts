import { COMMON_PRACTICE, compareSpan, figureValue, spanOf } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { readingsThatSettle } from "../../settle.js";
import { ofItem } from "../../subject.js";

/** Common practice, no source: an empty bank lies above four fifths of its nominal volts, a charger below five quarters. */
const LOWEST_RATIO = 0.8;
const HIGHEST_RATIO = 1.25;

export const supplyVoltageOdd = defineRule(
  {
    code: "supply-voltage-odd",
    asks: "Is the voltage of each supply one that fits the coach's nominal voltage?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const nominalV = index.record.coach.nominalV;
    if (nominalV === undefined) return;
    const lowest = nominalV * LOWEST_RATIO;
    const highest = nominalV * HIGHEST_RATIO;
    for (const supply of index.supplies.values()) {
      const subject = ofItem(index, "supplies", supply);
      for (const field of ["openCircuitV", "outputV"] as const) {
        const figure = supply[field];
        if (figure === undefined) continue;
        const path = `${subject.path}.${field}`;
        const span = spanOf(figure, "voltage");
        const low = compareSpan(span, lowest, "at-least");
        const high = compareSpan(span, highest, "at-most");
        const verdict = low === "fails" || high === "fails" ? "fails" : low === high ? low : "open";
        yield {
          subject: { ...subject, path },
          verdict,
          parameters: { got: figureValue(figure), gotLo: span.lo, gotHi: span.hi, lowest, highest, nominalV },
          evidence: [figureEvidence(path, "supply-voltage", "V", figure)],
          settledBy:
            verdict === "open"
              ? readingsThatSettle(index, [{ path, figure, instrument: "voltmeter", place: supply.place }])
              : [],
        };
      }
    }
  },
);
