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
    const minutes = (place: string | undefined) => minutesFor(index, "look", place);
    const asked: { path: string; instrument: "look"; minutes: number }[] = [];
    for (const supply of supplies)
      for (const field of ["node", "returnNode"] as const)
        if (supply[field] === undefined)
          asked.push({
            path: `${index.pathOf("supplies", supply.id)}.${field}`,
            instrument: "look",
            minutes: minutes(supply.place),
          });
    if (!supplies.some((supply) => supply.kind === "battery"))
      asked.push({ path: "supplies", instrument: "look", minutes: minutes(undefined) });
    yield {
      subject: { ...ofCoach(index), path: "supplies" },
      verdict: asked.length === 0 ? "holds" : "open",
      parameters: { count: supplies.length },
      settledBy: asked,
    };
  },
);
