import type { CoachSpans } from "../../../network/index.js";
import { busCurrentOf } from "../../../protection/index.js";
import { figureValue, known, spanOf } from "../../../quantity/index.js";
import type { RecordNode } from "../../../record/index.js";
import type { CoachContext } from "../../context.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { drawsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { type Reading, worstState } from "../../state-told.js";
import { ofItem } from "../../subject.js";

/** What runs over the bar; where a load is not known, at least what the cable that feeds it is known to carry. */
function overBar(context: CoachContext, node: RecordNode, spans: CoachSpans): Reading {
  const current = busCurrentOf(context.index, spans, node.id);
  const by = context.wiring().positive.reachedBy.get(node.id);
  const atLeast = by === undefined ? undefined : spans.cableAtLeastA.get(by.id);
  return current.kind === "known"
    ? { spanned: known({ ...current.value, method: "enclosure" }) }
    : { spanned: current, atLeast };
}

export const busbarOverRating = defineRule(
  {
    code: "busbar-over-rating",
    asks: "Does each bus bar carry no more than it is rated for?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    for (const node of index.nodes.values()) {
      if (node.ratedA === undefined) continue;
      const told = worstState(context, (spans) => overBar(context, node, spans), {
        value: figureValue(node.ratedA),
        span: spanOf(node.ratedA, "rating"),
        unit: "A",
        sense: "at-most",
      });
      if (told === undefined) continue;
      const subject = ofItem(index, "nodes", node);
      yield {
        subject,
        ...told,
        evidence: [figureEvidence(`${subject.path}.ratedA`, "busbar-rating", "A", node.ratedA, "rating")],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(
                index,
                [...index.circuits.values()].flatMap((circuit) => drawsOf(context, circuit)),
              )
            : [],
      };
    }
  },
);
