import { ratedCurrentOf } from "../dimming/index.js";
import { spanOf } from "../quantity/index.js";
import type { Circuit, CoachIndex, FullPolicy, Load, Module } from "../record/index.js";

/** What hangs on one channel, for checking it against a module kind: the upper end of everything on it, all pieces running. */
export interface ChannelLoad {
  readonly circuit: Circuit;
  readonly channel: number;
  readonly loads: readonly Load[];
  /** Upper end of the current; by the fuse where a load's own figure is missing; undefined where neither is known. */
  readonly highA: number | undefined;
  /** The least fuse that carries the load, continuous loads counted at the policy's factor; undefined where a load's figure is missing. */
  readonly needA: number | undefined;
  /** Paths that would have to be filled to know the current from the loads. */
  readonly needs: readonly string[];
  /** Nothing is known of what the circuit feeds: no load is listed and it is not marked spare, or a listed load is not in the record. */
  readonly isUnknown: boolean;
}

function channelLoad(index: CoachIndex, policy: FullPolicy, circuit: Circuit): ChannelLoad {
  const path = index.pathOf("circuits", circuit.id);
  const loads: Load[] = [];
  const needs: string[] = [];
  let isUnknown = false;
  for (const id of circuit.loads ?? []) {
    const load = index.loads.get(id);
    if (load === undefined) {
      isUnknown = true;
      needs.push(`${path}.loads`);
    } else loads.push(load);
  }
  if (loads.length === 0 && circuit.isSpare !== true && !isUnknown) {
    isUnknown = true;
    needs.push(`${path}.loads`);
  }
  let highA = 0;
  let needA = 0;
  for (const load of loads) {
    const current = ratedCurrentOf(load);
    if (current.kind === "known") {
      highA += current.value.hi;
      needA += current.value.hi * (load.isContinuous === true ? policy.continuousFactor : 1);
    } else
      for (const need of current.kind === "missing" ? current.needs : ["ratedV"])
        needs.push(`${index.pathOf("loads", load.id)}.${need}`);
  }
  const fuseA = circuit.fuse?.ratedA === undefined ? undefined : spanOf(circuit.fuse.ratedA, "rating").hi;
  const isKnown = needs.length === 0;
  return {
    circuit,
    channel: circuit.channel ?? 0,
    loads,
    highA: isKnown ? highA : fuseA,
    needA: isKnown ? needA : undefined,
    needs: isKnown || fuseA !== undefined ? needs : [...needs, `${path}.fuse.ratedA`],
    isUnknown,
  };
}

/** What hangs on each channel of a module that the record lists, in channel order. */
export const channelLoadsOf = (index: CoachIndex, policy: FullPolicy, module: Module): readonly ChannelLoad[] =>
  (index.circuitsOfModule.get(module.id) ?? []).map((circuit) => channelLoad(index, policy, circuit));

/** The same circuit as if only these of its loads hung on it; spare where none does. */
export const loadsAsCircuit = (
  index: CoachIndex,
  policy: FullPolicy,
  circuit: Circuit,
  loads: readonly Load[],
): ChannelLoad =>
  channelLoad(index, policy, {
    ...circuit,
    loads: loads.map((load) => load.id),
    ...(loads.length === 0 ? { isSpare: true } : {}),
  });

/** What hangs on plain fuse positions, not on a module. */
export const looseLoadsOf = (index: CoachIndex, policy: FullPolicy): readonly ChannelLoad[] =>
  [...index.circuits.values()]
    .filter((circuit) => circuit.module === undefined)
    .map((circuit) => channelLoad(index, policy, circuit));
