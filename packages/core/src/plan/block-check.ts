import { type BlockReason, blockSuitability, suitabilityOf } from "../dimming/index.js";
import { spanOf } from "../quantity/index.js";
import type { CoachIndex, Load, LoadId, ModuleKind } from "../record/index.js";
import type { ChannelLoad } from "./channel-load.js";
import type { Demand } from "./demand.js";
import type { Obstacle } from "./plan.js";

export type DimBlock = NonNullable<ModuleKind["dimBlocks"]>[number];

/** What enabling one dim block does on one module: what stops it, and what it gives or spoils if it is enabled all the same. */
export interface BlockCheck {
  readonly block: DimBlock;
  /** Empty: the block may be enabled. */
  readonly obstacles: readonly Obstacle[];
  /** Wished loads on it that would dim within the channel's rating. */
  readonly dims: readonly LoadId[];
  /** Loads on it that must not dim. */
  readonly spoils: readonly LoadId[];
}

/** What stops this load from being dimmed, whatever the module? A load that may only be dimmed under a condition is stopped until it is met. */
export function loadObstacle(demand: Demand, load: Load): Obstacle | undefined {
  const parameters = { load: load.id, name: load.name };
  const suitability = suitabilityOf(load);
  if (suitability.code === "life-safety") return { code: "load-has-detector", parameters };
  if (demand.wishes.get(load.id)?.wish === "must-stay-steady")
    return { code: "load-must-not-dim", parameters: { ...parameters, why: "wished-steady" } };
  switch (suitability.may) {
    case "yes":
      return undefined;
    case "no":
      return { code: "load-must-not-dim", parameters: { ...parameters, why: suitability.code } };
    case "only-if":
    case "unknown":
      return { code: "load-unknown", parameters: { ...parameters, why: suitability.code } };
  }
}

const reasonObstacle =
  (index: CoachIndex, kind: ModuleKind, block: DimBlock, code: "block-has-steady-load" | "block-has-unknown-load") =>
  (reason: BlockReason): Obstacle => {
    const load = reason.load === undefined ? undefined : index.loads.get(reason.load);
    const circuit = reason.circuit === undefined ? undefined : index.circuits.get(reason.circuit);
    return {
      code,
      parameters: {
        kind: kind.id,
        kindName: kind.name,
        block: block.id,
        channel: reason.channel,
        circuit: reason.circuit ?? "",
        load: reason.load ?? "",
        name: load?.name ?? circuit?.name ?? circuit?.label ?? "",
        why: reason.code,
      },
    };
  };

/** The current on one channel against the kind's dimmed rating, both at their worse end. */
function ratingObstacle(
  index: CoachIndex,
  kind: ModuleKind,
  block: DimBlock,
  channel: number,
  here: readonly ChannelLoad[],
): Obstacle | undefined {
  if (here.every((on) => on.highA === 0)) return undefined;
  const at = { kind: kind.id, kindName: kind.name, block: block.id, channel, circuit: here[0]?.circuit.id ?? "" };
  if (kind.ratedDimmedA === undefined)
    return {
      code: "rating-unknown",
      parameters: { ...at, need: `${index.pathOf("moduleKinds", kind.id)}.ratedDimmedA` },
    };
  const unknown = here.find((on) => on.highA === undefined);
  if (unknown !== undefined)
    return {
      code: "current-unknown",
      parameters: { ...at, circuit: unknown.circuit.id, need: unknown.needs[0] ?? "", needs: unknown.needs.join(", ") },
    };
  const currentA = here.reduce((sum, on) => sum + (on.highA ?? 0), 0);
  const ratedA = spanOf(kind.ratedDimmedA, "rating").lo;
  return currentA <= ratedA ? undefined : { code: "over-dimmed-rating", parameters: { ...at, currentA, ratedA } };
}

/**
 * May this block be enabled with what hangs on the module? Every load on it must be fit for dimming, none may be a detector or a load that must stay
 * steady, none may be unknown, and each channel's current (upper end) must be within the dimmed rating (lower end).
 * `wiredChannels`: how many channels the harness has; a channel beyond them has nothing on it, one within them that the record does not list is unknown.
 */
export function checkBlock(
  index: CoachIndex,
  demand: Demand,
  kind: ModuleKind,
  block: DimBlock,
  loads: readonly ChannelLoad[],
  wiredChannels: number,
): BlockCheck {
  const suitability = blockSuitability(
    index,
    loads.map((on) => on.circuit),
    kind,
    block,
    demand.wishOfEach,
  );
  if (suitability.kind !== "known")
    return {
      block,
      obstacles: [
        suitability.kind === "missing"
          ? {
              code: "rating-unknown",
              parameters: {
                kind: kind.id,
                kindName: kind.name,
                block: block.id,
                need: suitability.needs.map((need) => `${index.pathOf("moduleKinds", kind.id)}.${need}`).join(", "),
              },
            }
          : { code: "kind-cannot-dim", parameters: { kind: kind.id, kindName: kind.name } },
      ],
      dims: [],
      spoils: [],
    };
  const { spoiledBy, unknown, conditions, dims } = suitability.value;
  const unlisted = unknown.filter(
    (reason) => reason.code !== "channel-not-recorded" || reason.channel <= wiredChannels,
  );
  const overloaded = new Set<number>();
  const ratings: Obstacle[] = [];
  for (const channel of new Set(block.channels)) {
    const rating = ratingObstacle(
      index,
      kind,
      block,
      channel,
      loads.filter((on) => on.channel === channel),
    );
    if (rating === undefined) continue;
    ratings.push(rating);
    overloaded.add(channel);
  }
  const conditional = new Set(conditions.map((reason) => reason.load));
  const within = new Set(
    loads.flatMap((on) => (overloaded.has(on.channel) ? [] : on.loads.map((load) => load.id as string))),
  );
  return {
    block,
    obstacles: [
      ...spoiledBy.map(reasonObstacle(index, kind, block, "block-has-steady-load")),
      ...[...unlisted, ...conditions].map(reasonObstacle(index, kind, block, "block-has-unknown-load")),
      ...ratings,
    ],
    dims: dims.filter((load) => {
      const wish = demand.wishes.get(load)?.wish;
      return (wish === "must-dim" || wish === "nice-to-dim") && within.has(load) && !conditional.has(load);
    }),
    spoils: [...new Set(spoiledBy.flatMap((reason) => reason.load ?? []))],
  };
}
