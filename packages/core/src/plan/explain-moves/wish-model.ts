import { suitabilityOf } from "../../dimming/index.js";
import { policyOf } from "../../record/index.js";
import { type ConflictGroup, type GroupedMilp, groupedByRows } from "../conflict/index.js";
import type { Demand, ValuedWish } from "../demand.js";
import type { BoundChange, MilpRow } from "../milp/index.js";
import { type MilpForm, type MovesProblem, milpOf, movesProblemOf, type RecordProblem } from "../moves/index.js";
import { type Asked, readAsked, type Supposing, supposing, withWish } from "./asked.js";
import type { ChoiceGroup, Forbids } from "./choice-groups.js";
import type { Near } from "./near.js";
import { type PlanGroup, planGroup } from "./plan-group.js";
import { wishRow } from "./wish-rows.js";

/** The problem with every choice lifted, and everything that was asked as groups of bounds on it: with all groups holding it is the problem as asked. */
export interface WishModel {
  readonly problem: RecordProblem;
  readonly form: MilpForm;
  readonly grouped: GroupedMilp;
  /** What each group of `grouped` is, by name. */
  readonly planGroups: ReadonlyMap<string, PlanGroup>;
  /** How the question reads without each group, by name; the wish asked about and rows of the model have none. */
  readonly lifts: ReadonlyMap<string, Supposing>;
}

/** The whole problem of a supposed question, patterns kept that would lose out in the sum of all wishes. */
export function problemAsked(asked: Asked): { readonly problem: RecordProblem; readonly demand: Demand } {
  const { index, demand } = readAsked(asked);
  return { demand, problem: movesProblemOf(index, policyOf(index.record), demand, { dominated: true }) };
}

/** `mayDim`: to give it up is to let the load dim; else, for a load to stay steady, to leave it on a block that is enabled. */
const wishGroup = (wish: ValuedWish, mayDim = false): PlanGroup =>
  planGroup("wish", "wish", wish.load, {
    load: wish.load,
    wish: wish.wish,
    value: wish.value,
    ...(mayDim ? { mayDim: 1 } : {}),
  });

/** A load kept steady by a wish alone, steady as found, no feed of its own in question and every bank read: the wish can be supposed away in the record. */
function steadyChoices(asked: Asked, near: Near, kept: readonly ValuedWish[], lifted: RecordProblem): ChoiceGroup[] {
  const { index } = readAsked(asked);
  const nearby = new Set(near.circuits.flatMap((circuit) => circuit.loads ?? []));
  const effects = [
    ...lifted.modules.flatMap((module) => module.patterns),
    ...lifted.circuits.flatMap((circuit) => circuit.placings),
  ];
  return kept.flatMap((wish): ChoiceGroup[] => {
    const load = index.loads.get(wish.load);
    if (wish.wish !== "must-stay-steady" || load === undefined || !nearby.has(wish.load)) return [];
    if (suitabilityOf(load).may !== "yes") return [];
    const isTold = (each: (typeof effects)[number]): boolean =>
      each.spoiled.includes(load.id) ||
      each.inDoubt.includes(load.id) ||
      ("steady" in each && each.steady.includes(load.id));
    if (effects.some(isTold)) return [];
    return [
      {
        group: wishGroup(wish, true),
        lift: withWish(load.id, "nice-to-dim", 0.001),
        forbids: {
          pattern: (_module, pattern) => pattern.dims.includes(load.id),
          placing: (_circuit, placing) => placing.dims.includes(load.id),
        },
      },
    ];
  });
}

const shut = (at: number): BoundChange => ({ at, lower: 0, upper: 0 });

function columnsForbidden(problem: MovesProblem, form: MilpForm, forbids: Forbids): BoundChange[] {
  const columns: BoundChange[] = [];
  problem.modules.forEach((module, m) => {
    module.patterns.forEach((pattern, p) => {
      if (forbids.pattern?.(module, pattern) === true) columns.push(shut(form.layout.pattern[m]?.[p] ?? -1));
    });
  });
  problem.circuits.forEach((circuit, c) => {
    circuit.placings.forEach((placing, j) => {
      if (forbids.placing?.(circuit, placing, problem.modules) === true)
        columns.push(shut(form.layout.placing[c]?.[j] ?? -1));
    });
  });
  return columns;
}

const keyOfPlacing = (problem: MovesProblem, placing: MovesProblem["circuits"][number]["placings"][number]): string =>
  JSON.stringify([
    placing.module === undefined ? "off" : problem.modules[placing.module]?.module,
    placing.isMoved,
    placing.isDimmed,
    placing.isRewired,
    placing.changesFuse,
    placing.takesDimmable,
    placing.takesSwitchable,
    placing.steady,
    placing.dims,
    placing.spoiled,
  ]);

/** What a choice takes away, seen by what is missing once it holds alone; undefined where nothing in this record can meet it, so that it does not count. */
function comparing(lifted: RecordProblem, alone: RecordProblem): Forbids | undefined {
  if (alone.faults.length > 0) return undefined;
  const patterns = new Map(
    alone.modules.map((module) => [module.module, new Set(module.patterns.map((pattern) => pattern.key))]),
  );
  const placings = new Map(
    alone.circuits.map((circuit) => [
      circuit.circuit,
      new Set(circuit.placings.map((placing) => keyOfPlacing(alone, placing))),
    ]),
  );
  return {
    pattern: (module, pattern) => patterns.get(module.module)?.has(pattern.key) !== true,
    placing: (circuit, placing) =>
      placings.has(circuit.circuit)
        ? placings.get(circuit.circuit)?.has(keyOfPlacing(lifted, placing)) !== true
        : placing.wiresMoved > 0,
  };
}

/**
 * One model for all questions about why a wish is not met: `wish` forced, `kept` the other wishes that are to stay met. The groups, in this order: the wish, limits,
 * choices, the other wishes.
 */
export function wishModelOf(
  asked: Asked,
  near: Near,
  choices: readonly ChoiceGroup[],
  wish: ValuedWish,
  kept: readonly ValuedWish[],
): WishModel {
  const lifts = choices.map((choice) => choice.lift);
  const first = problemAsked(supposing(asked, lifts)).problem;
  const steady = steadyChoices(asked, near, kept, first);
  const { problem } =
    steady.length === 0
      ? { problem: first }
      : problemAsked(supposing(asked, [...lifts, ...steady.map((each) => each.lift)]));
  const form = milpOf(problem);
  const planGroups = new Map<string, PlanGroup>();
  const groupLifts = new Map<string, Supposing>();
  const made: ConflictGroup[] = [];
  const add = (group: PlanGroup, lift: Supposing | undefined, bounds: Partial<ConflictGroup>): void => {
    planGroups.set(group.name, group);
    if (lift !== undefined) groupLifts.set(group.name, lift);
    made.push({ name: group.name, nature: group.nature, rows: [], columns: [], ...bounds });
  };
  const rows: MilpRow[] = [...form.milp.rows];
  const wishBounds = (each: ValuedWish): Partial<ConflictGroup> => {
    const row = wishRow(problem, form, each);
    rows.push({ ...row, lower: Number.NEGATIVE_INFINITY, upper: Number.POSITIVE_INFINITY });
    return { rows: [{ at: rows.length - 1, lower: row.lower, upper: row.upper }] };
  };
  add(wishGroup(wish), undefined, wishBounds(wish));
  const limits = groupedByRows(form.milp, (group) =>
    group === "budget" || group === "minutes" ? "choice" : undefined,
  );
  limits.milp.rows.forEach((row, at) => {
    rows[at] = row;
  });
  const { demand } = readAsked(asked);
  const unheard = new Set(problemAsked(asked).problem.faults.map((fault) => fault.path));
  for (const limit of limits.groups) {
    const isBudget = limit.name === "budget";
    add(
      planGroup("choice", isBudget ? "budget" : "minutes", "", {
        ...(isBudget ? { budgetCents: demand.budgetCents ?? 0 } : { maxMinutes: demand.maxMinutes ?? 0 }),
      }),
      undefined,
      limit,
    );
  }
  for (const choice of choices) {
    let { forbids } = choice;
    if (forbids === "compare") {
      const others = choices.filter((each) => each !== choice).map((each) => each.lift);
      const alone = problemAsked(supposing(asked, others)).problem;
      const seen = comparing(problem, alone);
      if (seen === undefined || unheard.has(String(choice.group.parameters.path))) continue;
      forbids = seen;
    }
    add(choice.group, choice.lift, { columns: columnsForbidden(problem, form, forbids) });
  }
  for (const each of kept) {
    if (each.load === wish.load) continue;
    const supposed = steady.find((choice) => choice.group.parameters.load === each.load);
    if (supposed === undefined) add(wishGroup(each), undefined, wishBounds(each));
    else
      add(supposed.group, supposed.lift, {
        columns: columnsForbidden(problem, form, supposed.forbids as Forbids),
      });
  }
  return {
    problem,
    form,
    grouped: { milp: { ...form.milp, rows }, groups: made },
    planGroups,
    lifts: groupLifts,
  };
}
