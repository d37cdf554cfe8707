import { figureValue, spanOf } from "../../../quantity/index.js";
import { ceilingRatio } from "../../../tables/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { limitLeans } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCable } from "../../subject.js";

export const feederDeviceOverConductor = defineRule(
  {
    code: "feeder-device-over-conductor",
    asks: "Is each feeder's device no larger than its cable allows?",
    severity: "stop",
    source: ceilingRatio("nec").source,
  },
  function* (context) {
    const { index } = context;
    for (const cable of index.cables.values()) {
      const ratedA = cable.protection?.ratedA;
      const ceiling = ratedA === undefined ? undefined : context.deviceCeiling(cable);
      if (ratedA === undefined || ceiling?.kind !== "known") continue;
      const subject = ofCable(index, cable);
      const path = `${subject.path}.protection.ratedA`;
      const { valueA, span, source, alsoRestsOn } = ceiling.value;
      const told = against(
        { value: figureValue(ratedA), span: spanOf(ratedA, "rating") },
        { value: valueA, span, unit: "A", sense: "at-most" },
      );
      yield {
        subject,
        ...told,
        source,
        alsoRestsOn,
        evidence: [
          figureEvidence(path, "device-rating", "A", ratedA, "rating"),
          { path: subject.path, label: "device-ceiling", unit: "A", value: valueA, span },
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(index, [
                { path, figure: ratedA, instrument: "look", place: cable.place },
                ...limitLeans(cable, subject.path, ceiling.value),
              ])
            : [],
      };
    }
  },
);
