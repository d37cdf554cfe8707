import { figureValue, spanOf } from "../quantity/index.js";
import type { ModuleKind } from "../record/index.js";
import { standardFuses } from "../tables/index.js";
import type { ChannelLoad } from "./channel-load.js";
import type { FuseChange, Obstacle } from "./plan.js";

/**
 * Does the fuse of this channel fit the kind, and if not, what size does? The largest standard size that the channel, the wire and every load
 * allow and that still carries the load; an obstacle where there is none, or where the load is not known and so no smaller size can be vouched for.
 */
export function fitFuse(
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
  for (const load of on.loads)
    if (load.maxFuseA !== undefined) mostA = Math.min(mostA, spanOf(load.maxFuseA, "rating").lo);
  const toA = standardFuses().reduce(
    (most, { ratedA: size }) => (size <= mostA && size <= foundA ? Math.max(most, size) : most),
    0,
  );
  if (toA < on.needA || toA === 0)
    return { obstacle: { code: "fuse-over-channel", parameters: { ...at, needA: on.needA, mostA } } };
  return { change: { circuit: on.circuit.id, fromA: foundA, toA, because: "fuse-over-channel" } };
}
