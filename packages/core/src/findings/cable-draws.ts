import type { Cable } from "../record/index.js";
import type { CoachContext } from "./context.js";
import { drawsOf } from "./leans.js";
import type { Leaned } from "./settle.js";

/** What the current in a cable leans on: the draws of everything fed beyond it. */
export function cableDraws(context: CoachContext, cable: Cable): Leaned[] {
  const { index } = context;
  const { sourceEnd, reachedBy } = context.wiring().positive;
  const isBeyond = (node: string | undefined): boolean => {
    const seen = new Set<string>();
    for (let at = node; at !== undefined && !seen.has(at); ) {
      seen.add(at);
      const by = reachedBy.get(at);
      if (by === undefined) return false;
      if (by.id === cable.id) return true;
      at = sourceEnd.get(by.id);
    }
    return false;
  };
  return [...index.circuits.values()]
    .filter((circuit) => isBeyond(index.modules.get(circuit.module ?? "")?.feedNode ?? circuit.fusePosition?.node))
    .flatMap((circuit) => drawsOf(context, circuit));
}
