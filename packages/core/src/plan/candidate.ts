import { spanOf } from "../quantity/index.js";
import type { CoachIndex, FullPolicy, Module, ModuleKind } from "../record/index.js";
import type { ChannelLoad } from "./channel-load.js";
import type { Demand } from "./demand.js";
import { fitFuse } from "./fuse-fit.js";
import type { FuseChange, Obstacle } from "./plan.js";

/** A kind that might be fitted in a position, what stops it, and the fuses that would change with it. */
export interface Candidate {
  readonly kind: ModuleKind;
  /** Empty: it may be fitted. */
  readonly obstacles: readonly Obstacle[];
  readonly fuses: readonly FuseChange[];
}

/** Kinds without a price are left out where others have one: a missing price must not look like a low one. */
export const isPriced = (index: CoachIndex): boolean =>
  (index.record.moduleKinds ?? []).some((kind) => kind.price !== undefined);

export const stockOf = (kind: ModuleKind): number => kind.inStock ?? 0;

/** Does this kind take the position and harness of the present one, all its listed channels included? */
function takesPosition(present: ModuleKind, kind: ModuleKind, highestChannel: number): boolean {
  if (kind.channels < Math.max(highestChannel, 1)) return false;
  if (kind.id === present.id) return true;
  return kind.fitsInPlaceOf === undefined ? kind.channels >= present.channels : kind.fitsInPlaceOf.includes(present.id);
}

/** What of the kind's ratings does not carry these loads, each channel and all together, at their upper end? */
export function ratingObstacles(index: CoachIndex, kind: ModuleKind, loads: readonly ChannelLoad[]): Obstacle[] {
  const obstacles: Obstacle[] = [];
  const kindPath = index.pathOf("moduleKinds", kind.id);
  const at = { kind: kind.id, kindName: kind.name };
  const used = loads.filter((on) => on.highA !== 0);
  if (used.length === 0) return obstacles;
  if (kind.ratedSwitchedA === undefined)
    obstacles.push({ code: "rating-unknown", parameters: { ...at, need: `${kindPath}.ratedSwitchedA` } });
  if (kind.ratedTotalA === undefined)
    obstacles.push({ code: "rating-unknown", parameters: { ...at, need: `${kindPath}.ratedTotalA` } });
  let totalA = 0;
  let unknown: ChannelLoad | undefined;
  const byChannel = new Map<number, { highA: number; circuit: string }>();
  for (const on of used) {
    if (on.highA === undefined) {
      unknown ??= on;
      continue;
    }
    totalA += on.highA;
    const same = byChannel.get(on.channel);
    byChannel.set(on.channel, { highA: (same?.highA ?? 0) + on.highA, circuit: on.circuit.id });
  }
  if (unknown !== undefined)
    obstacles.push({
      code: "current-unknown",
      parameters: {
        ...at,
        channel: unknown.channel,
        circuit: unknown.circuit.id,
        need: unknown.needs[0] ?? "",
        needs: unknown.needs.join(", "),
      },
    });
  if (kind.ratedSwitchedA !== undefined) {
    const ratedA = spanOf(kind.ratedSwitchedA, "rating").lo;
    for (const [channel, { highA, circuit }] of byChannel)
      if (highA > ratedA)
        obstacles.push({
          code: "over-switched-rating",
          parameters: { ...at, channel, circuit, currentA: highA, ratedA },
        });
  }
  if (kind.ratedTotalA !== undefined) {
    const ratedA = spanOf(kind.ratedTotalA, "rating").lo;
    if (totalA > ratedA)
      obstacles.push({ code: "over-module-rating", parameters: { ...at, currentA: totalA, ratedA } });
  }
  return obstacles;
}

/**
 * What keeps this kind from the position, whatever hangs on it: ruled out, not to be had, no price, another harness, another side. `isFreed`: a plan may take one
 * out elsewhere in the coach, so it need not be bought.
 */
export function fittingObstacles(
  index: CoachIndex,
  demand: Demand,
  module: Module,
  present: ModuleKind,
  kind: ModuleKind,
  highestChannel: number,
  isFreed = false,
): Obstacle[] {
  const at = { kind: kind.id, kindName: kind.name, module: module.id };
  const obstacles: Obstacle[] = [];
  if (demand.forbidden.has(kind.id)) obstacles.push({ code: "kind-forbidden", parameters: at });
  if (kind.isObtainable === false && stockOf(kind) === 0 && !isFreed)
    obstacles.push({ code: "kind-not-obtainable", parameters: at });
  if (kind.price === undefined && stockOf(kind) === 0 && !isFreed && isPriced(index))
    obstacles.push({
      code: "kind-has-no-price",
      parameters: { ...at, need: `${index.pathOf("moduleKinds", kind.id)}.price` },
    });
  if (!takesPosition(present, kind, highestChannel))
    obstacles.push({
      code: "no-kind-fits",
      parameters: {
        ...at,
        present: present.id,
        channels: kind.channels,
        wanted: Math.max(present.channels, highestChannel),
      },
    });
  if (kind.side !== undefined && present.side !== undefined && kind.side !== present.side)
    obstacles.push({ code: "switches-other-side", parameters: { ...at, side: kind.side, presentSide: present.side } });
  return obstacles;
}

/** The highest channel of the module that the record lists. */
export const highestChannelOf = (loads: readonly ChannelLoad[]): number =>
  loads.reduce((most, on) => Math.max(most, on.channel), 0);

/**
 * May this kind take this position, harness and loads as they are? It must be to be had, not forbidden, take the position (`fitsInPlaceOf`, or at least
 * as many channels), switch the same side, and carry each channel and the whole, everything on at its upper end, within its ratings.
 */
export function candidateOf(
  index: CoachIndex,
  policy: FullPolicy,
  demand: Demand,
  module: Module,
  present: ModuleKind,
  kind: ModuleKind,
  loads: readonly ChannelLoad[],
): Candidate {
  const obstacles = fittingObstacles(index, demand, module, present, kind, highestChannelOf(loads));
  if (obstacles.length > 0) return { kind, obstacles, fuses: [] };
  obstacles.push(...ratingObstacles(index, kind, loads));
  const fuses: FuseChange[] = [];
  for (const on of loads) {
    const { change, obstacle } = fitFuse(policy, kind, on);
    if (change !== undefined) fuses.push(change);
    if (obstacle !== undefined) obstacles.push(obstacle);
  }
  return { kind, obstacles, fuses };
}
