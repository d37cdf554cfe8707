import { CLASS_BATTERY } from "../../../endurance/index.js";
import { defineRule } from "../../define-rule.js";
import { readingsThatSettle } from "../../settle.js";
import { ofItem } from "../../subject.js";

export const exponentAssumed = defineRule(
  {
    code: "exponent-assumed",
    asks: "Is it known how much less each battery gives the harder it is drawn?",
    severity: "note",
    source: CLASS_BATTERY.exponent.lead.source,
  },
  function* ({ index }) {
    for (const supply of index.supplies.values()) {
      if (supply.kind !== "battery") continue;
      const subject = ofItem(index, "supplies", supply);
      const own = CLASS_BATTERY.exponent[supply.chemistry === "lifepo4" ? "lithium" : "lead"];
      const isKnown = supply.peukertExponent !== undefined;
      const path = `${subject.path}.peukertExponent`;
      yield {
        subject,
        verdict: isKnown ? "holds" : "open",
        source: own.source,
        parameters: { taken: own.value, takenLo: own.span.lo, takenHi: own.span.hi },
        settledBy: isKnown
          ? []
          : readingsThatSettle(index, [{ path, figure: undefined, instrument: "ask", place: supply.place }]),
      };
    }
  },
);
