import type { Span } from "../quantity/index.js";
import type { Cable, Circuit, CoachIndex, FullPolicy, Load, Module, Supply } from "../record/index.js";
import type { Assumed } from "./class-figures.js";
import type { LoadFigures } from "./load-figures.js";
import type { LoadModel } from "./load-model.js";
import type { Network, NetworkBranch, NetworkLoad } from "./network.js";
import type { Edge, Reach } from "./reach.js";
import type { UncertainInput } from "./sampling/uncertain-input.js";
import type { Series } from "./series.js";
import type { CoachState } from "./state.js";
import type { SupplyInputs } from "./supply-figures.js";

/** A supply as it stands in the network: a branch with a source in it, or a regulated load. */
export interface SupplyWiring {
  readonly supply: Supply;
  readonly path: string;
  readonly positive: number;
  readonly negative: number;
  /** Battery: its branch. */
  readonly branch: number;
  /** Charger, alternator, solar: its (negative) load. */
  readonly load: number;
  readonly inputs: SupplyInputs;
  readonly toFeeds: Reach;
  readonly toReturns: Reach;
}

export interface CableWiring {
  readonly cable: Cable;
  readonly path: string;
  /** -1 where it is open or its ends are not on record. */
  readonly branch: number;
  readonly edge: number;
  readonly series: Series;
  readonly needs: readonly string[];
}

export interface LoadWiring {
  readonly load: Load;
  readonly path: string;
  readonly figures: LoadFigures | undefined;
  /** Paths of the current that is not known; then `networkLoad` is -1. */
  readonly currentNeeds: readonly string[];
  readonly networkLoad: number;
  readonly tailBranch: number;
  readonly tail: Series | undefined;
  readonly tailNeeds: readonly string[];
}

/** One circuit that is on. What of its way is not known is left out of the way, and its currents are counted where it would join. */
export interface CircuitWiring {
  readonly circuit: Circuit;
  readonly path: string;
  readonly supply: SupplyWiring | undefined;
  /** Record nodes it is fed from and returns to; -1 where not known. */
  readonly feedNode: number;
  readonly returnNode: number;
  /** Where it is joined in the network. */
  readonly joinedFeed: number;
  readonly joinedReturn: number;
  /** Channel to the splice it leaves from, when the out wire names one. */
  readonly entryBranch: number;
  readonly entry: Series | undefined;
  readonly outBranch: number;
  readonly out: Series | undefined;
  readonly returnBranch: number;
  readonly back: Series | undefined;
  readonly farNode: number;
  readonly commonNode: number;
  readonly loads: readonly LoadWiring[];
  /** Fields without which the volts at its loads cannot be told. */
  readonly wayNeeds: readonly string[];
  /** Fields without which its current cannot be told. */
  readonly currentNeeds: readonly string[];
  /** `open` where a disconnect or a missing cable cuts it off. */
  readonly isCutOff: boolean;
}

export interface ModuleWiring {
  readonly module: Module;
  readonly path: string;
  readonly quiescentLoad: number;
  readonly quiescent: UncertainInput;
}

/** A load's two bounds, beside its nominal model in the network. */
export interface LoadBounds {
  readonly least: LoadModel;
  readonly most: LoadModel;
}

/** The coach in one state as a network, with the way back from every branch to the record. */
export interface CoachNetwork {
  readonly index: CoachIndex;
  readonly policy: FullPolicy;
  readonly state: CoachState;
  readonly nominalV: number;
  readonly network: Network & { readonly branches: readonly NetworkBranch[]; readonly loads: readonly NetworkLoad[] };
  readonly ohmSpan: readonly Span[];
  /** By branch; a battery's volts at rest, else nothing. */
  readonly emfSpan: readonly (Span | undefined)[];
  readonly loadBounds: readonly LoadBounds[];
  readonly nodeOf: ReadonlyMap<string, number>;
  readonly supplies: readonly SupplyWiring[];
  readonly cables: readonly CableWiring[];
  readonly edges: readonly Edge[];
  readonly cableOfEdge: readonly CableWiring[];
  readonly circuits: readonly CircuitWiring[];
  readonly modules: readonly ModuleWiring[];
  readonly leftOut: readonly string[];
  readonly assumed: readonly Assumed[];
}
