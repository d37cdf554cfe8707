import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { circuitName, ofLoad } from "../../subject.js";

export const loadClaimedTwice = defineRule(
  {
    code: "load-claimed-twice",
    asks: "Is each load fed by one circuit only?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const claimants = new Map<string, string[]>();
    for (const circuit of index.record.circuits ?? [])
      for (const load of circuit.loads ?? [])
        claimants.set(load, [...(claimants.get(load) ?? []), circuitName(index, circuit)]);
    for (const load of index.loads.values()) {
      const circuits = claimants.get(load.id) ?? [];
      if (circuits.length === 0) continue;
      yield {
        subject: ofLoad(index, load),
        verdict: circuits.length === 1 ? "holds" : "fails",
        parameters: { count: circuits.length, circuits: circuits.join("; ") },
      };
    }
  },
);
