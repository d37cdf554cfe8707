import type { Span } from "../quantity/index.js";
import type { CircuitId, ModuleId } from "../record/index.js";

/** A hazard said at the step where it can bite: a code and its parameters; the words come from `procedure/words.ts`. */
export interface Caution {
  readonly code:
    | "burn-and-arc"
    | "battery-gas"
    | "many-sources"
    | "something-moves"
    | "water-may-run"
    | "heat-may-start"
    | "engine-or-generator-may-start"
    | "mains-nearby"
    | "life-safety"
    | "capacitor-charge"
    | "hidden-lines"
    | "static";
  readonly parameters: Readonly<Record<string, string | number>>;
}

export interface ExpectedReading {
  readonly what: string;
  readonly unit: "V" | "A" | "ohm";
  readonly span: Span;
  readonly nominal: number;
}

/** One ordered step. `id` is stable, so that ticks survive. */
export interface Step {
  readonly id: string;
  readonly code: string;
  readonly parameters: Readonly<Record<string, string | number>>;
  readonly module?: ModuleId;
  readonly circuit?: CircuitId;
  readonly cautions: readonly Caution[];
  readonly expect: readonly ExpectedReading[];
  /** Lamps to be seen on the module, by the kind's own sheet. */
  readonly expectLamps: readonly string[];
  /** How to go back from here. */
  readonly rollBack: string | undefined;
}

export interface Procedure {
  readonly sections: readonly {
    readonly code: "prepare" | "isolate" | "exchange" | "energise" | "prove" | "close";
    readonly steps: readonly Step[];
  }[];
}
