import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { validateBank } from "../../../switchbank/index.js";
import { defineRule } from "../../define-rule.js";
import { ofItem } from "../../subject.js";

export const bankCodeFaulty = defineRule(
  {
    code: "bank-code-faulty",
    asks: "Is each bank code written down so that it can be followed?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const kind of index.moduleKinds.values()) {
      if (kind.bank === undefined) continue;
      const subject = ofItem(index, "moduleKinds", kind);
      const faults = validateBank(
        kind.bank,
        (kind.dimBlocks ?? []).map((block) => block.id),
      );
      const first = faults[0];
      yield {
        subject: first === undefined ? subject : { ...subject, path: `${subject.path}.bank.${first.path}` },
        verdict: first === undefined ? "holds" : "fails",
        parameters: { count: faults.length, first: first?.message ?? "" },
      };
    }
  },
);
