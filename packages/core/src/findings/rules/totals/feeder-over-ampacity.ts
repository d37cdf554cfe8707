import { sourceOf } from "../../../tables/index.js";
import { cableDraws } from "../../cable-draws.js";
import { defineRule } from "../../define-rule.js";
import { limitLeans } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { worstState } from "../../state-told.js";
import { ofCable } from "../../subject.js";

export const feederOverAmpacity = defineRule(
  {
    code: "feeder-over-ampacity",
    asks: "Does each feeder carry no more than its cable stands?",
    severity: "mend",
    source: sourceOf("cfr183-t5"),
  },
  function* (context) {
    const { index } = context;
    for (const cable of index.cables.values()) {
      const ampacity = (cable.kind ?? "wire") === "wire" ? context.ampacity(cable) : undefined;
      if (ampacity?.kind !== "known") continue;
      const { valueA, span, source, alsoRestsOn } = ampacity.value;
      const told = worstState(
        context,
        (spans) => ({ spanned: spans.cableA.get(cable.id), atLeast: spans.cableAtLeastA.get(cable.id) }),
        { value: valueA, span, unit: "A", sense: "at-most" },
      );
      if (told === undefined) continue;
      const subject = ofCable(index, cable);
      yield {
        subject,
        ...told,
        source,
        alsoRestsOn,
        evidence: [
          { path: subject.path, label: "feeder-current", unit: "A", value: told.parameters.got ?? 0 },
          { path: subject.path, label: "ampacity", unit: "A", value: valueA, span },
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(index, [
                ...limitLeans(cable, subject.path, ampacity.value),
                ...cableDraws(context, cable),
              ])
            : [],
      };
    }
  },
);
