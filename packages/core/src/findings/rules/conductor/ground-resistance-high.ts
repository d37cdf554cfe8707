import { maxGroundReturnOhm } from "../../../tables/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { groundPaths } from "../../ground-paths.js";
import { runLeans } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCable } from "../../subject.js";

const LIMIT = maxGroundReturnOhm();

export const groundResistanceHigh = defineRule(
  {
    code: "ground-resistance-high",
    asks: "Is the resistance of each path through chassis or strap low enough?",
    severity: "watch",
    source: LIMIT.source,
  },
  function* (context) {
    const { index } = context;
    for (const cable of groundPaths(context)) {
      const path = context.resistance(cable);
      if (path.kind !== "known") continue;
      const subject = ofCable(index, cable);
      const got = { value: path.value.ohm, span: path.value.span };
      const told = against(got, { value: LIMIT.value, unit: "ohm", sense: "at-most" });
      yield {
        subject,
        ...told,
        evidence: [{ path: `${subject.path}.resistanceOhm`, label: "resistance", unit: "ohm", ...got }],
        settledBy: told.verdict === "open" ? readingsThatSettle(index, runLeans(cable, subject.path)) : [],
      };
    }
  },
);
