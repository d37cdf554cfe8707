import { COMMON_PRACTICE, type Source } from "../quantity/index.js";
import type { Load, LoadClass } from "../record/index.js";

/** Why a load may or may not be dimmed by PWM. The words are made elsewhere. */
export type SuitabilityCode =
  | "follows-duty"
  | "glows-down"
  | "linear-regulator"
  | "stated-on-record"
  | "statement-forbids"
  | "statement-unnamed"
  | "repeated-inrush"
  | "own-switch"
  | "own-switch-electronic"
  | "moves"
  | "opens-or-holds"
  | "signal-not-power"
  | "electronics-inside"
  | "anything-may-be-plugged-in"
  | "life-safety"
  | "heats"
  | "class-unknown";

/** May a load be dimmed: the answer, the reason by code, and where the rule comes from. `unknown` is never to be read as yes. */
export interface Suitability {
  readonly may: "yes" | "no" | "only-if" | "unknown";
  readonly code: SuitabilityCode;
  readonly parameters: Readonly<Record<string, string | number>>;
  readonly source: Source;
}

interface ClassRule {
  readonly may: "yes" | "no" | "only-if";
  readonly code: SuitabilityCode;
}

/** What PWM does to each class when the record states nothing of its own. Common practice, no source, one reason a line. */
const CLASS_RULES: Readonly<Record<LoadClass, ClassRule>> = {
  // Current only while the pulse lasts: the light follows the duty.
  "led-resistor": { may: "yes", code: "follows-duty" },
  // A linear current regulator without a capacitor at its input is back within the pulse.
  "led-linear": { may: "yes", code: "linear-regulator" },
  // A filament is slow: it sees the mean heating.
  filament: { may: "yes", code: "glows-down" },
  // The capacitor at the driver's input is charged anew by every pulse.
  "led-driver": { may: "only-if", code: "repeated-inrush" },
  motor: { may: "no", code: "moves" },
  pump: { may: "no", code: "moves" },
  fan: { may: "no", code: "moves" },
  actuator: { may: "no", code: "moves" },
  valve: { may: "no", code: "opens-or-holds" },
  "relay-coil": { may: "no", code: "opens-or-holds" },
  "heater-control": { may: "no", code: "signal-not-power" },
  "inverter-remote": { may: "no", code: "signal-not-power" },
  electronics: { may: "no", code: "electronics-inside" },
  outlet: { may: "no", code: "anything-may-be-plugged-in" },
  detector: { may: "no", code: "life-safety" },
  // Heat would follow the duty, but a heater's own control and its thermostat are not made for it.
  "resistive-heater": { may: "no", code: "heats" },
};

/** Classes that common practice never dims, the ones an exception on the record can free (all but the detector) included. */
export const NEVER_DIMMED: readonly LoadClass[] = (Object.keys(CLASS_RULES) as LoadClass[]).filter(
  (each) => CLASS_RULES[each].may === "no",
);

/**
 * May this load be dimmed by PWM? Judged by its class; what the record states (`allowsPwm`: a maker's statement or a reading) wins over the
 * class, except that a life-safety detector is never dimmed and a load without a class stays unknown. What common practice never dims is freed only
 * by a statement or reading that is named (`pwmEvidence`). A switch of its own in series is no matter where it is a plain contact.
 * Source: common practice, no source; on a statement, the record itself.
 */
export function suitabilityOf(
  load: Pick<Load, "class" | "allowsPwm" | "pwmEvidence" | "hasOwnSwitch" | "ownSwitchKind">,
): Suitability {
  const answer = (
    may: Suitability["may"],
    code: SuitabilityCode,
    parameters: Suitability["parameters"] = {},
  ): Suitability => ({
    may,
    code,
    parameters: load.class === undefined ? parameters : { class: load.class, ...parameters },
    source: COMMON_PRACTICE,
  });
  if (load.class === undefined) return answer("unknown", "class-unknown");
  const rule = CLASS_RULES[load.class];
  if (rule.code === "life-safety") return answer("no", "life-safety");
  if (load.allowsPwm === false) return answer("no", "statement-forbids");
  if (load.allowsPwm === true) {
    const evidence = load.pwmEvidence;
    // An exception that nobody can look up again is none.
    if (rule.may === "no" && evidence === undefined) return answer("no", "statement-unnamed", { classSays: rule.code });
    return answer("yes", "stated-on-record", {
      classSays: rule.code,
      ...(evidence !== undefined && { from: evidence.from, named: evidence.name }),
    });
  }
  if (rule.may === "no") return answer("no", rule.code);
  // A switch in the lamp may be off, or be a touch control that PWM upsets: somebody has to look, once.
  if (load.hasOwnSwitch && load.ownSwitchKind === "electronic")
    return answer("no", "own-switch-electronic", { classSays: rule.code });
  if (load.hasOwnSwitch && load.ownSwitchKind === undefined)
    return answer("only-if", "own-switch", { classSays: rule.code });
  return answer(rule.may, rule.code);
}
