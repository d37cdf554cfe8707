import { pointKey } from "../../../network/index.js";
import { maxGroundReturnOhm } from "../../../tables/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { groundPaths, returnsByNode } from "../../ground-paths.js";
import { runLeans } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { ofItem } from "../../subject.js";

const LIMIT = maxGroundReturnOhm();
const SHARED_BY = 2;

export const sharedReturnPoor = defineRule(
  {
    code: "shared-return-poor",
    asks: "Is each ground that several circuits share a good one?",
    severity: "mend",
    source: LIMIT.source,
  },
  function* (context) {
    const { index } = context;
    const counted = returnsByNode(context);
    for (const cable of groundPaths(context)) {
      const shared = [cable.from, cable.to].find((node) => (counted.get(node) ?? 0) >= SHARED_BY);
      const node = shared === undefined ? undefined : index.nodes.get(shared);
      const path = context.resistance(cable);
      if (node === undefined || path.kind !== "known") continue;
      const cablePath = index.pathOf("cables", cable.id);
      const got = { value: path.value.ohm, span: path.value.span };
      const told = against(got, { value: LIMIT.value, unit: "ohm", sense: "at-most" });
      const riseV = context.allOn()?.nominal.nodeV.get(pointKey({ at: node.id }));
      yield {
        subject: ofItem(index, "nodes", node),
        ...told,
        parameters: {
          ...told.parameters,
          count: counted.get(node.id) ?? 0,
          ...(riseV === undefined ? {} : { riseV }),
        },
        evidence: [{ path: `${cablePath}.resistanceOhm`, label: "resistance", unit: "ohm", ...got }],
        settledBy: told.verdict === "open" ? readingsThatSettle(index, runLeans(cable, cablePath)) : [],
      };
    }
  },
);
