import { COMMON_PRACTICE } from "../../../quantity/index.js";
import type { CoachIndex } from "../../../record/index.js";
import { defineRule, type Said } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCable, ofCircuit } from "../../subject.js";

type Told = Pick<Said, "verdict" | "parameters" | "settledBy">;

/** A circuit must start at a channel or at a plain fuse; its return must land on the return side, if it says where. */
function wireOf(index: CoachIndex, circuit: (typeof index.record.circuits & object)[number]): Told {
  const place = index.modules.get(circuit.module ?? "")?.place;
  const look = (field: string): Said["settledBy"] => [
    {
      path: `${index.pathOf("circuits", circuit.id)}.${field}`,
      instrument: "look",
      minutes: minutesFor(index, "look", place),
    },
  ];
  if (circuit.module === undefined && circuit.fusePosition === undefined)
    return { verdict: "fails", parameters: { why: "no-start" }, settledBy: look("module") };
  if (circuit.module !== undefined && circuit.channel === undefined)
    return { verdict: "open", parameters: { why: "no-channel" }, settledBy: look("channel") };
  const lands = circuit.return?.node === undefined ? undefined : index.nodes.get(circuit.return.node);
  if (lands?.rail === "positive")
    return { verdict: "fails", parameters: { why: "return-on-positive", node: lands.name } };
  return { verdict: "holds", parameters: { why: "none" } };
}

export const wireToNowhere = defineRule(
  {
    code: "wire-to-nowhere",
    asks: "Does every wire and cable start and end somewhere, and on the right side?",
    severity: "stop",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const circuit of index.record.circuits ?? [])
      yield { subject: ofCircuit(index, circuit), severity: "mend", ...wireOf(index, circuit) };
    for (const cable of index.cables.values()) {
      const from = index.nodes.get(cable.from);
      const to = index.nodes.get(cable.to);
      const crosses = from?.rail !== undefined && to?.rail !== undefined && from.rail !== to.rail;
      yield {
        subject: ofCable(index, cable),
        verdict: cable.from === cable.to || crosses ? "fails" : "holds",
        severity: crosses ? "stop" : "mend",
        parameters: { why: crosses ? "joins-rails" : cable.from === cable.to ? "same-end" : "none" },
      };
    }
  },
);
