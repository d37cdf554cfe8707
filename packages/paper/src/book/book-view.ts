import type { Cell } from "../document/blocks.js";
import type { DiagramLink, DiagramNode } from "../drawings/diagram-layout.js";
import type { MapGroup } from "../drawings/door-map.js";
import type { Loom } from "../drawings/loom-picture.js";
import type { ModuleSheet } from "../drawings/module-sheet.js";
import type { SwitchCard } from "../drawings/switch-card.js";
import type { OpenLine, PaperHead, SourceLine } from "../packet/packet-view.js";

/** One module's pages: what it is, its channels, its bank. */
export interface ModulePage {
  readonly sheet: ModuleSheet;
  readonly facts: readonly (readonly [string, Cell])[];
  readonly card: SwitchCard | undefined;
  /** Circuits on the module's own sheet, so that an empty one can say so. */
  readonly notes: readonly string[];
}

export interface WireLine {
  readonly circuit: string;
  readonly way: string;
  readonly size: Cell;
  readonly length: Cell;
  readonly ends: string;
}

export interface ProofLine {
  readonly test: string;
  readonly expected: string;
  readonly read: string;
  readonly verdict: string;
}

/** The as-built book, every line already in words. */
export interface BookView {
  readonly head: PaperHead;
  readonly facts: readonly (readonly [string, Cell])[];
  readonly loom: Loom;
  readonly map: readonly MapGroup[];
  readonly diagram: { readonly nodes: readonly DiagramNode[]; readonly links: readonly DiagramLink[] };
  /** State whose amps set the widths of the wires: "everything on". */
  readonly stateName: string;
  readonly modules: readonly ModulePage[];
  readonly wires: readonly WireLine[];
  readonly settings: readonly {
    readonly module: string;
    readonly kind: string;
    readonly address: Cell;
    readonly positions: Cell;
    readonly dims: string;
  }[];
  readonly changes: readonly { readonly what: string; readonly why: string }[];
  readonly open: readonly OpenLine[];
  readonly proof: { readonly lines: readonly ProofLine[]; readonly summary: readonly string[] } | undefined;
  readonly sources: readonly SourceLine[];
  /** The record as it was written, to be carried inside the book byte for byte. */
  readonly record: { readonly name: string; readonly bytes: Uint8Array };
}
