import { bladeGates } from "../../../tables/index.js";
import { faultAsked, faultLeans, fuseAsked, gateSources } from "../../circuit-fault.js";
import { worstInFault } from "../../conductor-told.js";
import { defineRule } from "../../define-rule.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const faultOverConductor = defineRule(
  {
    code: "fault-over-conductor",
    asks: "Does the fuse open before a short at the far end spoils any conductor on its way?",
    severity: "mend",
    source: bladeGates().source,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const fuse = circuit.isSpare === true ? undefined : fuseAsked(context, circuit);
      const fault = fuse?.kind === "known" ? faultAsked(context, circuit) : undefined;
      if (fuse?.kind !== "known" || fault?.kind !== "known") continue;
      const told = worstInFault(fuse.value, fault.value.ends[0]!, fault.value.conductors);
      if (told === undefined) continue;
      const subject = ofCircuit(index, circuit);
      const [source, ...others] = gateSources(fuse.value);
      yield {
        subject,
        verdict: told.verdict,
        severity: told.verdict === "open" ? "watch" : "mend",
        limit: told.limit,
        ...(source === undefined ? {} : { source }),
        alsoRestsOn: [...others, told.source],
        parameters: { ...told.parameters, ratedA: fuse.value.ratedA, run: told.part },
        evidence: [
          { path: `${subject.path}.fuse.ratedA`, label: "fuse-rating", unit: "A", value: fuse.value.ratedA },
          ...told.evidence,
        ],
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(index, [...told.leansOn(index), ...faultLeans(context, circuit)])
            : [],
      };
    }
  },
);
