import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCoach } from "../../subject.js";

export const noSupply = defineRule(
  {
    code: "no-supply",
    asks: "Is it known what feeds the coach and where it connects?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const supplies = [...index.supplies.values()];
    const unplaced = supplies.find((supply) => supply.node === undefined);
    const isKnown = supplies.some((supply) => supply.kind === "battery" && supply.node !== undefined);
    const path = unplaced === undefined ? "supplies" : `${index.pathOf("supplies", unplaced.id)}.node`;
    yield {
      subject: { ...ofCoach(index), path: "supplies" },
      verdict: isKnown ? "holds" : "open",
      parameters: { count: supplies.length },
      settledBy: isKnown ? [] : [{ path, instrument: "look", minutes: minutesFor(index, "look", unplaced?.place) }],
    };
  },
);
