import { lowestUsefulDuty } from "../../../dimming/index.js";
import { COMMON_PRACTICE, figureValue } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { isDimmedToday } from "../../enabled-blocks.js";
import { figureEvidence } from "../../evidence.js";
import { loadsOf } from "../../leans.js";
import { circuitName, ofLoad } from "../../subject.js";

/** A lamp that looks a quarter as bright as full, L* 25, is dim enough for the night. Common practice, no source. */
const DIM_LIGHTNESS = 25;

export const dimsNotDeep = defineRule(
  {
    code: "dims-not-deep",
    asks: "Can the module go low enough that its lamps look dim?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const dims = isDimmedToday(context, circuit);
      const kind = index.moduleKinds.get(index.modules.get(circuit.module ?? "")?.kind ?? "");
      if (dims.kind !== "known" || !dims.value || kind?.minDutyRatio === undefined) continue;
      for (const load of loadsOf(context, circuit)) {
        if (load.class === "led-driver") continue;
        const lowest = lowestUsefulDuty(kind, load);
        if (lowest.kind !== "known") continue;
        yield {
          subject: ofLoad(index, load),
          verdict: lowest.value.lightness <= DIM_LIGHTNESS ? "holds" : "fails",
          parameters: {
            circuit: circuitName(index, circuit),
            lightness: Math.round(lowest.value.lightness),
            wanted: DIM_LIGHTNESS,
            dutyPercent: Math.round(figureValue(kind.minDutyRatio) * 1000) / 10,
          },
          evidence: [
            figureEvidence(
              `${index.pathOf("moduleKinds", kind.id)}.minDutyRatio`,
              "least-duty",
              "ratio",
              kind.minDutyRatio,
            ),
          ],
        };
      }
    }
  },
);
