import type { Cell, ExpectedLine, PaperSize } from "../document/blocks.js";
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

export interface ModuleChangeView {
  readonly module: string;
  readonly from: string;
  readonly to: string;
  readonly does: string;
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

/** A publication a limit rests on, and how its figures came to us. */
export interface SourceLine {
  readonly name: string;
  readonly how: string;
  readonly for: string;
}

export interface TestView {
  /** Where, once for all the tests of a circuit; empty for the further ones. */
  readonly number: string;
  readonly where?: string;
  readonly what: string;
  /** Stands under the first test of a circuit. */
  readonly caution?: string;
  readonly expected: string;
  readonly span: string;
  readonly unit: string;
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
  readonly isolation: {
    readonly supplies: readonly SupplyIsolationView[];
    readonly deadTest: readonly ExpectedLine[];
    readonly notes: readonly string[];
  };
  readonly sections: readonly { readonly title: string; readonly steps: readonly StepView[] }[];
  readonly pinMaps: readonly PinMapView[];
  readonly switchCards: readonly SwitchCard[];
  readonly fuseChanges: readonly {
    readonly circuit: string;
    readonly from: Cell;
    readonly to: Cell;
    readonly because: string;
  }[];
  readonly strips: readonly LabelStrip[];
  /** Modules whose labels cannot be drawn at true size yet, and what is missing. */
  readonly labelWants: readonly { readonly module: string; readonly why: string }[];
  readonly tests: readonly TestView[];
  /** How each kind of test is done, said once. */
  readonly testMethods?: readonly string[];
  /** What stops signing, or is still open, one line each. */
  readonly open: readonly string[];
  readonly notices: readonly string[];
  readonly sources: readonly SourceLine[];
}
