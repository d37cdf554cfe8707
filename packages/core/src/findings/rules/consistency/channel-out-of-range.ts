import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofCircuit } from "../../subject.js";

export const channelOutOfRange = defineRule(
  {
    code: "channel-out-of-range",
    asks: "Does the module have the channel that the circuit names?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const circuit of index.record.circuits ?? []) {
      const kindId = circuit.module === undefined ? undefined : index.modules.get(circuit.module)?.kind;
      const kind = kindId === undefined ? undefined : index.moduleKinds.get(kindId);
      if (kind === undefined || circuit.channel === undefined) continue;
      const subject = ofCircuit(index, circuit);
      yield {
        subject,
        verdict: circuit.channel <= kind.channels ? "holds" : "fails",
        parameters: { channel: circuit.channel, channels: kind.channels, kind: kind.name },
        evidence: [
          { path: `${subject.path}.channel`, label: "channel", unit: "count", value: circuit.channel, basis: "marked" },
        ],
        limit: { value: kind.channels, unit: "count", sense: "at-most" },
      };
    }
  },
);
