import { COMMON_PRACTICE } from "../../../quantity/index.js";
import type { Collection } from "../../../record/index.js";
import { defineRule } from "../../define-rule.js";

/** Collections whose ids share one pool, because a probe point may name any of them. */
const PROBED: readonly Collection[] = ["nodes", "supplies", "modules", "circuits", "loads"];
const ALONE: readonly Collection[] = ["places", "cables", "moduleKinds", "controls", "readings", "jobs", "attachments"];

export const duplicateId = defineRule(
  { code: "duplicate-id", asks: "Does every id name one thing only?", severity: "mend", source: COMMON_PRACTICE },
  function* ({ index: { record } }) {
    for (const pool of [PROBED, ...ALONE.map((name) => [name])]) {
      const firstOf = new Map<string, { path: string; collection: Collection }>();
      for (const collection of pool) {
        for (const [i, item] of (record[collection] ?? []).entries()) {
          const path = `${collection}[${i}]`;
          const first = firstOf.get(item.id);
          if (first === undefined) firstOf.set(item.id, { path, collection });
          const name = "name" in item && typeof item.name === "string" ? item.name : item.id;
          yield {
            subject: { path, id: item.id, name },
            verdict: first === undefined ? "holds" : "fails",
            severity: first === undefined || first.collection === collection ? "mend" : "watch",
            parameters: { id: item.id, first: first?.path ?? path },
          };
        }
      }
    }
  },
);
