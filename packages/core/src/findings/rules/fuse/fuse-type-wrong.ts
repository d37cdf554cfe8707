import { defineRule } from "../../define-rule.js";
import { textEvidence } from "../../evidence.js";
import { PART_SHEET } from "../../sources.js";
import { ofCircuit } from "../../subject.js";

export const fuseTypeWrong = defineRule(
  {
    code: "fuse-type-wrong",
    asks: "Is each fuse of the type that its module takes?",
    severity: "watch",
    source: PART_SHEET,
  },
  function* ({ index }) {
    for (const circuit of index.circuits.values()) {
      const kind = index.moduleKinds.get(index.modules.get(circuit.module ?? "")?.kind ?? "");
      const type = circuit.fuse?.type;
      if (kind?.fuseType === undefined || type === undefined) continue;
      const subject = ofCircuit(index, circuit);
      yield {
        subject,
        verdict: type === kind.fuseType ? "holds" : "fails",
        parameters: { got: type, wanted: kind.fuseType, kind: kind.name },
        evidence: [textEvidence(`${subject.path}.fuse.type`, "fuse-type", type)],
      };
    }
  },
);
