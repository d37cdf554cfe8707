import { protectionDistanceOf } from "../../../protection/index.js";
import { figureValue, spanOf } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCable } from "../../subject.js";

export const protectionFarFromSource = defineRule(
  {
    code: "protection-far-from-source",
    asks: "Does each feeder's fuse or breaker sit near enough to where its supply connects?",
    severity: "mend",
    source: protectionDistanceOf({ conductorRule: "nec" }).source,
  },
  function* (context) {
    const { index, policy } = context;
    const onPositive = context.wiring().positive.sourceEnd;
    for (const cable of index.cables.values()) {
      const distanceM = cable.protection?.distanceFromSourceM;
      if (cable.protection === undefined || !onPositive.has(cable.id)) continue;
      const subject = ofCable(index, cable);
      const path = `${subject.path}.protection.distanceFromSourceM`;
      const { maxM: value, source } = protectionDistanceOf(policy, cable.isSheathed === true);
      const leans = [{ path, figure: distanceM, instrument: "tape measure", place: cable.place } as const];
      if (distanceM === undefined) {
        yield {
          subject,
          verdict: "open",
          severity: "note",
          source,
          parameters: { limit: value },
          limit: { value, unit: "m", sense: "at-most" },
          settledBy: readingsThatSettle(index, leans),
        };
        continue;
      }
      const told = against(
        { value: figureValue(distanceM), span: spanOf(distanceM, "length") },
        { value, unit: "m", sense: "at-most" },
      );
      yield {
        subject,
        ...told,
        source,
        evidence: [figureEvidence(path, "distance-from-source", "m", distanceM)],
        settledBy: told.verdict === "open" ? readingsThatSettle(index, leans) : [],
      };
    }
  },
);
