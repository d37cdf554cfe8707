import { spanOf } from "../../../quantity/index.js";
import type { Cable } from "../../../record/index.js";
import { sourceOf } from "../../../tables/index.js";
import { against } from "../../against.js";
import type { CoachContext } from "../../context.js";
import { defineRule, type Said } from "../../define-rule.js";
import { limitLeans } from "../../leans.js";
import { minutesFor, readingsThatSettle } from "../../settle.js";
import { cableName, ofCable } from "../../subject.js";

/** The nearest device on the way back to a supply, if there is one. */
function upstream(context: CoachContext, cable: Cable): Cable | undefined {
  const { sourceEnd, reachedBy } = context.wiring().positive;
  const seen = new Set<string>([cable.id]);
  let at = sourceEnd.get(cable.id);
  while (at !== undefined) {
    const before = reachedBy.get(at);
    if (before === undefined || seen.has(before.id)) return undefined;
    if (before.protection !== undefined) return before;
    seen.add(before.id);
    at = sourceEnd.get(before.id);
  }
  return undefined;
}

/** A device further up protects it too, where it is small enough for this cable. */
function byUpstream(context: CoachContext, cable: Cable, before: Cable): Pick<Said, "verdict" | "settledBy"> {
  const { index } = context;
  const ratedA = before.protection?.ratedA;
  const path = `${index.pathOf("cables", before.id)}.protection.ratedA`;
  if (ratedA === undefined)
    return {
      verdict: "open",
      settledBy: [{ path, instrument: "look", minutes: minutesFor(index, "look", before.place) }],
    };
  const ceiling = context.deviceCeiling(cable);
  const cablePath = index.pathOf("cables", cable.id);
  if (ceiling.kind !== "known") {
    const gauge = { path: `${cablePath}.gauge`, figure: undefined, instrument: "look", place: cable.place } as const;
    return { verdict: "open", settledBy: readingsThatSettle(index, [gauge]) };
  }
  const leans = [
    { path, figure: ratedA, instrument: "look", place: before.place } as const,
    ...limitLeans(cable, cablePath, ceiling.value),
  ];
  const span = spanOf(ratedA, "rating");
  const { verdict } = against(
    { value: span.lo, span },
    { value: ceiling.value.valueA, span: ceiling.value.span, unit: "A", sense: "at-most" },
  );
  return { verdict, settledBy: verdict === "open" ? readingsThatSettle(index, leans) : [] };
}

export const protectionMissing = defineRule(
  {
    code: "protection-missing",
    asks: "Does every cable from a supply have a fuse or breaker that protects it?",
    severity: "stop",
    source: sourceOf("nec-lv-rv", "552.10(E)(4)"),
  },
  function* (context) {
    const { index, policy } = context;
    const source = policy.conductorRule === "marine" ? sourceOf("cfr183-ocp") : sourceOf("nec-lv-rv", "552.10(E)(4)");
    const onPositive = context.wiring().positive.sourceEnd;
    for (const cable of index.cables.values()) {
      if ((cable.kind ?? "wire") !== "wire" || !onPositive.has(cable.id)) continue;
      const subject = ofCable(index, cable);
      if (cable.protection !== undefined) {
        yield { subject, source, verdict: "holds", parameters: { by: "its own device" } };
        continue;
      }
      const before = upstream(context, cable);
      if (before === undefined) {
        yield { subject, source, verdict: "fails", parameters: { by: "" } };
        continue;
      }
      const by = `only the device of ${cableName(index, before)}`;
      yield { subject, source, parameters: { by }, ...byUpstream(context, cable, before) };
    }
  },
);
