import type { CoachSpans, CoachState } from "../network/index.js";
import type { Outcome, Source, Span } from "../quantity/index.js";
import type { Cable, CoachIndex, DimBlockId, FullPolicy, Module, WireRun } from "../record/index.js";
import type { Wiring } from "./wiring.js";

/** What a conductor may carry, or the largest device that may protect it, with everything the figure rests on. */
export interface ConductorLimit {
  readonly valueA: number;
  readonly span: Span;
  readonly source: Source;
  readonly alsoRestsOn: readonly Source[];
  /** Fields of the conductor that would narrow the span, relative to it. */
  readonly wouldSettle: readonly string[];
}

/** What every rule may look at. Engine results are computed once, when first asked for. */
export interface CoachContext {
  readonly index: CoachIndex;
  readonly policy: FullPolicy;
  /** 12 or 24; 12 where the record does not say. */
  readonly nominalV: number;
  /** Every circuit on at once; undefined where the network cannot be solved (then a rule of its own says why). */
  allOn(): CoachSpans | undefined;
  /** The worst state that can really happen: lighting and electronics on, the greatest motor running. */
  busy(): CoachSpans | undefined;
  /** The same two and any other state, with the reason where there is no answer. Computed once for each set of circuits, charger and engine. */
  inState(state: CoachState): Outcome<CoachSpans>;
  allOnState(): CoachState;
  busyState(): CoachState;
  /** Which cables hang on which side of the supplies. */
  wiring(): Wiring;
  /** Dim blocks that the positions as found enable on this module today; none on a kind that only switches. */
  enabledBlocks(module: Module): Outcome<readonly DimBlockId[]>;
  /** What this conductor may carry under the record's policy. */
  ampacity(run: WireRun | Cable): Outcome<ConductorLimit>;
  /** The largest device that may protect this conductor under the record's policy. */
  deviceCeiling(run: WireRun | Cable): Outcome<ConductorLimit>;
  /** Resistance of this conductor from end to end, at the ambient of its zone. */
  resistance(run: WireRun | Cable): Outcome<{ readonly ohm: number; readonly span: Span }>;
}
