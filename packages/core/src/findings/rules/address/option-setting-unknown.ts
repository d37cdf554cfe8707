import { defineRule } from "../../define-rule.js";
import { textEvidence } from "../../evidence.js";
import { minutesFor } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { ofModule } from "../../subject.js";

export const optionSettingUnknown = defineRule(
  {
    code: "option-setting-unknown",
    asks: "Do the option switches as found say which blocks may dim?",
    severity: "watch",
    source: PART_SHEET,
  },
  function* (context) {
    const { index } = context;
    for (const module of index.modules.values()) {
      const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
      if (kind === undefined || kind.output === "relay" || (kind.dimBlocks ?? []).length === 0) continue;
      const enabled = context.enabledBlocks(module);
      const subject = ofModule(index, module);
      yield {
        subject,
        verdict: enabled.kind === "known" ? "holds" : enabled.kind === "missing" ? "open" : "fails",
        parameters: { found: module.positionsFound ?? "", kind: kind.name },
        evidence:
          module.positionsFound === undefined
            ? []
            : [textEvidence(`${subject.path}.positionsFound`, "positions-found", module.positionsFound)],
        settledBy:
          enabled.kind !== "missing"
            ? []
            : enabled.needs.map((path) => ({
                path,
                instrument: "look" as const,
                minutes: minutesFor(index, "look", module.place),
              })),
      };
    }
  },
);
