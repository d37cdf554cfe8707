import type { CircuitId, DimBlockId, LoadId, ModuleId, ModuleKindId } from "../record/index.js";

/** What a plan does with one module position. */
export interface ModuleChoice {
  readonly module: ModuleId;
  readonly from: ModuleKindId | undefined;
  readonly to: ModuleKindId;
  readonly isReplaced: boolean;
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
  readonly because: string;
}

/** A proposed change of the record. Money is in whole minor units (cents), time in whole minutes. */
export interface Plan {
  /** Stable name made from its choices, so that the same plan has the same id everywhere. */
  readonly id: string;
  readonly modules: readonly ModuleChoice[];
  readonly fuses: readonly FuseChange[];
  readonly partsCents: number;
  readonly labourCents: number;
  readonly costCents: number;
  readonly minutes: number;
  readonly modulesTouched: number;
  readonly wiresMoved: number;
  /** Loads with a wish that this plan dims. */
  readonly dims: readonly LoadId[];
  readonly wishValue: number;
  /** Wishes not met, each with the rules that stop it. */
  readonly unmet: readonly UnmetWish[];
  /** Prices, rates or minutes that were missing and counted as nothing, by path. */
  readonly costNeeds: readonly string[];
}

/** Why a wish is not met: codes with parameters; the words come from `plan/words.ts`. */
export interface UnmetWish {
  readonly load: LoadId;
  readonly stoppedBy: readonly Obstacle[];
}

export interface Obstacle {
  readonly code:
    | "load-must-not-dim"
    | "load-unknown"
    | "kind-cannot-dim"
    | "no-kind-fits"
    | "block-has-steady-load"
    | "block-has-unknown-load"
    | "over-dimmed-rating"
    | "over-switched-rating"
    | "over-module-rating"
    | "fuse-over-channel"
    | "not-on-module"
    | "module-locked"
    | "over-budget"
    | "dearer-than-chosen"
    | "kind-not-obtainable";
  readonly parameters: Readonly<Record<string, string | number>>;
}

/** The set of plans none of which is beaten on cost, wish value and wires moved at once, cheapest first. */
export interface Front {
  readonly plans: readonly Plan[];
  readonly picks: readonly {
    readonly name: "least-for-all-musts" | "most-light" | "least-disturbance" | "best-per-money";
    readonly plan: string;
  }[];
  /** Problems in the wishes or constraints, by path; nothing is silently dropped. */
  readonly faults: readonly { readonly path: string; readonly code: string; readonly message: string }[];
}
