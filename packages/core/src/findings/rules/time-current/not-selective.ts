import {
  cableFaultOf,
  type DeviceAbove,
  type FuseGates,
  fuseGatesOf,
  type Selectivity,
  selectivityOf,
} from "../../../protection/index.js";
import { bladeGates } from "../../../tables/index.js";
import { faultAsked, fuseAsked, gateSources } from "../../circuit-fault.js";
import type { CoachContext } from "../../context.js";
import { defineRule, type Said } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { cableName, ofCable, ofCircuit } from "../../subject.js";

/** A ratio larger than any that tells two fuses apart: it stands for one that never opens. */
const NEVER_RATIO = 1e6;

function told(context: CoachContext, above: DeviceAbove, lower: FuseGates, upper: FuseGates, found: Selectivity) {
  const { index } = context;
  const [source, ...others] = [...gateSources(lower), ...gateSources(upper)];
  return {
    verdict: found.verdict,
    severity: found.verdict === "fails" ? "watch" : "note",
    ...(source === undefined ? {} : { source }),
    alsoRestsOn: others,
    parameters: {
      ratio: Math.min(NEVER_RATIO, found.worstRatio),
      atA: found.worstAtA,
      uptoA: found.uptoA.hi,
      lowerA: lower.ratedA,
      upperA: upper.ratedA,
      upper: cableName(index, above.cable),
    },
    evidence: [
      { path: `${lower.path}.ratedA`, label: "fuse-rating", unit: "A", value: lower.ratedA, span: lower.ratedSpan },
      { path: `${upper.path}.ratedA`, label: "device-rating", unit: "A", value: upper.ratedA, span: upper.ratedSpan },
    ],
    settledBy:
      found.verdict === "open"
        ? [lower, upper].map((fuse) => ({
            path: `${fuse.path}.gates`,
            instrument: "look" as const,
            minutes: minutesFor(index, "look", undefined),
          }))
        : [],
  } satisfies Omit<Said, "subject">;
}

export const notSelective = defineRule(
  {
    code: "not-selective",
    asks: "On a short, does the fuse nearest to it open and the one before it stay whole?",
    severity: "watch",
    source: bladeGates().source,
  },
  function* (context) {
    const { index } = context;
    const feeders = new Set<string>();
    for (const circuit of index.circuits.values()) {
      const fault = circuit.isSpare === true ? undefined : faultAsked(context, circuit);
      if (fault?.kind !== "known") continue;
      const fuse = fuseAsked(context, circuit);
      for (const [n, above] of fault.value.above.entries()) {
        const upper = fuseGatesOf(above.fuse, above.path);
        if (upper.kind !== "known") continue;
        if (fuse.kind === "known")
          yield {
            subject: ofCircuit(index, circuit),
            ...told(context, above, fuse.value, upper.value, selectivityOf(fuse.value, upper.value, fault.value.span)),
          };
        const below = fault.value.above[n + 1];
        if (below === undefined || feeders.has(below.cable.id)) continue;
        feeders.add(below.cable.id);
        const lower = fuseGatesOf(below.fuse, below.path);
        const short = cableFaultOf(index, below.cable.id);
        if (lower.kind !== "known" || short.kind !== "known") continue;
        const found = selectivityOf(lower.value, upper.value, short.value.atEnd.span);
        yield { subject: ofCable(index, below.cable), ...told(context, above, lower.value, upper.value, found) };
      }
    }
  },
);
