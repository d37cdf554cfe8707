import type { FigureKind, Span } from "../../quantity/index.js";

/**
 * What of a field is in doubt where the field's own figure is not the whole of it: `lay`, how much longer the strands of a wire are than the wire (of its
 * gauge); `class`, how far a load whose class is not known may draw from its figure; `stall`, stall current over running current; `contact` and `quiescent`, a module's channel and its own electronics
 * where its kind is not on record.
 */
export type InputAspect = "lay" | "class" | "stall" | "contact" | "quiescent";

/** One figure that the operating point hangs on. Unit: that of the field the path ends in; with an aspect, a ratio, ohm or A. */
export interface UncertainInput {
  /** The record field; where the record has none, the field that would replace the class figure. */
  readonly path: string;
  readonly aspect?: InputAspect;
  readonly kind: FigureKind;
  readonly nominal: number;
  /** Drawn evenly from here. */
  readonly span: Span;
  /** Figures with the same key move together: one reel of wire, one supply, one ambient, one kind of module. */
  readonly sharedKey?: string;
  /** True where a class figure stands in for a field that the record lacks. */
  readonly isAssumed: boolean;
}

/** The name of an input's draw: inputs with the same one get the same place within their spans. */
export const drawKeyOf = (input: Pick<UncertainInput, "path" | "aspect" | "sharedKey">): string =>
  input.sharedKey ?? (input.aspect === undefined ? input.path : `${input.path}#${input.aspect}`);
