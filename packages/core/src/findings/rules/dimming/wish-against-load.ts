import { suitabilityOf } from "../../../dimming/index.js";
import { COMMON_PRACTICE } from "../../../quantity/index.js";
import type { CoachIndex, Load, Wish } from "../../../record/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofLoad } from "../../subject.js";

/** The load's own wish, and those of every job. */
const wishesOf = ({ record }: CoachIndex, load: Load): Wish[] => [
  ...(load.wish === undefined ? [] : [load.wish]),
  ...(record.jobs ?? []).flatMap((job) =>
    (job.wishes ?? []).filter((each) => each.load === load.id).map((each) => each.wish),
  ),
];

export const wishAgainstLoad = defineRule(
  {
    code: "wish-against-load",
    asks: "Can every load that is wished to dim be dimmed at all?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const load of index.loads.values()) {
      if (!wishesOf(index, load).some((wish) => wish === "must-dim" || wish === "nice-to-dim")) continue;
      const { may, code, source } = suitabilityOf(load);
      const subject = ofLoad(index, load);
      const field = may === "unknown" ? "class" : code === "own-switch" ? "ownSwitchKind" : "allowsPwm";
      const instrument = field === "allowsPwm" ? "ask" : "look";
      const isOpen = may === "unknown" || may === "only-if";
      yield {
        subject,
        verdict: may === "yes" ? "holds" : isOpen ? "open" : "fails",
        source,
        parameters: { why: code, class: load.class ?? "" },
        settledBy: isOpen
          ? [{ path: `${subject.path}.${field}`, instrument, minutes: minutesFor(index, instrument, load.place) }]
          : [],
      };
    }
  },
);
