import { deviceCeilingOf, fuseSizesAtMost } from "../protection/index.js";
import { figureValue, spanOf } from "../quantity/index.js";
import type { FullPolicy, ModuleKind } from "../record/index.js";
import type { ChannelLoad } from "./channel-load.js";
import type { FuseChange, Obstacle } from "./plan.js";

/**
 * Does the fuse of this channel fit the kind, and if not, what size does? The largest standard size that the channel, the wire and every load
 * allow and that still carries the load; an obstacle where there is none, or where the load is not known and so no smaller size can be vouched for.
 */
export function fitFuse(
  policy: FullPolicy,
  kind: ModuleKind,
  on: ChannelLoad,
): { readonly change?: FuseChange; readonly obstacle?: Obstacle } {
  const ratedA = on.circuit.fuse?.ratedA;
  if (kind.maxFuseA === undefined || ratedA === undefined) return {};
  const channelA = spanOf(kind.maxFuseA, "rating").lo;
  const foundA = figureValue(ratedA);
  if (spanOf(ratedA, "rating").hi <= channelA) return {};
  const at = {
    kind: kind.id,
    kindName: kind.name,
    channel: on.channel,
    circuit: on.circuit.id,
    fuseA: foundA,
    channelA,
  };
  if (on.needA === undefined)
    return { obstacle: { code: "fuse-over-channel", parameters: { ...at, need: on.needs[0] ?? "" } } };
  let mostA = channelA;
  // An unknown wire stops nothing here: the fuse only gets smaller, and what was too large for the wire is a finding of its own.
  const ceiling = deviceCeilingOf(on.circuit.out, policy);
  if (ceiling.kind === "known") mostA = Math.min(mostA, ceiling.value.maxA);
  for (const load of on.loads)
    if (load.maxFuseA !== undefined) mostA = Math.min(mostA, spanOf(load.maxFuseA, "rating").lo);
  const toA = fuseSizesAtMost(Math.min(mostA, foundA)).at(-1) ?? 0;
  if (toA < on.needA || toA === 0)
    return { obstacle: { code: "fuse-over-channel", parameters: { ...at, needA: on.needA, mostA } } };
  return { change: { circuit: on.circuit.id, fromA: foundA, toA, because: "fuse-over-channel" } };
}
