import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { gapsAndDuplicates } from "../../../switchbank/index.js";
import { defineRule } from "../../define-rule.js";
import { moduleName, ofModule } from "../../subject.js";

export const duplicateAddress = defineRule(
  {
    code: "duplicate-address",
    asks: "Does each module answer to an address of its own?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const modules = [...index.modules.values()];
    const { duplicates } = gapsAndDuplicates(modules);
    const sharedBy = new Map(duplicates.map((each) => [each.address, each.modules]));
    for (const module of modules) {
      const address = module.answersTo ?? module.address;
      if (address === undefined) continue;
      const holders = sharedBy.get(address) ?? [module.id];
      const subject = ofModule(index, module);
      const first = index.modules.get(holders[0] ?? module.id) ?? module;
      yield {
        subject,
        verdict: first.id === module.id ? "holds" : "fails",
        parameters: { address, first: moduleName(first) },
        evidence: [
          {
            path: `${subject.path}.${module.answersTo === undefined ? "address" : "answersTo"}`,
            label: "address",
            unit: "count",
            value: address,
            basis: module.answersTo === undefined ? "marked" : "measured",
          },
        ],
      };
    }
  },
);
