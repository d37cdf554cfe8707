import type { Cell, CheckGroup, ExpectedLine, PaperSize } from "../document/blocks.js";
import type { SwitchCard } from "../drawings/switch-card.js";
import type { LabelStrip } from "../labels/strip.js";

/** What heads every paper. Dates and ids are given. */
export interface PaperHead {
  readonly coach: string;
  readonly date: string;
  readonly id: string;
  readonly paper: PaperSize;
  readonly isInvented: boolean;
}

/** One step, worded. */
export interface StepView {
  readonly id: string;
  readonly text: string;
  readonly detail?: string;
  readonly cautions: readonly string[];
  readonly expect: readonly ExpectedLine[];
  readonly lamps: readonly string[];
  readonly rollBack?: string;
  /** Index into `switchCards` of the card that belongs at this step. */
  readonly card?: number;
}

export interface StepSection {
  readonly code: "prepare" | "isolate" | "exchange" | "energise" | "prove" | "close";
  readonly title: string;
  readonly steps: readonly StepView[];
}

export interface ModuleChangeView {
  readonly module: string;
  readonly from: string;
  readonly to: string;
  readonly does: string;
}

/** A wire that goes elsewhere, gets a feed of its own or is replaced. */
export interface WireChangeView {
  readonly what: string;
  readonly from: string;
  readonly to: string;
  readonly fuse: Cell;
}

export interface MoneyLine {
  readonly what: string;
  readonly quantity: string;
  readonly each: string;
  readonly total: string;
}

export interface PinMapView {
  readonly title: string;
  readonly rows: readonly { readonly circuit: string; readonly from: string; readonly to: string }[];
  readonly note?: string;
}

export interface SupplyIsolationView {
  readonly supply: string;
  readonly open: string;
  readonly where: string;
  readonly how: string;
}

/** The gravest weight; lines of it stand again where power is brought back. */
export const DO_NOT_ENERGISE = "Do not energise";

/** Something wrong, open or to be watched, and what to do next. */
export interface OpenLine {
  readonly what: string;
  /** The reading that settles it, or what puts it right. */
  readonly next: string;
  /** `DO_NOT_ENERGISE`, "To be mended", "To be watched", "Open: a reading settles it"; lines of one weight stand together. */
  readonly weight: string;
  readonly source: string;
}

/** A publication a limit rests on, and how its figures came to us. */
export interface SourceLine {
  readonly name: string;
  readonly how: string;
  readonly for: string;
}

/** The papers for one job, every line already in words. */
export interface PacketView {
  readonly head: PaperHead;
  readonly job: { readonly title: string; readonly ownerWords?: string; readonly complaint?: string };
  readonly proposed: {
    readonly statement: readonly string[];
    readonly modules: readonly ModuleChangeView[];
    readonly dims: readonly string[];
    readonly unmet: readonly { readonly wish: string; readonly because: readonly string[] }[];
  };
  readonly estimate: {
    readonly lines: readonly MoneyLine[];
    readonly totals: readonly (readonly [string, string])[];
    readonly notes: readonly string[];
  };
  readonly parts: readonly { readonly part: string; readonly quantity: string; readonly note: string }[];
  readonly tools: readonly string[];
  /** This coach's sources in the order in which they are opened. */
  readonly isolation: readonly SupplyIsolationView[];
  readonly sections: readonly StepSection[];
  readonly pinMaps: readonly PinMapView[];
  readonly switchCards: readonly SwitchCard[];
  readonly fuseChanges: readonly {
    readonly circuit: string;
    readonly from: Cell;
    readonly to: Cell;
    readonly because: string;
  }[];
  readonly wireChanges: readonly WireChangeView[];
  readonly strips: readonly LabelStrip[];
  /** Modules whose labels cannot be drawn at true size yet, and what is missing. */
  readonly labelWants: readonly { readonly module: string; readonly why: string }[];
  /** How each kind of test is made, said once: [what, how]. */
  readonly testMethods: readonly (readonly [string, string])[];
  readonly tests: readonly CheckGroup[];
  /** What the sheet leaves out, or empty. */
  readonly testsNote: string;
  /** What is wrong or open after the work, worst first. */
  readonly open: readonly OpenLine[];
  readonly notices: readonly string[];
  readonly sources: readonly SourceLine[];
}
