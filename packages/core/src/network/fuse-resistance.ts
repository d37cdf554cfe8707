import { type Figure, figureValue, type Source, type Span, spanOf } from "../quantity/index.js";
import type { Fuse } from "../record/index.js";
import { bladeColdOhm } from "../tables/index.js";
import { CLASS_FIGURES } from "./class-figures.js";
import type { OhmDraw } from "./sampling/ohm-draw.js";

export interface FuseResistance {
  readonly ohm: number;
  readonly span: Span;
  readonly draw: OhmDraw;
  /** Absent where the record's own reading was used. */
  readonly assumedFrom?: Source;
}

/** Above the listed blade sizes a link's cold resistance is taken to go on as 60 millivolts over its rating: the trend of the listed 20 and 30 A. */
const COLD_V = 0.06;
/** Below them likewise, with the 90 millivolts of the listed 5 A; no fuse is made for less than a milliampere. */
const SMALL_COLD_V = 0.09;
const LEAST_RATED_A = 1e-3;

/** What does a good fuse of this rating measure cold? A reading wins; else the typical figure, from memory, good to half of it. `path` is the fuse's own. */
export function fuseResistance(fuse: Fuse | undefined, path = "fuse"): FuseResistance {
  const found = (ohm: number, span: Span, assumedFrom?: Source): FuseResistance => {
    const own = { path: `${path}.resistanceOhm`, kind: "resistance" as const, nominal: ohm, span };
    const draw: OhmDraw = { kind: "figure", ohm: { ...own, isAssumed: assumedFrom !== undefined } };
    return { ohm, span, draw, ...(assumedFrom === undefined ? {} : { assumedFrom }) };
  };
  if (fuse?.resistanceOhm !== undefined)
    return found(Math.max(0, figureValue(fuse.resistanceOhm)), spanOf(fuse.resistanceOhm, "resistance"));
  const typical = CLASS_FIGURES.fuseOhm;
  const ratedA = fuse?.ratedA === undefined ? undefined : figureValue(fuse.ratedA as Figure);
  if (ratedA === undefined || !(ratedA > 0)) return found(typical.value, typical.span, typical.source);
  const listed = bladeColdOhm(ratedA);
  const ohm =
    listed.kind === "known"
      ? listed.value
      : ratedA > 30
        ? COLD_V / ratedA
        : SMALL_COLD_V / Math.max(ratedA, LEAST_RATED_A);
  const source = listed.kind === "known" ? listed.source : typical.source;
  return found(ohm, spanOf({ value: ohm, basis: "typical" }, "resistance"), source);
}
