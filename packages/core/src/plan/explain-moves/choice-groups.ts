import type { CoachIndex, FixedChoice } from "../../record/index.js";
import type { Demand } from "../demand.js";
import {
  type MoveCircuit,
  type MoveModule,
  type MovePattern,
  mayBeLive,
  type Placing,
  staysBecause,
} from "../moves/index.js";
import {
  type Asked,
  readAsked,
  type Supposing,
  supposing,
  withCircuit,
  withLimits,
  withLoad,
  withModule,
} from "./asked.js";
import type { Near } from "./near.js";
import { type PlanGroup, planGroup } from "./plan-group.js";

/** What a choice takes out of the problem with all choices lifted. */
export interface Forbids {
  pattern?(module: MoveModule, pattern: MovePattern): boolean;
  placing?(circuit: MoveCircuit, placing: Placing, modules: readonly MoveModule[]): boolean;
}

/** Something somebody chose or could find out, and how the question reads without it. */
export interface ChoiceGroup {
  readonly group: PlanGroup;
  readonly lift: Supposing;
  /** `compare`: seen by comparing the problem with and without it. */
  readonly forbids: Forbids | "compare";
}

const without = <Item>(items: readonly Item[] | undefined, left: (item: Item) => boolean): Item[] =>
  (items ?? []).filter((item) => !left(item));

const sameChoice = (a: FixedChoice, b: FixedChoice): boolean => JSON.stringify(a) === JSON.stringify(b);

const moduleLocks = (index: CoachIndex, demand: Demand): ChoiceGroup[] =>
  [...index.modules.values()]
    // A dead module that is locked stays: without the lock it would have to go, which is another question.
    .filter((module) => (module.isLocked === true || demand.locked.has(module.id)) && module.isDead !== true)
    .map((module) => ({
      group: planGroup("choice", "module-locked", module.id, { module: module.id }),
      lift: (asked) =>
        withLimits((limits) => ({ lockedModules: without(limits.lockedModules, (id) => id === module.id) }))(
          withModule(module.id, (each) => ({ ...each, isLocked: false }))(asked),
        ),
      forbids: {
        pattern: (at, pattern) => at.module === module.id && pattern.isTouched,
        placing: (circuit, placing, modules) =>
          placing.wiresMoved > 0 &&
          (modules[circuit.home]?.module === module.id ||
            (placing.module !== undefined && modules[placing.module]?.module === module.id)),
      },
    }));

const kindsRuledOut = (demand: Demand): ChoiceGroup[] =>
  [...demand.forbidden].map((kind) => ({
    group: planGroup("choice", "kind-ruled-out", kind, { kind }),
    lift: withLimits((limits) => ({ forbiddenKinds: without(limits.forbiddenKinds, (id) => id === kind) })),
    forbids: { pattern: (_module, pattern) => pattern.isReplaced && pattern.kind === kind },
  }));

const MEANS: Readonly<Record<string, (placing: Placing) => boolean>> = {
  moves: (placing) => placing.isMoved,
  "steady-feeds": (placing) => placing.steady.length > 0,
  rewires: (placing) => placing.isRewired,
};

const meansRuledOut = (demand: Demand): ChoiceGroup[] =>
  [...demand.ruledOut].flatMap((means): ChoiceGroup[] => {
    const isUsed = MEANS[means];
    // What a freed module is worth stands in the prices; that is not lifted.
    if (isUsed === undefined) return [];
    return [
      {
        group: planGroup("choice", "means-ruled-out", means, { means }),
        lift: withLimits((limits) => ({ rulesOut: without(limits.rulesOut, (each) => each === means) })),
        forbids: { placing: (_circuit, placing) => isUsed(placing) },
      },
    ];
  });

const choicesMade = (demand: Demand): ChoiceGroup[] =>
  demand.fixedChoices.map(({ choice, path }) => ({
    group: planGroup("choice", "choice-made", path, {
      path,
      module: choice.module ?? "",
      kind: choice.kind ?? "",
      circuit: choice.circuit ?? "",
      toModule: choice.toModule ?? "",
      isForbidden: choice.isForbidden === true ? 1 : 0,
    }),
    lift: withLimits((limits) => ({ fixedChoices: without(limits.fixedChoices, (each) => sameChoice(each, choice)) })),
    forbids: "compare",
  }));

const circuitsLocked = (index: CoachIndex, demand: Demand): ChoiceGroup[] =>
  [...demand.lockedCircuits].map((id) => ({
    group: planGroup("choice", "circuit-locked", id, { circuit: id }),
    lift: withLimits((limits) => ({
      lockedCircuits: without(limits.lockedCircuits, (each) => each === id),
      lockedLoads: without(limits.lockedLoads, (each) => index.circuitOfLoad.get(each)?.id === id),
    })),
    forbids: { placing: (circuit, placing) => circuit.circuit === id && placing.wiresMoved > 0 },
  }));

/** Circuits near the load that nobody has said may move, and that nothing else than the saying keeps from it. */
function movesNotSaid(lifted: Asked, near: Near): ChoiceGroup[] {
  const silent = near.circuits.filter((circuit) => circuit.canMove === undefined);
  const said = silent.map((circuit) => withCircuit(circuit.id, (each) => ({ ...each, canMove: true })));
  const { index, demand } = readAsked(supposing(lifted, said));
  return silent.flatMap(({ id }, i): ChoiceGroup[] => {
    const circuit = index.circuits.get(id);
    const lift = said[i];
    if (circuit === undefined || lift === undefined || staysBecause(index, demand, circuit) !== undefined) return [];
    return [
      {
        group: planGroup("choice", "move-not-said", id, { circuit: id }),
        lift,
        forbids: { placing: (each, placing) => each.circuit === id && placing.isMoved },
      },
    ];
  });
}

/** Loads near it that would do no harm live all the time had they a switch of their own, and nobody has said whether they have. */
const feedsNotSaid = (index: CoachIndex, near: Near): ChoiceGroup[] =>
  near.circuits
    .flatMap((circuit) => (circuit.loads ?? []).flatMap((id) => index.loads.get(id) ?? []))
    .filter(
      (load) =>
        load.maySteadyFeed === undefined &&
        load.hasOwnSwitch === undefined &&
        !mayBeLive(load) &&
        mayBeLive({ ...load, hasOwnSwitch: true }),
    )
    .map((load) => ({
      group: planGroup("choice", "feed-not-said", load.id, { load: load.id }),
      lift: withLoad(load.id, (each) => ({ ...each, maySteadyFeed: true })),
      forbids: { placing: (_circuit, placing) => placing.steady.includes(load.id) },
    }));

/**
 * All choices that could be made otherwise: locks, kinds and means ruled out, choices made beforehand, circuits near the load that
 * nobody has said may move, and loads that nobody has said may be fed apart.
 * Budget, minutes and wishes are rows of the model and not among them.
 */
export function choiceGroupsOf(asked: Asked, near: Near): ChoiceGroup[] {
  const { index, demand } = readAsked(asked);
  const made = [
    ...moduleLocks(index, demand),
    ...kindsRuledOut(demand),
    ...meansRuledOut(demand),
    ...choicesMade(demand),
    ...circuitsLocked(index, demand),
    ...feedsNotSaid(index, near),
  ];
  const lifted = supposing(
    asked,
    made.map((each) => each.lift),
  );
  return [...made, ...movesNotSaid(lifted, near)];
}
