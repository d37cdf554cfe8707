import {
  circuitFeed,
  feedOfDriver,
  flickerOfLoad,
  type LoadFlicker,
  type SpannedFeed,
} from "../../../dimming/index.js";
import { figureValue, type Outcome } from "../../../quantity/index.js";
import type { Circuit, CoachIndex, Load } from "../../../record/index.js";
import { sourceOf } from "../../../tables/index.js";
import { defineRule, type Said } from "../../define-rule.js";
import { isDimmedToday } from "../../enabled-blocks.js";
import { figureEvidence } from "../../evidence.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { ofModule } from "../../subject.js";

const WORSE = { fails: 2, open: 1, holds: 0 } as const;

const feedOf = (index: CoachIndex, circuit: Circuit, lamp: Load): SpannedFeed | undefined => {
  const feed = circuitFeed(index, circuit);
  return feed.kind === "known" ? feedOfDriver(feed.value, lamp.id) : undefined;
};

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
        .flatMap((circuit) => loadsOf(context, circuit).map((lamp) => ({ lamp, circuit })));
      const subject = ofModule(index, module);
      const pwmHz = kind.pwmHz;
      const fromDutyRatio = kind.minDutyRatio === undefined ? 0 : Math.max(0, figureValue(kind.minDutyRatio));
      const kindPath = `${index.pathOf("moduleKinds", kind.id)}.pwmHz`;
      const evidence = [figureEvidence(kindPath, "pwm-frequency", "Hz", pwmHz)];
      // Many lamps are alike in all that counts here.
      const asked = new Map<string, Outcome<LoadFlicker>>();
      let worst: Said | undefined;
      for (const { lamp, circuit } of lamps) {
        // What feeds a driver counts only where its capacitor is known.
        const isFed = lamp.class === "led-driver" && lamp.inputCapacitanceF !== undefined;
        const key = JSON.stringify([lamp.class, lamp.filamentTimeConstantS, isFed ? lamp.id : ""]);
        const flicker =
          asked.get(key) ?? flickerOfLoad(lamp, pwmHz, fromDutyRatio, isFed ? feedOf(index, circuit, lamp) : undefined);
        asked.set(key, flicker);
        // No lamp, or a sort that nobody knows: other rules tell of both.
        if (flicker.kind === "missing" || (flicker.kind === "refused" && flicker.code === "no-light")) continue;
        // A frequency doubted down to nothing cannot be judged; that is open, not silent.
        const told = flicker.kind === "known" ? flicker.value : undefined;
        const verdict = told?.lowRisk ?? "open";
        if (worst !== undefined && WORSE[worst.verdict] >= WORSE[verdict]) continue;
        const lampPath = index.pathOf("loads", lamp.id);
        const asks = (told?.modulation.wouldSettle ?? []).map((field) => `${lampPath}.${field}`);
        worst = {
          subject,
          verdict,
          parameters: {
            lamp: lamp.name,
            pwmHz: figureValue(pwmHz),
            noEffect: told?.noEffect ?? "open",
            swingsPercent: Math.round((told?.modulationRatio.hi ?? 1) * 100),
            knownFrom: told?.modulation.knownFrom ?? "worst-case",
          },
          evidence,
          ...(told === undefined ? {} : { alsoRestsOn: [told.modulation.source] }),
          settledBy:
            verdict === "open"
              ? (asks.length > 0 ? asks : [kindPath]).map((path) => ({
                  path,
                  instrument: "ask",
                  minutes: minutesFor(index, "ask", asks.length > 0 ? lamp.place : module.place),
                }))
              : [],
        };
      }
      if (worst !== undefined) yield worst;
    }
  },
);
