import { COMMON_PRACTICE, type Source } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { runsInUse } from "../../runs-in-use.js";
import { ofCoach } from "../../subject.js";

export const policyMemoryFigure = defineRule(
  {
    code: "policy-memory-figure",
    asks: "Does every figure that stands in here come from a text that was opened?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const recalled = new Map<string, string>();
    const note = (source: Source): void => {
      if (source.how === "memory") recalled.set(source.id, source.name);
    };
    for (const { run } of runsInUse(context)) {
      const ceiling = run === undefined ? undefined : context.deviceCeiling(run);
      if (ceiling?.kind === "known")
        for (const each of [ceiling.value.source, ...ceiling.value.alsoRestsOn]) note(each);
    }
    for (const { source } of context.allOn()?.nominal.assumed ?? []) note(source);
    yield {
      subject: { ...ofCoach(context.index), path: "policy" },
      verdict: recalled.size === 0 ? "holds" : "fails",
      parameters: { count: recalled.size, names: [...recalled.values()].sort().join("; ") },
    };
  },
);
