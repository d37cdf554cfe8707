import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { circuitName, ofCircuit } from "../../subject.js";

export const channelClaimedTwice = defineRule(
  {
    code: "channel-claimed-twice",
    asks: "Is each channel, and each plain fuse position, claimed by one circuit only?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const firstAt = new Map<string, string>();
    for (const circuit of index.record.circuits ?? []) {
      const { module, channel, fusePosition } = circuit;
      const seat =
        module !== undefined && channel !== undefined
          ? `channel ${channel} of ${module}`
          : module === undefined && fusePosition !== undefined
            ? `fuse ${fusePosition.name} of ${fusePosition.node ?? "?"}`
            : undefined;
      if (seat === undefined) continue;
      const first = firstAt.get(seat);
      if (first === undefined) firstAt.set(seat, circuitName(index, circuit));
      yield {
        subject: ofCircuit(index, circuit),
        verdict: first === undefined ? "holds" : "fails",
        parameters: { seat, first: first ?? "" },
      };
    }
  },
);
