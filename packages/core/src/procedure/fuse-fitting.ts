import type { ModuleChoice } from "../plan/index.js";
import type { Circuit, CoachIndex } from "../record/index.js";

/** Fuses that are screwed or wired in go in while the coach is dead, so their loads get power with the feed. */
export function isScrewedIn(index: CoachIndex, circuit: Circuit | undefined): boolean {
  const kind = index.moduleKinds.get(index.modules.get(circuit?.module ?? "")?.kind ?? "");
  const type = circuit?.fuse?.type ?? kind?.fuseType;
  return type === "bolt-down" || type === "cartridge" || type === "fusible-link";
}

/** Circuits of a module whose fuse is not fitted by hand under the eye, one at a time, but goes in dead. `index`: the coach as the plan leaves it. */
export const fittedDead = (index: CoachIndex, choice: ModuleChoice): Circuit[] =>
  (index.circuitsOfModule.get(choice.module) ?? []).filter((circuit) => isScrewedIn(index, circuit));

/** A module whose switches are not known gets no power. */
export const isHeld = (choice: ModuleChoice): boolean => choice.isTouched && choice.positions === undefined;
