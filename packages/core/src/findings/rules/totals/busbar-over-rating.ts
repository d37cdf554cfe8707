import type { CoachSpans, Spanned } from "../../../network/index.js";
import { figureValue, known, missing, type Outcome, scale, spanOf, sum } from "../../../quantity/index.js";
import type { RecordNode } from "../../../record/index.js";
import type { CoachContext } from "../../context.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { drawsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { type Reading, worstState } from "../../state-told.js";
import { ofItem } from "../../subject.js";

/** What comes in goes out: the current over a bar is half of all that runs in the cables, modules and fuses on it. */
const HALF = 0.5;

/** Everything that joins at a bar; a bar at which a supply sits itself has a current that this does not see, so it is left out. */
function throughBar({ index }: CoachContext, node: RecordNode, spans: CoachSpans): Reading {
  const parts: Outcome<Spanned>[] = [];
  let atLeast = 0;
  const put = (part: Outcome<Spanned> | undefined, least: number | undefined): void => {
    if (part === undefined) return;
    parts.push(part);
    atLeast += part.kind === "known" ? part.value.span.lo : (least ?? 0);
  };
  for (const cable of index.cables.values())
    if ((cable.from === node.id) !== (cable.to === node.id))
      put(spans.cableA.get(cable.id), spans.cableAtLeastA.get(cable.id));
  for (const module of index.modules.values())
    if (module.feedNode === node.id) put(spans.moduleA.get(module.id), spans.moduleAtLeastA.get(module.id));
  for (const circuit of index.circuits.values())
    if (circuit.module === undefined && circuit.fusePosition?.node === node.id)
      put(spans.circuitA.get(circuit.id), undefined);
  if (parts.length === 0) return { spanned: undefined };
  const sure = parts.flatMap((part) => (part.kind === "known" ? [part.value] : []));
  if (sure.length < parts.length)
    return {
      spanned: missing(...parts.flatMap((part) => (part.kind === "missing" ? part.needs : []))),
      atLeast: atLeast * HALF,
    };
  return {
    spanned: known({
      nominal: sure.reduce((total, part) => total + part.nominal, 0) * HALF,
      span: scale(sum(sure.map((part) => part.span)), HALF),
      method: "enclosure",
    }),
  };
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
    const fed = new Set([...index.supplies.values()].flatMap((s) => [s.node ?? "", s.returnNode ?? ""]));
    for (const node of index.nodes.values()) {
      if (node.ratedA === undefined || node.rail === "return" || fed.has(node.id)) continue;
      const told = worstState(context, (spans) => throughBar(context, node, spans), {
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
