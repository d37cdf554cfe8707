import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { gapsAndDuplicates } from "../../../switchbank/index.js";
import { defineRule } from "../../define-rule.js";
import { TWO_WIRE } from "../../subject.js";

export const networkAddressNotOnRecord = defineRule(
  {
    code: "network-address-not-on-record",
    asks: "Does the record have a module for every address seen on the network?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const seen = index.record.network?.addressesSeen;
    if (seen === undefined) return;
    const { strangers } = gapsAndDuplicates([...index.modules.values()], seen);
    for (const [i, address] of seen.entries())
      yield {
        subject: { ...TWO_WIRE, path: `network.addressesSeen[${i}]` },
        verdict: strangers.includes(address) ? "fails" : "holds",
        parameters: { address },
      };
  },
);
