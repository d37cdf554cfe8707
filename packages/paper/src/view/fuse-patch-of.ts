import { figureValue } from "@fusebook/core/quantity";
import type { Fuse } from "@fusebook/core/record";
import { bladeColour } from "@fusebook/core/tables";
import { type FusePatch, fusePatch } from "../drawings/fuse-patch.js";

/** The patch of a fuse on record; only blade fuses wear the colour of their rating. */
export function fusePatchOf(fuse: Fuse | undefined): FusePatch {
  const ratedA = fuse?.ratedA === undefined ? undefined : figureValue(fuse.ratedA);
  const isBlade = fuse?.type === undefined || fuse.type === "blade" || fuse.type === "blade-slow";
  return bladePatch(ratedA, isBlade);
}

/** The patch of a rating. */
export function bladePatch(ratedA: number | undefined, isBlade = true): FusePatch {
  const colour = ratedA === undefined || !isBlade ? undefined : bladeColour(ratedA);
  return fusePatch(ratedA, colour?.kind === "known" ? colour.value : undefined);
}
