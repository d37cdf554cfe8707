import type { Outcome } from "../quantity/index.js";
import { type CoachIndex, type DimBlockId, policyOf } from "../record/index.js";
import type { CoachContext } from "./context.js";
import { enabledBlocksOf } from "./enabled-blocks.js";
import { wiringOf } from "./wiring.js";

/** Computes once, when first asked for. */
function once<T>(compute: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: compute() };
    return made.value;
  };
}

/** What rules look at: the record looked up, and the engines' results, each computed when a rule first asks for it. */
export function contextOf(index: CoachIndex): CoachContext {
  const blocks = new Map<string, Outcome<readonly DimBlockId[]>>();
  return {
    index,
    policy: policyOf(index.record),
    allOn: once(() => undefined),
    busy: once(() => undefined),
    wiring: once(() => wiringOf(index)),
    enabledBlocks(module) {
      const read = blocks.get(module.id) ?? enabledBlocksOf(index, module);
      blocks.set(module.id, read);
      return read;
    },
  };
}
