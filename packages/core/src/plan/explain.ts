import type { CoachIndex, Load, LoadId, ModuleId } from "../record/index.js";
import { loadObstacle } from "./block-check.js";
import type { Demand, ValuedWish } from "./demand.js";
import type { BarePlan } from "./make-plan.js";
import { type Option, optionKey, type Position } from "./option.js";
import type { Obstacle, Plan, UnmetWish } from "./plan.js";

/** A plan with the options it is made of, by module. */
export interface Chosen {
  readonly plan: BarePlan;
  readonly options: ReadonlyMap<ModuleId, Option>;
  readonly dims: ReadonlySet<LoadId>;
  /** Loads that must not dim and do, or may: on an enabled block, or on a bank whose setting nobody could read. */
  readonly unsteady: ReadonlySet<LoadId>;
}

/** What the explanations may look at beside the plan itself. */
export interface Surroundings {
  readonly index: CoachIndex;
  readonly demand: Demand;
  readonly positions: ReadonlyMap<ModuleId, Position>;
  /** The cheapest plan on the front that meets a wish. */
  cheapestFor(wish: ValuedWish): Chosen | undefined;
  /** Plans that only the budget or the minutes keep off the front, cheapest first. */
  readonly beyond: readonly Chosen[];
  /** `module option` of each option that the check took out. */
  readonly cut: ReadonlySet<string>;
  /** What was already found out, by option and load. */
  readonly memory: Map<Option, Map<string, readonly Obstacle[]>>;
}

const isMet = (wish: ValuedWish, chosen: Chosen): boolean =>
  wish.wish === "must-stay-steady" ? !chosen.unsteady.has(wish.load) : chosen.dims.has(wish.load);

function remembered(
  memory: Surroundings["memory"],
  option: Option,
  key: string,
  find: () => readonly Obstacle[],
): readonly Obstacle[] {
  let mine = memory.get(option);
  if (mine === undefined) {
    mine = new Map();
    memory.set(option, mine);
  }
  let found = mine.get(key);
  if (found === undefined) {
    found = find();
    mine.set(key, found);
  }
  return found;
}

const distinct = (obstacles: readonly Obstacle[]): Obstacle[] => {
  const seen = new Set<string>();
  return obstacles.filter((obstacle) => {
    const key = JSON.stringify(obstacle);
    return seen.has(key) ? false : Boolean(seen.add(key));
  });
};

/** What keeps this load from dimming with the option this plan has chosen for its module. */
function obstaclesHere(position: Position, option: Option, load: Load, channel: number): Obstacle[] {
  const { kind, module } = option;
  if (module.isDead === true && !option.isReplaced) return [];
  if (kind === undefined) return [{ code: "kind-unknown", parameters: { module: module.id } }];
  const checks = position.blocksOf(kind).filter((check) => check.block.channels.includes(channel));
  const at = { module: module.id, kind: kind.id, kindName: kind.name, load: load.id, channel };
  if ((kind.dimBlocks ?? []).length === 0) return [{ code: "kind-cannot-dim", parameters: at }];
  if (checks.length === 0) return [{ code: "channel-not-in-block", parameters: at }];
  if (!option.isTouched && option.enabledBefore === undefined) return [{ code: "setting-not-known", parameters: at }];
  return checks.flatMap((check) => check.obstacles);
}

/** What keeps this load from dimming whatever is fitted: one list for each other kind that could dim its channel. */
function obstaclesElsewhere(around: Surroundings, position: Position, load: Load, channel: number): Obstacle[] {
  const obstacles: Obstacle[] = [];
  for (const candidate of position.candidates) {
    const checks = position.blocksOf(candidate.kind).filter((check) => check.block.channels.includes(channel));
    if (checks.length === 0) continue;
    const ready = position.options.filter(
      (option) => option.kind?.id === candidate.kind.id && option.isReplaced && option.dims.includes(load.id),
    );
    if (ready.length > 0) {
      if (ready.every((option) => around.cut.has(optionKey(option))))
        obstacles.push({
          code: "cut-by-check",
          parameters: { module: position.module.id, kind: candidate.kind.id, kindName: candidate.kind.name },
        });
      continue;
    }
    const stops = [...candidate.obstacles, ...checks.flatMap((check) => check.obstacles)];
    obstacles.push(
      ...(stops.length > 0
        ? stops
        : [
            {
              code: "setting-not-listed" as const,
              parameters: { kind: candidate.kind.id, kindName: candidate.kind.name, channel, load: load.id },
            },
          ]),
    );
  }
  return obstacles;
}

function dearer(around: Surroundings, wish: ValuedWish, here: Chosen): Obstacle[] {
  const other = around.cheapestFor(wish);
  if (other === undefined) return [];
  return [
    {
      code: "dearer-than-chosen",
      parameters: {
        load: wish.load,
        plan: other.plan.id,
        moreCents: other.plan.costCents - here.plan.costCents,
        moreModules: other.plan.modulesTouched - here.plan.modulesTouched,
      },
    },
  ];
}

function beyondLimits(around: Surroundings, wish: ValuedWish): Obstacle[] {
  const other = around.beyond.find((chosen) => isMet(wish, chosen));
  if (other === undefined) return [];
  const { budgetCents, maxMinutes } = around.demand;
  const isOverBudget = budgetCents !== undefined && other.plan.costCents > budgetCents;
  return [
    isOverBudget
      ? {
          code: "over-budget",
          parameters: { load: wish.load, costCents: other.plan.costCents, budgetCents },
        }
      : {
          code: "over-minutes",
          parameters: { load: wish.load, minutes: other.plan.minutes, maxMinutes: maxMinutes ?? 0 },
        },
  ];
}

function stoppedBy(around: Surroundings, wish: ValuedWish, here: Chosen): Obstacle[] {
  const { index, demand } = around;
  const load = index.loads.get(wish.load);
  if (load === undefined) return [];
  const circuit = index.circuitOfLoad.get(load.id);
  const position = circuit?.module === undefined ? undefined : around.positions.get(circuit.module);
  const option = position === undefined ? undefined : here.options.get(position.module.id);
  const parameters = { load: load.id, name: load.name };
  if (wish.wish === "must-stay-steady") {
    const isRead = (option?.spoiled ?? []).includes(load.id);
    return [
      {
        code: isRead ? "load-left-spoiled" : "setting-not-known",
        parameters: { ...parameters, module: option?.module.id ?? "" },
      },
      ...(position?.isLocked ? [{ code: "module-locked" as const, parameters: { module: position.module.id } }] : []),
      ...dearer(around, wish, here),
      ...beyondLimits(around, wish),
    ];
  }
  const own = loadObstacle(demand, load);
  if (own !== undefined) return [own];
  if (circuit === undefined || position === undefined || option === undefined || circuit.channel === undefined)
    return [{ code: "not-on-module", parameters: { ...parameters, circuit: circuit?.id ?? "" } }];
  const { channel } = circuit;
  const onFront = dearer(around, wish, here);
  if (onFront.length > 0)
    return [
      ...remembered(around.memory, option, load.id, () => distinct(obstaclesHere(position, option, load, channel))),
      ...onFront,
    ];
  return [
    ...remembered(around.memory, option, `anywhere ${load.id}`, () =>
      distinct([
        ...(position.isLocked ? [{ code: "module-locked" as const, parameters: { module: position.module.id } }] : []),
        ...obstaclesHere(position, option, load, channel),
        ...obstaclesElsewhere(around, position, load, channel),
      ]),
    ),
    ...beyondLimits(around, wish),
  ];
}

/** Everything the explanations of one front share. `front` and `beyond` are cheapest first. */
export function surroundingsOf(
  index: CoachIndex,
  demand: Demand,
  positions: readonly Position[],
  front: readonly Chosen[],
  beyond: readonly Chosen[],
  cut: ReadonlySet<string>,
): Surroundings {
  const cheapest = new Map<LoadId, Chosen | undefined>();
  return {
    index,
    demand,
    positions: new Map(positions.map((position) => [position.module.id, position])),
    cheapestFor(wish) {
      if (!cheapest.has(wish.load))
        cheapest.set(
          wish.load,
          front.find((chosen) => isMet(wish, chosen)),
        );
      return cheapest.get(wish.load);
    },
    beyond,
    cut,
    memory: new Map(),
  };
}

/** The plan with every wish it does not meet and what stops each. */
export function explain(around: Surroundings, here: Chosen): Plan {
  const unmet: UnmetWish[] = [];
  let mustsLeft = 0;
  for (const wish of around.demand.wishes.values()) {
    if (isMet(wish, here)) continue;
    if (wish.wish !== "nice-to-dim") mustsLeft++;
    unmet.push({ load: wish.load, stoppedBy: stoppedBy(around, wish, here) });
  }
  return { ...here.plan, unmet, mustsLeft };
}
