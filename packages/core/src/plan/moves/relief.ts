import { steadyOf } from "../../dimming/index.js";
import { deviceCeilingOf, fuseSizesAtMost } from "../../protection/index.js";
import { figureValue, spanOf } from "../../quantity/index.js";
import type { CoachIndex, FullPolicy, Load, LoadClass, NodeId } from "../../record/index.js";
import { loadObstacle } from "../block-check.js";
import { type ChannelLoad, loadsAsCircuit } from "../channel-load.js";
import type { Demand } from "../demand.js";

/** Classes that are as well off when they are always live and have a switch of their own. Common practice, no source. */
const LIVE_WITH_OWN_SWITCH: readonly LoadClass[] = ["electronics", "outlet", "fan"];

export interface ReliefFeed {
  readonly load: Load;
  readonly node: NodeId;
  readonly fuseA: number;
}

/** A circuit whose loads that must not dim got feeds of their own. */
export interface Relief {
  readonly feeds: readonly ReliefFeed[];
  /** What is left on the channel. */
  readonly rest: ChannelLoad;
  /** What the feeds draw, upper end. */
  readonly steadyA: number;
}

/** May this load be live all the time? Said on the record, or (where nothing is said) it has its own switch and is of a class that does no harm live. */
export const mayBeLive = (load: Load): boolean =>
  load.class !== "detector" &&
  (load.maySteadyFeed ??
    (load.hasOwnSwitch === true && load.class !== undefined && LIVE_WITH_OWN_SWITCH.includes(load.class)));

/** The largest standard fuse that the circuit's wire, its fuse and the load allow and that carries the load; undefined where none does or the wire is not known. */
function feedFuseA(policy: FullPolicy, on: ChannelLoad, load: Load, needA: number): number | undefined {
  const ceiling = deviceCeilingOf(on.circuit.out, policy);
  if (ceiling.kind !== "known") return undefined;
  let mostA = ceiling.value.maxA;
  if (on.circuit.fuse?.ratedA !== undefined) mostA = Math.min(mostA, figureValue(on.circuit.fuse.ratedA));
  if (load.maxFuseA !== undefined) mostA = Math.min(mostA, spanOf(load.maxFuseA, "rating").lo);
  const sizeA = fuseSizesAtMost(mostA).at(-1) ?? 0;
  return sizeA > 0 && sizeA >= needA ? sizeA : undefined;
}

/**
 * Can what must not dim on this circuit be fed apart, so that the rest may dim? All such loads or none. Undefined where one may not be live all the time, where
 * nothing would be gained, or where the feed node, the wire or a current is not on record.
 */
export function reliefOf(index: CoachIndex, policy: FullPolicy, demand: Demand, on: ChannelLoad): Relief | undefined {
  if (on.isUnknown || on.highA === undefined || on.needA === undefined || demand.ruledOut.has("steady-feeds"))
    return undefined;
  const node = on.circuit.module === undefined ? undefined : index.modules.get(on.circuit.module)?.feedNode;
  if (node === undefined || !index.nodes.has(node)) return undefined;
  const steady = on.loads.filter((load) => steadyOf(load, demand.wishOfEach.get(load.id)).must === "yes");
  const rest = on.loads.filter((load) => !steady.includes(load));
  if (steady.length === 0 || !steady.every(mayBeLive)) return undefined;
  if (rest.some((load) => loadObstacle(demand, load) !== undefined)) return undefined;
  const feeds: ReliefFeed[] = [];
  for (const load of steady) {
    const alone = loadsAsCircuit(index, policy, on.circuit, [load]);
    const fuseA = alone.needA === undefined ? undefined : feedFuseA(policy, on, load, alone.needA);
    if (fuseA === undefined) return undefined;
    feeds.push({ load, node, fuseA });
  }
  const left = loadsAsCircuit(index, policy, on.circuit, rest);
  return { feeds, rest: left, steadyA: on.highA - (left.highA ?? 0) };
}
