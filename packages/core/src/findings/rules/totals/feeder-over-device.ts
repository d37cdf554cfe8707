import { COMMON_PRACTICE, figureValue, spanOf } from "../../../quantity/index.js";
import { cableDraws } from "../../cable-draws.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { readingsThatSettle } from "../../settle.js";
import { worstState } from "../../state-told.js";
import { ofCable } from "../../subject.js";

export const feederOverDevice = defineRule(
  {
    code: "feeder-over-device",
    asks: "Does each feeder carry no more than its own fuse or breaker is rated for?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const cable of index.cables.values()) {
      const ratedA = cable.protection?.ratedA;
      if (ratedA === undefined) continue;
      const told = worstState(
        context,
        (spans) => ({ spanned: spans.cableA.get(cable.id), atLeast: spans.cableAtLeastA.get(cable.id) }),
        { value: figureValue(ratedA), span: spanOf(ratedA, "rating"), unit: "A", sense: "at-most" },
      );
      if (told === undefined) continue;
      const subject = ofCable(index, cable);
      const path = `${subject.path}.protection.ratedA`;
      yield {
        subject,
        ...told,
        evidence: [
          { path: subject.path, label: "feeder-current", unit: "A", value: told.parameters.got ?? 0 },
          figureEvidence(path, "device-rating", "A", ratedA, "rating"),
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(index, [
                { path, figure: ratedA, instrument: "look", place: cable.place },
                ...cableDraws(context, cable),
              ])
            : [],
      };
    }
  },
);
