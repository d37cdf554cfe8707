import { inrushVerdict } from "../../../protection/index.js";
import { bladeGates } from "../../../tables/index.js";
import { fuseAsked, gateSources, inrushAsked, startLeans } from "../../circuit-fault.js";
import { defineRule } from "../../define-rule.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

/** A circuit whose current hardly rises when it is switched on has no start to speak of. */
const NO_START_RATIO = 1.1;

export const inrushOverFuse = defineRule(
  {
    code: "inrush-over-fuse",
    asks: "Does each fuse let its loads start, even the quickest fuse of its rating?",
    severity: "watch",
    source: bladeGates().source,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const fuse = circuit.isSpare === true ? undefined : fuseAsked(context, circuit);
      if (fuse?.kind !== "known") continue;
      const inrush = inrushAsked(context, circuit);
      if (inrush.kind !== "known") continue;
      const { most, peakA, peakSpan } = inrush.value;
      if (most.peakA <= NO_START_RATIO * most.steadyA) continue;
      const told = inrushVerdict(inrush.value, fuse.value);
      const { allowedA, drawnA, atS } = told.nominal;
      const subject = ofCircuit(index, circuit);
      const [source, ...others] = gateSources(fuse.value);
      const ratios = [told.least.ratio, told.nominal.ratio, told.most.ratio];
      const got = {
        got: drawnA,
        gotLo: allowedA / Math.max(...ratios),
        gotHi: allowedA / Math.min(...ratios),
        limit: allowedA,
        limitLo: allowedA,
        limitHi: allowedA,
      };
      yield {
        subject,
        verdict: told.verdict,
        severity: told.verdict === "fails" ? "watch" : "note",
        ...(source === undefined ? {} : { source }),
        alsoRestsOn: [...others, ...inrush.value.sources],
        parameters: { ...(told.isTold ? got : {}), atS, peakA, ratedA: fuse.value.ratedA },
        ...(told.isTold ? { limit: { value: allowedA, unit: "A", sense: "at-most" } as const } : {}),
        evidence: [
          { path: `${subject.path}.fuse.ratedA`, label: "fuse-rating", unit: "A", value: fuse.value.ratedA },
          { path: subject.path, label: "starting-current", unit: "A", value: peakA, span: peakSpan },
        ],
        settledBy: told.verdict === "open" ? readingsThatSettle(index, startLeans(context, circuit, inrush.value)) : [],
      };
    }
  },
);
