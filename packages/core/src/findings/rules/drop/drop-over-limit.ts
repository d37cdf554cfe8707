import type { Load } from "../../../record/index.js";
import { maxDropRatio } from "../../../tables/index.js";
import type { CoachContext } from "../../context.js";
import { defineRule } from "../../define-rule.js";
import { dropReadings } from "../../drop-readings.js";
import { loadTold } from "../../load-told.js";
import { RECORD_POLICY } from "../../sources.js";
import { ofLoad } from "../../subject.js";

const PUBLISHED = { critical: maxDropRatio("critical"), general: maxDropRatio("general") };

/** Where most of the drop happens with everything on, by its place. */
function mostOf(context: CoachContext, load: Load): string {
  const result = context.allOn()?.nominal.loads.get(load.id);
  if (result?.kind !== "known") return "";
  const byPlace = new Map<string, number>();
  for (const { place, dropV } of result.value.parts) byPlace.set(place, (byPlace.get(place) ?? 0) + dropV);
  return [...byPlace].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "";
}

export const dropOverLimit = defineRule(
  {
    code: "drop-over-limit",
    asks: "Is the voltage lost on the way to each load and back within the limit?",
    severity: "mend",
    source: PUBLISHED.general.source,
  },
  function* (context) {
    const { index, policy, nominalV } = context;
    for (const load of index.loads.values()) {
      const circuit = index.circuitOfLoad.get(load.id);
      if (circuit === undefined) continue;
      const sort = load.isCritical === true ? "critical" : "general";
      const ratio = sort === "critical" ? policy.maxDropRatioCritical : policy.maxDropRatioGeneral;
      const limit = { value: ratio * nominalV, unit: "V", sense: "at-most" } as const;
      const told = loadTold(context, load, circuit, "dropV", limit, sort === "critical");
      if (told === undefined) continue;
      yield {
        subject: ofLoad(index, load),
        ...told,
        // A dim lamp is to be said, not to be mended; whether a load still works is asked by `voltage-under-minimum`.
        severity: sort === "critical" ? (told.severity ?? "mend") : "watch",
        source: ratio === PUBLISHED[sort].value ? PUBLISHED[sort].source : RECORD_POLICY,
        parameters: { ...told.parameters, ratio, most: told.verdict === "holds" ? "" : mostOf(context, load) },
        evidence: [{ path: index.pathOf("loads", load.id), label: "drop", unit: "V", value: told.parameters.got ?? 0 }],
        settledBy: told.verdict === "open" ? dropReadings(context, load, circuit) : [],
      };
    }
  },
);
