import { COMMON_PRACTICE, figureValue, midOf, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { driversDimmedToday } from "../../driver-told.js";
import { figureEvidence } from "../../evidence.js";
import { ofCircuit } from "../../subject.js";

export const driverPulseHeating = defineRule(
  {
    code: "driver-pulse-heating",
    asks: "Does the fuse stand the heat of dimmed drivers, whose pulses heat far more than their mean current?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const { circuit, worst, settledBy } of driversDimmedToday(context)) {
      const ratedA = circuit.fuse?.ratedA;
      if (ratedA === undefined) continue;
      const subject = ofCircuit(index, circuit);
      const limit = {
        value: figureValue(ratedA),
        span: spanOf(ratedA, "rating"),
        unit: "A",
        sense: "at-most",
      } as const;
      const told = against({ value: midOf(worst.rmsA), span: worst.rmsA }, limit);
      yield {
        subject,
        ...told,
        parameters: { ...told.parameters, knownFrom: worst.knownFrom },
        evidence: [
          { path: subject.path, label: "pulse-rms", unit: "A", value: midOf(worst.rmsA), span: worst.rmsA },
          figureEvidence(`${subject.path}.fuse.ratedA`, "fuse-rating", "A", ratedA, "rating"),
        ],
        alsoRestsOn: [worst.source],
        settledBy: told.verdict === "open" ? settledBy : [],
      };
    }
  },
);
