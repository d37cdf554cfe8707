import type { Circuit, CoachIndex, FullPolicy, LoadId, Module, ModuleKind } from "../../record/index.js";
import { type BlockCheck, checkBlock, type DimBlock } from "../block-check.js";
import { fittingObstacles, highestChannelOf } from "../candidate.js";
import { type ChannelLoad, channelLoadsOf } from "../channel-load.js";
import type { Demand } from "../demand.js";
import { isSpareEntry, type StayReason, staysBecause, untouchableBecause } from "./movable.js";
import { type Relief, reliefOf } from "./relief.js";
import { fuseFitOf } from "./rewire.js";

/** What the record, the policy and the demand say, and which kinds a plan may take out of one module and fit in another. */
export interface Basis {
  readonly index: CoachIndex;
  readonly policy: FullPolicy;
  readonly demand: Demand;
  /** Kinds of which some module could give one back. */
  readonly freed: ReadonlySet<string>;
}

/** A circuit that has a choice: it may go elsewhere, or its loads or its wire may be changed. */
export interface GroundCircuit {
  readonly on: ChannelLoad;
  readonly mayMove: boolean;
  readonly relief: Relief | undefined;
}

/** One module position with what hangs on it. */
export interface Ground {
  readonly module: Module;
  readonly order: number;
  readonly present: ModuleKind | undefined;
  readonly isLocked: boolean;
  readonly isDead: boolean;
  readonly loads: readonly ChannelLoad[];
  /** Loads without a choice. */
  readonly fixed: readonly ChannelLoad[];
  readonly circuits: readonly GroundCircuit[];
  /** Kinds that may take the position, as far as position, price and side go. */
  readonly kinds: readonly ModuleKind[];
  /** Each block of a kind with the fixed loads alone. */
  blocksOf(kind: ModuleKind): readonly BlockCheck[];
}

/** On no channel of its own: there is nothing that could be asked of it. */
const NEVER_JUDGED: readonly StayReason[] = ["not-on-module", "spare", "shares-channel"];

export const mayRewire = (basis: Basis, circuit: Circuit): boolean =>
  !basis.demand.ruledOut.has("rewires") && untouchableBecause(basis.index, basis.demand, circuit) === undefined;

/** A thicker wire would let this circuit take a kind that it cannot take now. */
const gainsByRewire = (basis: Basis, kinds: readonly ModuleKind[], on: ChannelLoad): boolean =>
  mayRewire(basis, on.circuit) && kinds.some((kind) => fuseFitOf(basis.policy, kind, on, true)?.rewire !== undefined);

function choiceOf(basis: Basis, kinds: readonly ModuleKind[], on: ChannelLoad): GroundCircuit | undefined {
  const { index, policy, demand } = basis;
  const untouchable = untouchableBecause(index, demand, on.circuit);
  const isNamed = demand.fixedChoices.some((each) => each.choice.circuit === on.circuit.id);
  if (untouchable !== undefined) {
    // What the user says of a circuit that stays must still be kept to.
    const isJudged = isNamed && !NEVER_JUDGED.includes(untouchable);
    return isJudged ? { on, mayMove: false, relief: undefined } : undefined;
  }
  const mayMove = staysBecause(index, demand, on.circuit) === undefined;
  const relief = reliefOf(index, policy, demand, on);
  return isNamed || mayMove || relief !== undefined || gainsByRewire(basis, kinds, on)
    ? { on, mayMove, relief }
    : undefined;
}

/** What stands at one position and which of its circuits have a choice. */
export function groundOf(basis: Basis, module: Module, order: number): Ground {
  const { index, policy, demand } = basis;
  const present = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
  const loads = channelLoadsOf(index, policy, module);
  const isLocked = module.isLocked === true || demand.locked.has(module.id);
  const isDead = module.isDead === true;
  const highest = highestChannelOf(loads);
  const kinds =
    present === undefined || isLocked
      ? []
      : [...index.moduleKinds.values()].filter(
          (kind) =>
            (kind.id !== present.id || isDead) &&
            fittingObstacles(index, demand, module, present, kind, highest, basis.freed.has(kind.id)).length === 0,
        );
  const fixed: ChannelLoad[] = [];
  const circuits: GroundCircuit[] = [];
  for (const on of loads) {
    const isWithin = present === undefined || on.channel <= present.channels;
    const choice = isWithin ? choiceOf(basis, kinds, on) : undefined;
    if (choice === undefined) fixed.push(on);
    else circuits.push(choice);
  }
  // To the blocks, a channel whose circuit has a choice is empty: what sits there is judged with the circuit.
  const emptied = loads.map(
    (on): ChannelLoad =>
      fixed.includes(on)
        ? on
        : {
            ...on,
            circuit: { ...on.circuit, loads: [], isSpare: true },
            loads: [],
            highA: 0,
            needs: [],
            isUnknown: false,
          },
  );
  const known = new Map<string, readonly BlockCheck[]>();
  return {
    module,
    order,
    present,
    isLocked,
    isDead,
    loads,
    fixed,
    circuits,
    kinds,
    blocksOf(kind) {
      let checks = known.get(kind.id);
      if (checks === undefined && present !== undefined) {
        checks = (kind.dimBlocks ?? []).map((block) =>
          checkBlock(index, demand, kind, block, emptied, present.channels),
        );
        known.set(kind.id, checks);
      }
      return checks ?? [];
    },
  };
}

/** What would dim, be spoiled, or stand against it, were this circuit alone on a channel of the kind that dims. */
export function dimmedAlone(basis: Basis, kind: ModuleKind, on: ChannelLoad): BlockCheck {
  const block = { id: "alone", channels: [1] } as unknown as DimBlock;
  const alone: ChannelLoad = { ...on, channel: 1, circuit: { ...on.circuit, channel: 1 } };
  return checkBlock(basis.index, basis.demand, kind, block, [alone], 1);
}

/** Thousandths: what these loads are worth dimmed, less what spoiled ones cost. */
export function worthOf(demand: Demand, dims: readonly LoadId[], spoiled: readonly LoadId[]): number {
  const gained = dims.reduce((sum, load) => sum + (demand.wishes.get(load)?.value ?? 0), 0);
  return spoiled.reduce((sum, load) => {
    const wish = demand.wishes.get(load);
    return sum - (wish?.wish === "must-stay-steady" ? wish.value : demand.steadyValue);
  }, gained);
}

/** A channel on which something may arrive or its own circuit may stay: empty, or its circuit has a choice. */
export function openChannels(ground: Ground, channels: number): readonly number[] {
  const wired = ground.present?.channels ?? 0;
  return Array.from({ length: channels }, (_, i) => i + 1).filter((channel) => {
    const here = ground.loads.filter((on) => on.channel === channel);
    if (here.length === 0) return channel > wired;
    return here.every((on) => isSpareEntry(on.circuit) || ground.circuits.some((each) => each.on === on));
  });
}
