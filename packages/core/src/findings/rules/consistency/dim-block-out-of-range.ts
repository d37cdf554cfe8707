import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofItem } from "../../subject.js";

export const dimBlockOutOfRange = defineRule(
  {
    code: "dim-block-out-of-range",
    asks: "Does each dim block name channels that the module kind has, each in one block only?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const kind of index.moduleKinds.values()) {
      if (kind.dimBlocks === undefined) continue;
      const counted = new Map<number, number>();
      for (const block of kind.dimBlocks)
        for (const channel of new Set(block.channels)) counted.set(channel, (counted.get(channel) ?? 0) + 1);
      const wrong = [...counted].filter(([channel, times]) => channel > kind.channels || times > 1);
      yield {
        subject: ofItem(index, "moduleKinds", kind),
        verdict: wrong.length === 0 ? "holds" : "fails",
        parameters: { channels: kind.channels, wrong: wrong.map(([channel]) => channel).join(", ") },
      };
    }
  },
);
