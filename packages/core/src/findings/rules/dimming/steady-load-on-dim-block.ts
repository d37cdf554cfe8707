import { steadyOf } from "../../../dimming/index.js";
import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule, type Said } from "../../define-rule.js";
import { isDimmedToday } from "../../enabled-blocks.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const steadyLoadOnDimBlock = defineRule(
  {
    code: "steady-load-on-dim-block",
    asks: "Is every load that must stay steady off the channels that dim today?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const dims = isDimmedToday(context, circuit);
      // A setting that no sheet lists is told by `option-setting-unknown`.
      if (dims.kind === "refused") continue;
      const module = index.modules.get(circuit.module ?? "");
      for (const load of loadsOf(context, circuit)) {
        const steady = steadyOf(load);
        // The maker's own word against PWM is told by `dimmed-load-not-suited`, a touch switch by `own-switch-on-dimmed`.
        if (steady.code === "statement-forbids" || steady.code === "own-switch-electronic") continue;
        if (module === undefined) continue;
        const look = (path: string, place: string | undefined): Said["settledBy"] => [
          { path, instrument: "look", minutes: minutesFor(index, "look", place) },
        ];
        const base = {
          subject: ofCircuit(index, circuit),
          source: steady.source,
          parameters: { load: load.name, why: steady.code, class: load.class ?? "" },
        };
        if ((dims.kind === "known" && !dims.value) || steady.must === "no") yield { ...base, verdict: "holds" };
        else if (dims.kind === "missing")
          yield {
            ...base,
            verdict: "open",
            severity: "watch",
            settledBy: dims.needs.flatMap((path) => look(path, module.place) ?? []),
          };
        else if (steady.must === "yes") yield { ...base, verdict: "fails" };
        else yield { ...base, verdict: "open", settledBy: look(`${index.pathOf("loads", load.id)}.class`, load.place) };
      }
    }
  },
);
