import { figureValue, spanOf } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { drawsOf } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { worstState } from "../../state-told.js";
import { ofModule } from "../../subject.js";

export const moduleOverRating = defineRule(
  {
    code: "module-over-rating",
    asks: "Does each module carry no more in all than its sheet allows?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    for (const module of index.modules.values()) {
      const kind = index.moduleKinds.get(module.kind ?? "");
      if (kind?.ratedTotalA === undefined) continue;
      const rated = kind.ratedTotalA;
      const told = worstState(
        context,
        (spans) => ({ spanned: spans.moduleA.get(module.id), atLeast: spans.moduleAtLeastA.get(module.id) }),
        { value: figureValue(rated), span: spanOf(rated, "rating"), unit: "A", sense: "at-most" },
      );
      if (told === undefined) continue;
      const subject = ofModule(index, module);
      const path = `${index.pathOf("moduleKinds", kind.id)}.ratedTotalA`;
      const circuits = index.circuitsOfModule.get(module.id) ?? [];
      yield {
        subject,
        ...told,
        evidence: [
          { path: subject.path, label: "module-current", unit: "A", value: told.parameters.got ?? 0 },
          figureEvidence(path, "module-rating", "A", rated, "rating"),
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(
                index,
                circuits.flatMap((circuit) => drawsOf(context, circuit)),
              )
            : [],
      };
    }
  },
);
