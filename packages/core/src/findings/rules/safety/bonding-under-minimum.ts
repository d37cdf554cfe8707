import { sourceOf } from "../../../tables/index.js";
import { defineRule } from "../../define-rule.js";
import { atLeastGauge } from "../../minimum-gauge.js";
import { minutesFor } from "../../settle.js";
import { ofCable } from "../../subject.js";

const LEAST_GAUGE = "8";

export const bondingUnderMinimum = defineRule(
  {
    code: "bonding-under-minimum",
    asks: "Is the conductor from battery negative to the chassis 8 AWG or thicker?",
    severity: "mend",
    source: sourceOf("nec-lv-rv", "552.10(C)(4)"),
  },
  function* ({ index, policy }) {
    const negatives = new Set(
      [...index.supplies.values()].flatMap((s) => (s.kind === "battery" && s.returnNode ? [s.returnNode] : [])),
    );
    const isGround = (node: string): boolean => index.nodes.get(node)?.kind === "ground";
    for (const cable of index.cables.values()) {
      if ((cable.kind ?? "wire") !== "wire") continue;
      const bonds =
        (negatives.has(cable.from) && isGround(cable.to)) || (negatives.has(cable.to) && isGround(cable.from));
      const told = bonds ? atLeastGauge(cable, policy, LEAST_GAUGE) : undefined;
      if (told === undefined) continue;
      const subject = ofCable(index, cable);
      const path = `${subject.path}.${cable.sectionMm2 === undefined ? "gauge" : "sectionMm2"}`;
      yield {
        subject,
        ...told,
        evidence: [{ path, label: "section", unit: "mm2", value: told.parameters.got ?? 0 }],
        settledBy:
          told.verdict === "open"
            ? [{ path, instrument: "look", minutes: minutesFor(index, "look", cable.place) }]
            : [],
      };
    }
  },
);
