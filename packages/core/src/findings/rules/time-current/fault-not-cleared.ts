import { CLEARED_WITHIN_S, sureOpeningA } from "../../../protection/index.js";
import { bladeGates } from "../../../tables/index.js";
import { against } from "../../against.js";
import { faultAsked, faultLeans, fuseAsked, gateSources } from "../../circuit-fault.js";
import { defineRule } from "../../define-rule.js";
import { readingsThatSettle } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const faultNotCleared = defineRule(
  {
    code: "fault-not-cleared",
    asks: "Does a dead short at the far end open the fuse in time, even the slowest fuse of its rating?",
    severity: "mend",
    source: bladeGates().source,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const fuse = circuit.isSpare === true ? undefined : fuseAsked(context, circuit);
      const fault = fuse?.kind === "known" ? faultAsked(context, circuit) : undefined;
      if (fuse?.kind !== "known" || fault?.kind !== "known") continue;
      const neededA = sureOpeningA(fuse.value, CLEARED_WITHIN_S);
      if (!Number.isFinite(neededA)) continue;
      const end = fault.value.ends.reduce((least, one) => (one.currentA < least.currentA ? one : least));
      const subject = ofCircuit(index, circuit);
      const load = end.loadId === undefined ? undefined : index.loads.get(end.loadId as never);
      const told = against({ value: end.currentA, span: end.span }, { value: neededA, unit: "A", sense: "at-least" });
      const [source, ...others] = gateSources(fuse.value);
      yield {
        subject,
        ...told,
        severity: told.verdict === "open" ? "watch" : "mend",
        ...(source === undefined ? {} : { source }),
        alsoRestsOn: others,
        parameters: {
          ...told.parameters,
          withinS: CLEARED_WITHIN_S,
          ratedA: fuse.value.ratedA,
          end: load === undefined ? "the far end of the wire" : load.name,
        },
        evidence: [
          { path: `${subject.path}.fuse.ratedA`, label: "fuse-rating", unit: "A", value: fuse.value.ratedA },
          { path: subject.path, label: "short-circuit-current", unit: "A", value: end.currentA, span: end.span },
        ],
        settledBy: told.verdict === "open" ? readingsThatSettle(index, faultLeans(context, circuit, load)) : [],
      };
    }
  },
);
