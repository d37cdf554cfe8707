import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { driversDimmedToday } from "../../driver-told.js";
import { ofCircuit } from "../../subject.js";

/** As good as always; the engine counts time in steps. */
const ALWAYS_RATIO = 1 - 1e-9;

export const driverStopsWhenDimmed = defineRule(
  {
    code: "driver-stops-when-dimmed",
    asks: "Do drivers run on between the pulses at the module's lowest duty?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    for (const { circuit, worst, settledBy } of driversDimmedToday(context)) {
      const runs = worst.runsAtLeastRatio;
      const verdict = runs.lo >= ALWAYS_RATIO ? "holds" : runs.hi < ALWAYS_RATIO ? "fails" : "open";
      yield {
        subject: ofCircuit(context.index, circuit),
        verdict,
        parameters: {
          dutyPercent: Math.round(worst.leastDutyRatio * 1000) / 10,
          runsPercent: Math.round(runs.hi * 100),
          knownFrom: worst.knownFrom,
        },
        alsoRestsOn: [worst.source],
        settledBy: verdict === "open" ? settledBy : [],
      };
    }
  },
);
