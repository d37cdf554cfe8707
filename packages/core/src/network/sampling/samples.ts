import type { Outcome } from "../../quantity/index.js";
import type { CableId, CircuitId, LoadId, ModuleId, SupplyId } from "../../record/index.js";
import type { CoachSolution } from "../results.js";
import type { CoachState } from "../state.js";
import type { UncertainInput } from "./uncertain-input.js";

export interface SampleOptions {
  readonly seed: number;
  /** How many coaches are drawn. */
  readonly samples: number;
  /** Keep the drawn figures too: all of them, or those for which this answers true. */
  readonly keepInputs?: boolean | ((input: UncertainInput) => boolean);
}

/** One figure and what it was in every solved sample. */
export interface SampledInput {
  readonly input: UncertainInput;
  readonly values: Float64Array;
}

export interface SampledLoad {
  readonly onV: Float64Array;
  readonly onA: Float64Array;
  readonly dropV: Float64Array;
}

export interface SampledSupply {
  readonly currentA: Float64Array;
  readonly terminalV: Float64Array;
}

/**
 * The operating points of coaches drawn from the record's tolerances. Every array has one place for each sample that has an operating point; the same
 * place in all of them is the same coach. What is missing or refused in `nominal` is so here.
 */
export interface CoachSamples {
  readonly state: CoachState;
  readonly nominal: CoachSolution;
  readonly seed: number;
  readonly samples: number;
  /** Samples that have an operating point: the length of every array. */
  readonly solved: number;
  /** Samples without one: counted, never a number. */
  readonly unsolved: number;
  /** By place in the arrays: the number of the sample, 0 to samples - 1. */
  readonly sampleNumbers: Uint32Array;
  readonly loads: ReadonlyMap<LoadId, Outcome<SampledLoad>>;
  readonly circuitA: ReadonlyMap<CircuitId, Outcome<Float64Array>>;
  readonly moduleA: ReadonlyMap<ModuleId, Outcome<Float64Array>>;
  readonly cableA: ReadonlyMap<CableId, Outcome<Float64Array>>;
  readonly cableDropV: ReadonlyMap<CableId, Outcome<Float64Array>>;
  readonly supplies: ReadonlyMap<SupplyId, SampledSupply>;
  /** Where `keepInputs` asks for them. */
  readonly inputs?: readonly SampledInput[];
}
