import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofModule } from "../../subject.js";

export const moduleDead = defineRule(
  { code: "module-dead", asks: "Does every module work?", severity: "mend", source: COMMON_PRACTICE },
  function* ({ index }) {
    for (const module of index.modules.values())
      yield {
        subject: ofModule(index, module),
        verdict: module.isDead === true ? "fails" : "holds",
        parameters: { circuits: (index.circuitsOfModule.get(module.id) ?? []).length },
      };
  },
);
