import { onlyState } from "../../../network/index.js";
import { compareSpan, figureValue, hull, midOf, type Span, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import type { CoachContext } from "../../context.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { ofLoad } from "../../subject.js";

/** The volts that the supplies can put on the coach, from the lowest to the highest of them; undefined where none says. */
function suppliedV({ index }: CoachContext): Span | undefined {
  let all: Span | undefined;
  for (const supply of index.supplies.values())
    for (const figure of [supply.outputV, supply.openCircuitV]) {
      if (figure === undefined) continue;
      const one = spanOf(figure, "voltage");
      all = all === undefined ? one : hull(all, one);
    }
  return all;
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
    const supplied = suppliedV(context);
    if (supplied === undefined) return;
    for (const load of index.loads.values()) {
      const circuit = index.circuitOfLoad.get(load.id);
      if (circuit === undefined || load.maxV === undefined) continue;
      const maxV = spanOf(load.maxV, "rating");
      const subject = ofLoad(index, load);
      const limit = { value: figureValue(load.maxV), span: maxV, unit: "V", sense: "at-most" } as const;
      const evidence = [figureEvidence(`${subject.path}.maxV`, "maximum-voltage", "V", load.maxV, "rating")];
      // No load sees more than the supplies give: where that holds, there is nothing to solve.
      const bound = against({ value: supplied.hi, span: { lo: supplied.hi, hi: supplied.hi } }, limit);
      if (compareSpan(supplied, maxV.lo, "at-most") === "holds") {
        yield { subject, ...bound, evidence };
        continue;
      }
      const state = { ...onlyState(index, [circuit.id], `only ${load.name}`), chargerOn: true, engineOn: true };
      const solved = context.inState(state);
      const found = solved.kind === "known" ? solved.value.loads.get(load.id) : undefined;
      const told =
        found?.kind === "known"
          ? against({ value: found.value.onV.nominal, span: found.value.onV.span }, limit)
          : { ...against({ value: midOf(supplied), span: supplied }, limit), verdict: "open" as const };
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
