import { flickerOf, modulationOf } from "../../../dimming/index.js";
import { figureValue, spanOf } from "../../../quantity/index.js";
import { sourceOf } from "../../../tables/index.js";
import { defineRule, type Said } from "../../define-rule.js";
import { isDimmedToday } from "../../enabled-blocks.js";
import { figureEvidence } from "../../evidence.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { ofModule } from "../../subject.js";

/** Any duty between off and full swings an unfiltered lamp fully; half stands for them all. */
const SOME_DUTY = 0.5;
const WORSE = { fails: 2, open: 1, holds: 0 } as const;

export const flickerRisk = defineRule(
  {
    code: "flicker-risk",
    asks: "Is the PWM fast enough that the lamps dimmed today keep the low-risk limit of flicker?",
    severity: "watch",
    source: sourceOf("ieee1789"),
  },
  function* (context) {
    const { index } = context;
    for (const module of index.modules.values()) {
      const kind = index.moduleKinds.get(module.kind ?? "");
      if (kind?.pwmHz === undefined) continue;
      const lamps = (index.circuitsOfModule.get(module.id) ?? [])
        .filter((circuit) => {
          const dims = isDimmedToday(context, circuit);
          return dims.kind === "known" && dims.value;
        })
        .flatMap((circuit) => loadsOf(context, circuit));
      const subject = ofModule(index, module);
      const pwmHz = kind.pwmHz;
      const evidence = [figureEvidence(`${index.pathOf("moduleKinds", kind.id)}.pwmHz`, "pwm-frequency", "Hz", pwmHz)];
      let worst: Said | undefined;
      for (const lamp of lamps) {
        const swing = modulationOf(lamp.class, SOME_DUTY);
        if (swing.kind !== "known") continue;
        const flicker = flickerOf(spanOf(pwmHz, "frequency"), swing.value);
        // A frequency doubted down to nothing cannot be judged; that is open, not silent.
        const verdict = flicker.kind === "known" ? flicker.value.lowRisk : "open";
        const noEffect = flicker.kind === "known" ? flicker.value.noEffect : "open";
        if (worst !== undefined && WORSE[worst.verdict] >= WORSE[verdict]) continue;
        worst = {
          subject,
          verdict,
          parameters: { lamp: lamp.name, pwmHz: figureValue(pwmHz), noEffect },
          evidence,
          settledBy:
            verdict === "open"
              ? [
                  {
                    path: `${index.pathOf("loads", lamp.id)}.class`,
                    instrument: "ask",
                    minutes: minutesFor(index, "ask", lamp.place),
                  },
                ]
              : [],
        };
      }
      if (worst !== undefined) yield worst;
    }
  },
);
