import { figureValue } from "../quantity/index.js";
import type { Circuit, CoachIndex } from "../record/index.js";

/** A fuse opens within ten minutes at this many times its rating (ISO 8820-3 gates, from memory): the most a circuit of unknown loads can go on drawing. */
const FUSE_HOLDS_RATIO = 1.35;
/** The largest blade fuse, where the record has no rating. */
const LARGEST_BLADE_A = 40;

/** The most that the unknown loads of this circuit may go on drawing: what its fuse holds. */
export function unknownMostOfA(index: CoachIndex, circuit: Circuit): number {
  const module = index.modules.get(circuit.module ?? "");
  const kind = index.moduleKinds.get(module?.kind ?? "");
  const fuseA = circuit.fuse?.ratedA ?? kind?.maxFuseA;
  return FUSE_HOLDS_RATIO * (fuseA === undefined ? LARGEST_BLADE_A : figureValue(fuseA));
}
