import { onlyState } from "../../../network/index.js";
import { figureValue, spanOf, sub } from "../../../quantity/index.js";
import { against, type Got } from "../../against.js";
import type { CoachContext } from "../../context.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { ofLoad } from "../../subject.js";

/** The most volts that any supply puts on the coach: the best of them, whichever runs. A full battery takes nothing and holds nothing down. */
function mostV({ index }: CoachContext): Got | undefined {
  let most: Got | undefined;
  for (const supply of index.supplies.values())
    for (const figure of [supply.outputV, supply.openCircuitV]) {
      if (figure === undefined) continue;
      const { lo, hi } = spanOf(figure, "voltage");
      const value = figureValue(figure);
      most =
        most === undefined
          ? { value, span: { lo, hi } }
          : {
              value: Math.max(most.value, value),
              span: { lo: Math.max(most.span.lo, lo), hi: Math.max(most.span.hi, hi) },
            };
    }
  return most;
}

export const voltageOverMaximum = defineRule(
  {
    code: "voltage-over-maximum",
    asks: "Does each load get no more than the highest voltage that it stands, chargers running?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    const most = mostV(context);
    if (most === undefined) return;
    for (const load of index.loads.values()) {
      const circuit = index.circuitOfLoad.get(load.id);
      if (circuit === undefined || load.maxV === undefined) continue;
      const subject = ofLoad(index, load);
      const limit = {
        value: figureValue(load.maxV),
        span: spanOf(load.maxV, "rating"),
        unit: "V",
        sense: "at-most",
      } as const;
      const evidence = [figureEvidence(`${subject.path}.maxV`, "maximum-voltage", "V", load.maxV, "rating")];
      const bound = against(most, limit);
      // No load sees more than the supplies give: where that holds, there is nothing to solve.
      if (bound.verdict === "holds") {
        yield { subject, ...bound, evidence };
        continue;
      }
      const alone = context.inState(onlyState(index, [circuit.id], `only ${load.name}`));
      const found = alone.kind === "known" ? alone.value.loads.get(load.id) : undefined;
      const drop = found?.kind === "known" ? found.value.dropV : undefined;
      const told =
        drop === undefined
          ? { ...bound, verdict: "open" as const }
          : against({ value: most.value - drop.nominal, span: sub(most.span, drop.span) }, limit);
      yield {
        subject,
        ...told,
        evidence,
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(
                index,
                [...index.supplies.values()]
                  .filter((supply) => supply.outputV !== undefined)
                  .map((supply) => ({
                    path: `${index.pathOf("supplies", supply.id)}.outputV`,
                    figure: supply.outputV,
                    instrument: "voltmeter",
                    place: supply.place,
                  })),
              )
            : [],
      };
    }
  },
);
