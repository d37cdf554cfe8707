import { COMMON_PRACTICE } from "../../../quantity/index.js";
import type { ModuleKind } from "../../../record/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofItem } from "../../subject.js";

/** The limits of a kind that other rules compare with; the dimmed rating only where it can dim. */
const wanted = (kind: ModuleKind): (keyof ModuleKind & string)[] => [
  "ratedSwitchedA",
  ...(kind.output === "pwm" || kind.output === "mixed" ? (["ratedDimmedA", "pwmHz"] as const) : []),
  "ratedTotalA",
  "maxFuseA",
];

export const kindRatingMissing = defineRule(
  {
    code: "kind-rating-missing",
    asks: "Are the ratings of every module kind in use known?",
    severity: "note",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    for (const kind of index.moduleKinds.values()) {
      const used = [...index.modules.values()].find((module) => module.kind === kind.id);
      if (used === undefined) continue;
      const absent = wanted(kind).filter((field) => kind[field] === undefined);
      const subject = ofItem(index, "moduleKinds", kind);
      yield {
        subject,
        verdict: absent.length === 0 ? "holds" : "open",
        parameters: { count: absent.length, fields: absent.join(", ") },
        settledBy: absent.map((field) => ({
          path: `${subject.path}.${field}`,
          instrument: "look",
          minutes: minutesFor(index, "look", used.place),
        })),
      };
    }
  },
);
