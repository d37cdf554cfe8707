import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { type CoachIndex, danglingReferences } from "../../../record/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofCoach } from "../../subject.js";

/** Parts of a record that only tell what was done or seen; a lost name there endangers nothing. */
const TOLD = /^(readings|jobs|attachments|controls)\b|\.(photos|place|within)\b/;

/** The object that holds a field, by the field's path. */
function holderOf({ record }: CoachIndex, path: string): { id: string; name: string } {
  const found = /^(\w+)\[(\d+)\]/.exec(path);
  if (found === null) return { id: record.id, name: record.coach.name };
  const list: unknown = record[found[1] as keyof typeof record];
  const item = (Array.isArray(list) ? list[Number(found[2])] : undefined) as { id?: string; name?: string } | undefined;
  const id = item?.id ?? found[0];
  return { id, name: item?.name ?? id };
}

export const danglingReference = defineRule(
  {
    code: "dangling-reference",
    asks: "Does everything that the record refers to exist?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    let isFound = false;
    for (const { path, id, target, code } of danglingReferences(index.record)) {
      // A stop along the trunk may be told in words: "behind the dash". Ids used twice are told by `duplicate-id`.
      if (code !== "dangling" || path.startsWith("network.")) continue;
      isFound = true;
      yield {
        subject: { ...holderOf(index, path), path },
        verdict: "fails",
        severity: TOLD.test(path) ? "watch" : "mend",
        parameters: { id, target },
        settledBy: [{ path, instrument: "look", minutes: minutesFor(index, "look", undefined) }],
      };
    }
    if (!isFound) yield { subject: ofCoach(index), verdict: "holds", parameters: { id: "", target: "" } };
  },
);
