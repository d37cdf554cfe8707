import { ratedCurrentOf } from "../../../dimming/index.js";
import { figureValue, midOf, type Span, scale, spanOf, sum } from "../../../quantity/index.js";
import type { LoadClass } from "../../../record/index.js";
import { type ContactLoad, contactFactor, sourceOf } from "../../../tables/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { drawsOf, loadsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

/** The table's sort for each class; LEDs and electronics are in none of its rows. */
const SORT: Readonly<Partial<Record<LoadClass, ContactLoad>>> = {
  filament: "lamp",
  motor: "motor",
  pump: "motor",
  fan: "motor",
  actuator: "motor",
  valve: "inductive",
  "relay-coil": "inductive",
  "resistive-heater": "resistive",
};

/** Above this nominal voltage the table's 28 V column is taken. */
const MIDWAY_V = 18;

export const relayContactDerating = defineRule(
  {
    code: "relay-contact-derating",
    asks: "Is each relay contact rated far enough above lamps, motors and coils?",
    severity: "note",
    source: sourceOf("faa-t11-4"),
  },
  function* (context) {
    const { index } = context;
    const nominalV = (index.record.coach.nominalV ?? 12) > MIDWAY_V ? 24 : 12;
    for (const circuit of index.circuits.values()) {
      const kind = index.moduleKinds.get(index.modules.get(circuit.module ?? "")?.kind ?? "");
      const loads = loadsOf(context, circuit);
      if (kind?.output !== "relay" || kind.ratedSwitchedA === undefined || loads.length === 0) continue;
      const parts: Span[] = [];
      let hardest: { readonly sort: ContactLoad; readonly factor: number } | undefined;
      for (const load of loads) {
        const current = ratedCurrentOf(load);
        const sort = load.class === undefined ? undefined : SORT[load.class];
        const factor = sort === undefined ? undefined : contactFactor(sort, nominalV);
        if (current.kind !== "known" || factor?.kind !== "known" || sort === undefined) continue;
        parts.push(scale(current.value, factor.value));
        if (hardest === undefined || factor.value > hardest.factor) hardest = { sort, factor: factor.value };
      }
      if (parts.length < loads.length || hardest === undefined) continue;
      const wanted = sum(parts);
      const subject = ofCircuit(index, circuit);
      const rated = kind.ratedSwitchedA;
      const told = against(
        { value: figureValue(rated), span: spanOf(rated, "rating") },
        { value: midOf(wanted), span: wanted, unit: "A", sense: "at-least" },
      );
      yield {
        subject,
        ...told,
        parameters: { ...told.parameters, sort: hardest.sort, factor: hardest.factor },
        evidence: [
          figureEvidence(
            `${index.pathOf("moduleKinds", kind.id)}.ratedSwitchedA`,
            "channel-rating",
            "A",
            rated,
            "rating",
          ),
          { path: `${subject.path}.loads`, label: "contact-factor", unit: "count", value: hardest.factor },
        ],
        settledBy: told.verdict === "open" ? readingsThatSettle(index, drawsOf(context, circuit)) : [],
      };
    }
  },
);
