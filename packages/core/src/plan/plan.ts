import type { CircuitId, DimBlockId, LoadId, ModuleId, ModuleKindId, NodeId } from "../record/index.js";

/** What a plan does with one module position. A position whose kind is not known and that the plan leaves alone is not listed. */
export interface ModuleChoice {
  readonly module: ModuleId;
  readonly from: ModuleKindId | undefined;
  readonly to: ModuleKindId;
  readonly isReplaced: boolean;
  /** Replaced, or its bank is set anew. */
  readonly isTouched: boolean;
  /** Dim blocks enabled as found; undefined where the setting could not be read. */
  readonly enabledBefore: readonly DimBlockId[] | undefined;
  readonly enables: readonly DimBlockId[];
  /** Bank positions to set, or undefined where the kind's bank code or the address is not known (`positionsNeed` says which). */
  readonly positions: string | undefined;
  readonly positionsNeed: readonly string[];
}

/** A fuse the plan changes, and why. */
export interface FuseChange {
  readonly circuit: CircuitId;
  readonly fromA: number | undefined;
  readonly toA: number;
  readonly because: "fuse-over-channel" | "wire-changed";
}

export interface ChannelOf {
  readonly module: ModuleId;
  readonly channel: number;
}

/** A circuit that goes to another channel. Its fuse and its label go with it. */
export interface CircuitMove {
  readonly circuit: CircuitId;
  readonly from: ChannelOf;
  readonly to: ChannelOf;
}

/** A load taken off its channel on to a fused feed of its own, live all the time. */
export interface SteadyFeed {
  readonly load: LoadId;
  /** The circuit it is taken off. */
  readonly circuit: CircuitId;
  readonly from: ChannelOf;
  /** Where the feed begins: the feed node of the module. */
  readonly node: NodeId;
  readonly fuseA: number;
}

/** A circuit whose wire out is replaced by a thicker one of the same length. */
export interface Rewire {
  readonly circuit: CircuitId;
  readonly fromGauge: string | undefined;
  readonly toGauge: string;
  readonly toAreaMm2: number;
  readonly because: "wire-under-fuse";
}

/** A proposed change of the record. Money is in whole minor units (cents, tax not in it), time in whole minutes. */
export interface Plan {
  /** Stable name made from its choices, so that the same plan has the same id everywhere. */
  readonly id: string;
  readonly modules: readonly ModuleChoice[];
  readonly fuses: readonly FuseChange[];
  readonly partsCents: number;
  readonly labourCents: number;
  readonly costCents: number;
  /** Access counted once for each place opened. */
  readonly minutes: number;
  readonly modulesTouched: number;
  readonly moves: readonly CircuitMove[];
  readonly steadyFeeds: readonly SteadyFeed[];
  readonly rewires: readonly Rewire[];
  /** Moves, steady feeds and rewires together. */
  readonly wiresMoved: number;
  /** Loads with a wish that this plan dims. */
  readonly dims: readonly LoadId[];
  /** Loads that must not dim and sit on a block that stays enabled on a module the plan does not touch. */
  readonly spoiled: readonly LoadId[];
  /** Weights of the loads it dims (a must times the front's `mustFactor`), less those of the loads it leaves spoiled. */
  readonly wishValue: number;
  /** Wishes not met, each with the rules that stop it. */
  readonly unmet: readonly UnmetWish[];
  /** Musts (must dim, must stay steady) among the unmet. */
  readonly mustsLeft: number;
  /** Life-safety detectors on a channel of a module that the plan touches: they lose their feed during the work and stay undimmed after it. */
  readonly detectors: readonly LoadId[];
  /** Prices, rates or minutes that were missing and counted as nothing, by path. */
  readonly costNeeds: readonly string[];
}

/** Why a wish is not met: codes with parameters; the words come from `plan/words.ts`. */
export interface UnmetWish {
  readonly load: LoadId;
  readonly stoppedBy: readonly Obstacle[];
}

export const OBSTACLE_CODES = [
  "load-must-not-dim",
  "load-unknown",
  "load-has-detector",
  "load-left-spoiled",
  "kind-cannot-dim",
  "kind-unknown",
  "kind-forbidden",
  "kind-not-obtainable",
  "kind-has-no-price",
  "no-kind-fits",
  "switches-other-side",
  "block-has-steady-load",
  "block-has-unknown-load",
  "channel-not-in-block",
  "setting-not-listed",
  "setting-not-known",
  "current-unknown",
  "rating-unknown",
  "over-dimmed-rating",
  "over-switched-rating",
  "over-module-rating",
  "fuse-over-channel",
  "not-on-module",
  "module-locked",
  "over-budget",
  "over-minutes",
  "cut-by-check",
  "dearer-than-chosen",
  "circuit-stays",
  "nothing-in-reach",
  "no-channel-free",
  "nothing-dims-there",
  "module-full",
] as const;

export interface Obstacle {
  readonly code: (typeof OBSTACLE_CODES)[number];
  readonly parameters: Readonly<Record<string, string | number>>;
}

/** A problem in the wishes, the constraints or the prices. */
export interface PlanFault {
  readonly path: string;
  readonly code: string;
  readonly message: string;
}

export interface Pick {
  readonly name: "least-for-all-musts" | "most-light" | "least-disturbance" | "best-per-money";
  readonly plan: string;
  /** Musts that even this plan leaves unmet. */
  readonly mustsLeft: number;
}

/** A choice or a whole plan that was taken out because the changed record has a new finding. */
export interface Cut {
  /** Id of the plan with this choice alone, or with all of it. */
  readonly plan: string;
  readonly modules: readonly ModuleId[];
  /** Code and subject of each new finding. */
  readonly findings: readonly { readonly code: string; readonly subject: string; readonly severity: string }[];
}

/** The set of plans none of which is beaten on cost, wish value and modules touched at once, cheapest first. */
export interface Front {
  readonly plans: readonly Plan[];
  readonly picks: readonly Pick[];
  /** What one unit of weight of a must counts in `wishValue`: enough that the least must outweighs all nice-to-haves together. */
  readonly mustFactor: number;
  /** What the check took out. */
  readonly cuts: readonly Cut[];
  /** Plans that were not checked as a whole, because the search had to stop: see `mostChecks`. */
  readonly unchecked: readonly string[];
  /** False where the search stopped before every cut plan was replaced by its next best. */
  readonly isComplete: boolean;
  /** Problems in the wishes or constraints, by path; nothing is silently dropped. */
  readonly faults: readonly PlanFault[];
}
