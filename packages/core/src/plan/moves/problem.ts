import type { CircuitId, DimBlockId, LoadId, ModuleId, ModuleKindId, PlaceId } from "../../record/index.js";
import type { FuseChange } from "../plan.js";

/**
 * The planning problem with circuits that may move, as plain whole numbers. Channels of one mode are alike for an arriving circuit, so a module says only what it does
 * as a whole (one `MovePattern`) and a circuit only where it sits (one `Placing`): channel numbers are given afterwards, and always can be.
 * `cost` is in sixtieths of a cent, `value` in thousandths of a weight, `minutes` whole; currents are rounded to a millionth of an ampere.
 */
export interface MovesProblem {
  readonly name: string;
  /** In the record's order. */
  readonly modules: readonly MoveModule[];
  /** Circuits that have a choice. All others are counted into the patterns. */
  readonly circuits: readonly MoveCircuit[];
  /** Kinds of which some are in stock or may be freed; all others are paid in the pattern. */
  readonly parts: readonly MovePart[];
  /** Places whose opening takes minutes. */
  readonly places: readonly MovePlace[];
  readonly feeders: readonly FeederLimit[];
  /** Cost of a minute. */
  readonly costOfMinute: number;
  /** At most this cost: the budget in sixtieths, with what rounding to cents lets through. */
  readonly mostCost: number | undefined;
  readonly mostMinutes: number | undefined;
  /** Every cost is a whole multiple of this. */
  readonly costUnit: number;
  /** Every value is a whole multiple of this. */
  readonly valueUnit: number;
}

/** One thing that can be done with one module as a whole: kept, set anew or replaced, with the blocks it enables. */
export interface MovePattern {
  /** Names it among the module's patterns: "as found", or kind and blocks. */
  readonly key: string;
  readonly kind: ModuleKindId | undefined;
  readonly isReplaced: boolean;
  readonly isTouched: boolean;
  /** Where `isFree`: the blocks that each may be enabled or not; else those that are. */
  readonly enables: readonly DimBlockId[];
  /** Each block holds one channel and is set by itself: every channel in `enables` may dim or switch. */
  readonly isFree: boolean;
  /** Price where it is no counted part, and minutes at the hourly rate. */
  readonly cost: number;
  readonly minutes: number;
  /** Takes one of this part. */
  readonly part: number | undefined;
  /** Gives one of this part back: the module it takes out. */
  readonly frees: number | undefined;
  /** Of the circuits that have no choice. */
  readonly value: number;
  readonly dims: readonly LoadId[];
  readonly spoiled: readonly LoadId[];
  readonly inDoubt: readonly LoadId[];
  readonly fuses: readonly FuseChange[];
  /** Channels left to the circuits of the problem, those they sit on included. */
  readonly slots: number;
  /** Of those: on which a circuit may be dimmed. */
  readonly dimmable: number;
  /** Of those: on which a circuit may be switched. */
  readonly switchable: number;
  /** What the circuits of the problem may draw together. */
  readonly mostA: number;
}

export interface MoveModule {
  readonly module: ModuleId;
  readonly name: string;
  /** Exactly one is done. The first is what stands now, where it may stay. */
  readonly patterns: readonly MovePattern[];
  /** Places in `MovesProblem.places` that work on this module opens. */
  readonly places: readonly number[];
}

/** One way in which a circuit may sit when the work is done. Exactly one holds for each circuit. */
export interface Placing {
  /** Where; undefined: nowhere, because all its loads got feeds of their own. */
  readonly module: number | undefined;
  readonly isMoved: boolean;
  readonly isDimmed: boolean;
  /** The patterns of that module under which it may sit so. Empty where it sits nowhere. */
  readonly patterns: readonly number[];
  /** It takes a channel that may dim. */
  readonly takesDimmable: boolean;
  /** It takes a channel that may switch. */
  readonly takesSwitchable: boolean;
  readonly currentA: number;
  /** What its loads on feeds of their own go on drawing from the feed of its home module. */
  readonly steadyA: number;
  readonly cost: number;
  readonly minutes: number;
  readonly wiresMoved: number;
  readonly value: number;
  readonly dims: readonly LoadId[];
  readonly spoiled: readonly LoadId[];
  readonly inDoubt: readonly LoadId[];
  /** Its fuse is changed; which size follows from the kind. */
  readonly changesFuse: boolean;
  /** Its wire is changed; which size follows from the fuse. */
  readonly isRewired: boolean;
  /** Loads that get a feed of their own. */
  readonly steady: readonly LoadId[];
}

export interface MoveCircuit {
  readonly circuit: CircuitId;
  readonly name: string;
  readonly home: number;
  readonly channel: number;
  /** Modules it may go to, its own among them; its home alone where it may not move. */
  readonly reach: readonly number[];
  /** At least one. The first is how it sits now, where that is among them. */
  readonly placings: readonly Placing[];
}

export interface MovePart {
  readonly kind: ModuleKindId;
  readonly inStock: number;
  /** Infinity where none can be bought. */
  readonly price: number;
}

export interface MovePlace {
  /** Undefined: the places where the supplies are isolated, opened by any work. */
  readonly place: PlaceId | undefined;
  readonly minutes: number;
  readonly cost: number;
}

/** What a feed node or the cable to it may carry: the currents of all modules it feeds. */
export interface FeederLimit {
  readonly collection: "nodes" | "cables";
  readonly id: string;
  readonly modules: readonly number[];
  /** What the circuits of the problem may draw together; never less than they draw as found. */
  readonly mostA: number;
}

/** An answer: for each module its pattern, for each circuit its placing. Places opened and parts bought follow. */
export interface Choice {
  readonly patterns: readonly number[];
  readonly placings: readonly number[];
}
