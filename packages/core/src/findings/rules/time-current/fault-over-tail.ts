import { bladeGates } from "../../../tables/index.js";
import { faultAsked, faultLeans, fuseAsked, gateSources } from "../../circuit-fault.js";
import { worstInFault } from "../../conductor-told.js";
import { defineRule } from "../../define-rule.js";
import { readingsThatSettle } from "../../settle.js";
import { circuitName, ofLoad } from "../../subject.js";

export const faultOverTail = defineRule(
  {
    code: "fault-over-tail",
    asks: "Does the circuit's fuse open before a short at a lamp spoils the lamp's own thinner wire?",
    severity: "mend",
    source: bladeGates().source,
  },
  function* (context) {
    const { index } = context;
    for (const load of index.loads.values()) {
      const circuit = load.tail === undefined ? undefined : index.circuitOfLoad.get(load.id);
      if (circuit === undefined || circuit.isSpare === true) continue;
      const fuse = fuseAsked(context, circuit);
      const fault = fuse.kind === "known" ? faultAsked(context, circuit) : undefined;
      if (fuse.kind !== "known" || fault?.kind !== "known") continue;
      const end = fault.value.ends.find((one) => one.loadId === load.id);
      const tail = end?.conductors.filter((one) => one.part === "tail") ?? [];
      const told = end === undefined ? undefined : worstInFault(fuse.value, end, tail);
      if (told === undefined) continue;
      const subject = ofLoad(index, load);
      const [source, ...others] = gateSources(fuse.value);
      yield {
        subject,
        verdict: told.verdict,
        severity: told.verdict === "open" ? "watch" : "mend",
        limit: told.limit,
        ...(source === undefined ? {} : { source }),
        alsoRestsOn: [...others, told.source],
        parameters: { ...told.parameters, ratedA: fuse.value.ratedA, circuit: circuitName(index, circuit) },
        evidence: told.evidence,
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(index, [...told.leansOn(index), ...faultLeans(context, circuit, load)])
            : [],
      };
    }
  },
);
