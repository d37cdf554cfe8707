import { spanOf } from "../../quantity/index.js";
import {
  type Circuit,
  type CircuitId,
  type CoachIndex,
  type LoadId,
  type Module,
  policyOf,
} from "../../record/index.js";
import { loadObstacle } from "../block-check.js";
import { channelLoadsOf } from "../channel-load.js";
import type { Demand } from "../demand.js";
import { staysBecause } from "../moves/index.js";
import { type Position, positionOf } from "../option.js";
import type { Obstacle } from "../plan.js";
import { nearOf } from "./near.js";

const distinct = (obstacles: readonly Obstacle[]): Obstacle[] => [
  ...new Map(obstacles.map((obstacle) => [JSON.stringify(obstacle), obstacle])).values(),
];

/** What keeps one kind from dimming this channel of its module with everything where it is: nothing, where it could. */
function onChannel(position: Position, channel: number): Obstacle[] {
  const { module, present } = position;
  const obstacles: Obstacle[] = [];
  if (present === undefined) return [{ code: "kind-unknown", parameters: { module: module.id } }];
  const at = { module: module.id, channel };
  if (module.isDead !== true) {
    const checks = position.blocksOf(present).filter((check) => check.block.channels.includes(channel));
    const named = { ...at, kind: present.id, kindName: present.name };
    if ((present.dimBlocks ?? []).length === 0) obstacles.push({ code: "kind-cannot-dim", parameters: named });
    else if (checks.length === 0) obstacles.push({ code: "channel-not-in-block", parameters: named });
    obstacles.push(...checks.flatMap((check) => check.obstacles));
  }
  for (const candidate of position.candidates) {
    const checks = position.blocksOf(candidate.kind).filter((check) => check.block.channels.includes(channel));
    if (checks.length > 0) obstacles.push(...candidate.obstacles, ...checks.flatMap((check) => check.obstacles));
  }
  return obstacles;
}

const stays = (index: CoachIndex, demand: Demand, circuit: Circuit): Obstacle[] => {
  const why = staysBecause(index, demand, circuit);
  return why === undefined || why === "not-on-module"
    ? []
    : [{ code: "circuit-stays", parameters: { circuit: circuit.id, why } }];
};

/** What keeps a circuit from going to this module to be dimmed there. */
function onNeighbour(index: CoachIndex, demand: Demand, module: Module, order: number, circuit: Circuit): Obstacle[] {
  const policy = policyOf(index.record);
  const position = positionOf(index, policy, demand, module, order);
  if (position.isLocked) return [{ code: "module-locked", parameters: { module: module.id } }];
  const { present } = position;
  if (present === undefined) return [{ code: "kind-unknown", parameters: { module: module.id } }];
  const obstacles: Obstacle[] = [];
  const kinds = [
    present,
    ...position.candidates.filter((each) => each.obstacles.length === 0).map((each) => each.kind),
  ];
  const dimming = kinds.filter((kind) => (kind.dimBlocks ?? []).length > 0);
  if (dimming.length === 0) obstacles.push({ code: "nothing-dims-there", parameters: { module: module.id } });
  const there = index.circuitsOfModule.get(module.id) ?? [];
  const isOpen = (channel: number): boolean => {
    const on = there.filter((each) => each.channel === channel);
    return (
      on.length > 0 && on.every((each) => each.isSpare === true || staysBecause(index, demand, each) === undefined)
    );
  };
  const channels = [...new Set(there.flatMap((each) => each.channel ?? []))];
  if (!channels.some(isOpen)) obstacles.push({ code: "no-channel-free", parameters: { module: module.id } });
  const currentA = channelLoadsOf(
    index,
    policy,
    index.modules.get(circuit.module ?? ("" as Module["id"])) ?? module,
  ).find((on) => on.circuit === circuit)?.highA;
  if (currentA === undefined)
    return [
      ...obstacles,
      {
        code: "current-unknown",
        parameters: {
          channel: circuit.channel ?? 0,
          circuit: circuit.id,
          need: `${index.pathOf("circuits", circuit.id)}.loads`,
        },
      },
    ];
  const drawnA = position.loads.reduce((sum, on) => sum + (on.highA ?? 0), 0);
  for (const kind of kinds) {
    if (kind.ratedTotalA === undefined) continue;
    const ratedA = spanOf(kind.ratedTotalA, "rating").lo;
    if (drawnA + currentA > ratedA)
      obstacles.push({
        code: "module-full",
        parameters: {
          module: module.id,
          kind: kind.id,
          kindName: kind.name,
          currentA,
          leftA: Math.max(0, ratedA - drawnA),
        },
      });
  }
  for (const kind of dimming) {
    if (kind.ratedDimmedA === undefined) continue;
    const ratedA = spanOf(kind.ratedDimmedA, "rating").lo;
    if (currentA > ratedA)
      obstacles.push({
        code: "over-dimmed-rating",
        parameters: {
          kind: kind.id,
          kindName: kind.name,
          channel: circuit.channel ?? 0,
          circuit: circuit.id,
          currentA,
          ratedA,
        },
      });
  }
  return obstacles;
}

/**
 * Which rules stop this load from dimming, one by one: its own, those of its channel under every kind, why its circuit and those beside it on a block stay where
 * they are, and what is in the way at each module its wire can be brought to. Rules of a sum (budget, minutes, feeders) are not among them: `whyNot` weighs those.
 */
export function moveObstacles(index: CoachIndex, demand: Demand, loadId: LoadId): Obstacle[] {
  const load = index.loads.get(loadId);
  if (load === undefined) return [];
  const parameters = { load: load.id, name: load.name };
  const circuit = index.circuitOfLoad.get(loadId);
  const near = nearOf(index, circuit);
  const own = demand.wishes.get(loadId)?.wish === "must-stay-steady" ? undefined : loadObstacle(demand, load);
  if (own !== undefined) return [own];
  if (circuit === undefined || near === undefined || circuit.channel === undefined)
    return [{ code: "not-on-module", parameters: { ...parameters, circuit: circuit?.id ?? "" } }];
  const orders = [...index.modules.keys()];
  const orderOf = (module: Module): number => orders.indexOf(module.id);
  const position = positionOf(index, policyOf(index.record), demand, near.home, orderOf(near.home));
  const here = onChannel(position, circuit.channel);
  const beside = new Set<string>(
    here.flatMap(({ code, parameters: given }) =>
      code === "block-has-steady-load" || code === "block-has-unknown-load" ? [String(given.circuit ?? "")] : [],
    ),
  );
  const others = [...beside]
    .flatMap((id) => index.circuits.get(id as CircuitId) ?? [])
    .filter((each) => each !== circuit);
  const isFree = staysBecause(index, demand, circuit) === undefined;
  const neighbours = near.modules.filter((module) => module !== near.home);
  return distinct([
    ...(position.isLocked ? [{ code: "module-locked" as const, parameters: { module: near.home.id } }] : []),
    ...here,
    ...stays(index, demand, circuit),
    ...others.flatMap((each) => stays(index, demand, each)),
    ...(isFree && neighbours.length === 0
      ? [{ code: "nothing-in-reach" as const, parameters: { circuit: circuit.id } }]
      : []),
    ...(isFree ? neighbours.flatMap((module) => onNeighbour(index, demand, module, orderOf(module), circuit)) : []),
  ]);
}
