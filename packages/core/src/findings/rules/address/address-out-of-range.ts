import { addressesOf } from "../../../switchbank/index.js";
import { defineRule } from "../../define-rule.js";
import { PART_SHEET } from "../../sources.js";
import { ofModule } from "../../subject.js";

export const addressOutOfRange = defineRule(
  {
    code: "address-out-of-range",
    asks: "Can the module's switches give the address that is wanted of it?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* ({ index }) {
    for (const module of index.modules.values()) {
      const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
      if (module.address === undefined || kind?.bank?.address === undefined) continue;
      const possible = addressesOf(kind.bank.address);
      if (possible.length === 0) continue;
      const subject = ofModule(index, module);
      yield {
        subject,
        verdict: possible.includes(module.address) ? "holds" : "fails",
        parameters: {
          address: module.address,
          lowest: Math.min(...possible),
          highest: Math.max(...possible),
          kind: kind.name,
        },
        evidence: [
          { path: `${subject.path}.address`, label: "address", unit: "count", value: module.address, basis: "marked" },
        ],
      };
    }
  },
);
