import type { Outcome, Span } from "../quantity/index.js";
import type { CableId, CircuitId, LoadId, ModuleId, SupplyId } from "../record/index.js";
import type { Balance } from "./balance.js";
import type { Assumed } from "./class-figures.js";
import type { CoachState } from "./state.js";

/** Where volts are lost between the supply's terminals and the load and back. */
export const DROP_PLACES = ["feeder", "module", "fuse", "connector", "wire", "tail", "return", "ground"] as const;
export type DropPlace = (typeof DROP_PLACES)[number];

/** One part of a drop: where, how much, and the record object it happens in. */
export interface DropPart {
  readonly place: DropPlace;
  readonly dropV: number;
  readonly id?: string;
}

/** One load while its channel is on (PWM: in the on-time, all dimmed channels on together). Currents are for all pieces of the load. */
export interface LoadResult {
  readonly onV: number;
  readonly onA: number;
  readonly onW: number;
  /** Duty times the on-time current: what the battery pays. */
  readonly meanA: number;
  /** Root of duty times the on-time current: what heats the wire. */
  readonly rmsA: number;
  /** From the supply's terminals to the load and back; the battery's own internal drop is not in it. */
  readonly dropV: number;
  readonly parts: readonly DropPart[];
}

/** A solved state of the coach. A part whose figures are missing is `missing` here, and its absence is listed in `leftOut`. */
export interface CoachSolution {
  readonly state: CoachState;
  /** Volts above battery negative, by point key (see `pointKey`). */
  readonly nodeV: ReadonlyMap<string, number>;
  readonly loads: ReadonlyMap<LoadId, Outcome<LoadResult>>;
  /** On-time current through the fuse of each circuit that is on. */
  readonly circuitA: ReadonlyMap<CircuitId, Outcome<number>>;
  /** On-time current into each module's feed, its own electronics included. */
  readonly moduleA: ReadonlyMap<ModuleId, Outcome<number>>;
  readonly cableA: ReadonlyMap<CableId, Outcome<number>>;
  readonly cableDropV: ReadonlyMap<CableId, Outcome<number>>;
  readonly supplies: ReadonlyMap<SupplyId, { readonly currentA: number; readonly terminalV: number }>;
  /** Paths of figures that were missing, so that currents through shared parts are lower bounds only. */
  readonly leftOut: readonly string[];
  /** Class figures that stood in for figures the record lacks: each with the path of the field that would replace it. */
  readonly assumed: readonly Assumed[];
  readonly balance: Balance;
  readonly iterations: number;
}

/**
 * How a span was found. `exact-corners`: monotone by structure, the corner states were solved. `enclosure`: guaranteed to hold the truth, may be
 * wider than it. `point`: every input is exact.
 */
export type SpanMethod = "exact-corners" | "enclosure" | "point";

export interface Spanned {
  readonly nominal: number;
  readonly span: Span;
  readonly method: SpanMethod;
}

export interface SpannedLoad {
  readonly onV: Spanned;
  readonly onA: Spanned;
  readonly dropV: Spanned;
}

/** Every result of a state as an interval over the record's figures and their tolerances. */
export interface CoachSpans {
  readonly state: CoachState;
  readonly nominal: CoachSolution;
  readonly loads: ReadonlyMap<LoadId, Outcome<SpannedLoad>>;
  readonly circuitA: ReadonlyMap<CircuitId, Outcome<Spanned>>;
  readonly moduleA: ReadonlyMap<ModuleId, Outcome<Spanned>>;
  readonly cableA: ReadonlyMap<CableId, Outcome<Spanned>>;
  readonly cableDropV: ReadonlyMap<CableId, Outcome<Spanned>>;
  /** What is known of a total when parts are missing: at least this much. */
  readonly moduleAtLeastA: ReadonlyMap<ModuleId, number>;
  readonly cableAtLeastA: ReadonlyMap<CableId, number>;
}
