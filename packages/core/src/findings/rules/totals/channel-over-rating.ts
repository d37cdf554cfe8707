import { circuitRatedCurrent } from "../../../dimming/index.js";
import { figureValue, midOf, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { drawsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { ofCircuit } from "../../subject.js";

export const channelOverRating = defineRule(
  {
    code: "channel-over-rating",
    asks: "Does each channel's switched rating carry its loads?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const module = index.modules.get(circuit.module ?? "");
      const kind = index.moduleKinds.get(module?.kind ?? "");
      if (kind?.ratedSwitchedA === undefined || (circuit.loads ?? []).length === 0) continue;
      const current = circuitRatedCurrent(index, circuit);
      if (current.kind !== "known") continue;
      const subject = ofCircuit(index, circuit);
      const path = `${index.pathOf("moduleKinds", kind.id)}.ratedSwitchedA`;
      const rated = kind.ratedSwitchedA;
      const got = { value: midOf(current.value), span: current.value };
      const told = against(got, {
        value: figureValue(rated),
        span: spanOf(rated, "rating"),
        unit: "A",
        sense: "at-most",
      });
      yield {
        subject,
        ...told,
        evidence: [
          { path: `${subject.path}.loads`, label: "channel-current", unit: "A", ...got },
          figureEvidence(path, "channel-rating", "A", rated, "rating"),
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(index, [
                ...drawsOf(context, circuit),
                { path, figure: rated, instrument: "look", place: module?.place },
              ])
            : [],
      };
    }
  },
);
