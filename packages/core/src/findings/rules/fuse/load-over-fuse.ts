import { circuitRatedCurrent } from "../../../dimming/index.js";
import { COMMON_PRACTICE, figureValue, midOf, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { drawsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const loadOverFuse = defineRule(
  {
    code: "load-over-fuse",
    asks: "Do the loads of each circuit draw no more than its fuse is rated for?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const ratedA = circuit.fuse?.ratedA;
      if (ratedA === undefined || (circuit.loads ?? []).length === 0) continue;
      const current = circuitRatedCurrent(index, circuit);
      if (current.kind !== "known") continue;
      const subject = ofCircuit(index, circuit);
      const fusePath = `${subject.path}.fuse.ratedA`;
      const got = { value: midOf(current.value), span: current.value };
      const limit = {
        value: figureValue(ratedA),
        span: spanOf(ratedA, "rating"),
        unit: "A",
        sense: "at-most",
      } as const;
      const told = against(got, limit);
      const place = index.modules.get(circuit.module ?? "")?.place;
      yield {
        subject,
        ...told,
        evidence: [
          { path: `${subject.path}.loads`, label: "current", unit: "A", ...got },
          figureEvidence(fusePath, "fuse-rating", "A", ratedA, "rating"),
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(index, [
                ...drawsOf(context, circuit),
                { path: fusePath, figure: ratedA, instrument: "look", place },
              ])
            : [],
      };
    }
  },
);
