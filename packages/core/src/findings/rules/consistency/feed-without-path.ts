import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule, type Said } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit, ofModule } from "../../subject.js";

export const feedWithoutPath = defineRule(
  {
    code: "feed-without-path",
    asks: "Do cables lead from a supply to every module and fuse block?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    // Without a supply that says where it connects, no path can start; `no-supply` says so once for all.
    const reached = context.wiring().positive.nodes;
    if (reached.size === 0) return;
    const told = (
      subject: Said["subject"],
      node: string | undefined,
      field: string,
      place: string | undefined,
    ): Said => ({
      subject,
      verdict: node === undefined ? "open" : reached.has(node) ? "holds" : "fails",
      severity: node === undefined ? "note" : "mend",
      parameters: { node: node === undefined ? "" : (index.nodes.get(node)?.name ?? node) },
      settledBy:
        node === undefined
          ? [{ path: `${subject.path}.${field}`, instrument: "look", minutes: minutesFor(index, "look", place) }]
          : [],
    });
    for (const module of index.modules.values())
      yield told(ofModule(index, module), module.feedNode, "feedNode", module.place);
    for (const circuit of index.circuits.values())
      if (circuit.module === undefined && circuit.fusePosition !== undefined)
        yield told(ofCircuit(index, circuit), circuit.fusePosition.node, "fusePosition.node", undefined);
  },
);
