import { ratedCurrentOf } from "../../../dimming/index.js";
import { figureValue, midOf, type Span, scale, spanOf, sum } from "../../../quantity/index.js";
import { necContinuousFactor } from "../../../tables/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { drawOf, loadsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { RECORD_POLICY } from "../../sources.js";
import { ofCircuit } from "../../subject.js";

const PUBLISHED = necContinuousFactor();

export const continuousLoadOverFuse = defineRule(
  {
    code: "continuous-load-over-fuse",
    asks: "Is each fuse enough above what is left on for three hours or more?",
    severity: "mend",
    source: PUBLISHED.source,
  },
  function* (context) {
    const { index, policy } = context;
    for (const circuit of index.circuits.values()) {
      const ratedA = circuit.fuse?.ratedA;
      const lasting = loadsOf(context, circuit).filter((load) => load.isContinuous === true);
      if (ratedA === undefined || lasting.length === 0) continue;
      const parts: Span[] = [];
      for (const load of lasting) {
        const current = ratedCurrentOf(load);
        if (current.kind === "known") parts.push(current.value);
      }
      if (parts.length < lasting.length) continue;
      const span = sum(parts);
      const subject = ofCircuit(index, circuit);
      const path = `${subject.path}.fuse.ratedA`;
      const got = { value: midOf(span), span };
      const told = against(got, {
        value: figureValue(ratedA) / policy.continuousFactor,
        span: scale(spanOf(ratedA, "rating"), 1 / policy.continuousFactor),
        unit: "A",
        sense: "at-most",
      });
      yield {
        subject,
        ...told,
        source: policy.continuousFactor === PUBLISHED.value ? PUBLISHED.source : RECORD_POLICY,
        parameters: { ...told.parameters, ratedA: figureValue(ratedA), factor: policy.continuousFactor },
        evidence: [
          { path: `${subject.path}.loads`, label: "current", unit: "A", ...got },
          figureEvidence(path, "fuse-rating", "A", ratedA, "rating"),
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(
                index,
                lasting.map((load) => drawOf(context, load)),
              )
            : [],
      };
    }
  },
);
