import { figureValue, spanOf } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { dropReadings } from "../../drop-readings.js";
import { figureEvidence } from "../../evidence.js";
import { loadTold } from "../../load-told.js";
import { PART_SHEET } from "../../sources.js";
import { ofLoad } from "../../subject.js";

export const voltageUnderMinimum = defineRule(
  {
    code: "voltage-under-minimum",
    asks: "Does each load get the lowest voltage that it works at?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    for (const load of index.loads.values()) {
      const circuit = index.circuitOfLoad.get(load.id);
      if (circuit === undefined || load.minV === undefined) continue;
      const told = loadTold(
        context,
        load,
        circuit,
        "onV",
        {
          value: figureValue(load.minV),
          span: spanOf(load.minV, "rating"),
          unit: "V",
          sense: "at-least",
        },
        true,
      );
      if (told === undefined) continue;
      const subject = ofLoad(index, load);
      yield {
        subject,
        ...told,
        evidence: [
          { path: subject.path, label: "load-voltage", unit: "V", value: told.parameters.got ?? 0 },
          figureEvidence(`${subject.path}.minV`, "minimum-voltage", "V", load.minV, "rating"),
        ],
        settledBy: told.verdict === "open" ? dropReadings(context, load, circuit) : [],
      };
    }
  },
);
