import { COMMON_PRACTICE } from "../../../quantity/index.js";
import type { CoachIndex, Load } from "../../../record/index.js";
import { defineRule } from "../../define-rule.js";
import { textEvidence } from "../../evidence.js";
import { minutesFor } from "../../settle.js";
import { ofLoad } from "../../subject.js";

/** Does it matter for dimming what this load is: may its channel dim, or does anybody wish it to? */
function isAskedAbout(index: CoachIndex, load: Load): boolean {
  const wished = (wish: string | undefined) => wish === "must-dim" || wish === "nice-to-dim";
  if (wished(load.wish)) return true;
  if ((index.record.jobs ?? []).some((job) => (job.wishes ?? []).some((w) => w.load === load.id && wished(w.wish))))
    return true;
  const circuit = index.circuitOfLoad.get(load.id);
  const kind = index.moduleKinds.get(index.modules.get(circuit?.module ?? "")?.kind ?? "");
  return (kind?.dimBlocks ?? []).some(
    (block) => circuit?.channel !== undefined && block.channels.includes(circuit.channel),
  );
}

export const classGuessed = defineRule(
  {
    code: "class-guessed",
    asks: "Has somebody looked what each load is that may dim, so that no verdict rests on a name?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const load of index.loads.values()) {
      if (load.class === undefined || !isAskedAbout(index, load)) continue;
      const subject = ofLoad(index, load);
      const isGuessed = load.classBasis === "assumed";
      yield {
        subject,
        verdict: isGuessed ? "open" : "holds",
        parameters: { class: load.class },
        evidence: [textEvidence(`${subject.path}.class`, "load-class", load.class)],
        settledBy: isGuessed
          ? [{ path: `${subject.path}.classBasis`, instrument: "look", minutes: minutesFor(index, "look", load.place) }]
          : [],
      };
    }
  },
);
