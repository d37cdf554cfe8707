import type { SettledBy } from "../findings/index.js";
import type { Basis, Span } from "../quantity/index.js";

/** What to mind before this reading is taken. */
export type ReadingCaution = "power-off-first" | "load-will-move" | "load-gets-hot" | "live-parts" | "none";

/** One figure that could be read, with what is known of it now and what the instrument would leave. */
export interface ReadableFigure {
  /** Path of the record field to fill. */
  readonly path: string;
  readonly instrument: SettledBy["instrument"];
  readonly caution: ReadingCaution;
  /** Where it is read; undefined where the record names no place. */
  readonly place: string | undefined;
  /** Minutes to open the place, minutes to read, and both together. */
  readonly accessMin: number;
  readonly readMin: number;
  readonly minutes: number;
  /** How it is known now; undefined where a class figure stands in for a field that is not on record. */
  readonly basis: Basis | undefined;
  readonly nominal: number;
  /** Between what it may lie now. Unit: the field's own. */
  readonly now: Span;
  /** What the instrument would leave about the nominal value. */
  readonly left: Span;
  /** The values it may turn out to have, where only some exist: sizes and classes as printed. Undefined: any within `now`. */
  readonly printed: readonly (number | string)[] | undefined;
}
