import { checkRecord } from "../findings/index.js";
import { type CoachIndex, indexRecord, type Job, type LoadId, policyOf } from "../record/index.js";
import { type Demand, demandOf } from "./demand.js";
import { demandFaults } from "./demand-faults.js";
import { type Chosen, explain, surroundingsOf } from "./explain.js";
import { type ChoiceMemory, makePlan } from "./make-plan.js";
import { type Made, type Money, mergePositions, moneyOf, optionsIn } from "./merge.js";
import { type Option, positionOf } from "./option.js";
import { picksOf } from "./picks.js";
import type { Front, Plan } from "./plan.js";
import { cutPlan, type RecordCheck, type Region, type Sieve, sieveOf } from "./sift.js";
import type { Partial } from "./undominated.js";
import { undominated } from "./undominated.js";

export interface FrontChoices {
  /** Checks the record as each plan would leave it; `findings`' own check where absent, none where null. */
  readonly check?: RecordCheck | null;
  /** Most records to check before the search stops, unfinished and saying so. */
  readonly mostChecks?: number;
}

/** Only a new `stop` or `mend` takes a plan out, so milder rules are not asked. */
const ownCheck: RecordCheck = (record) => checkRecord(indexRecord(record), { atLeast: "mend" });
/** A check of a coach of sixty circuits takes tens of milliseconds. */
const MOST_CHECKS = 150;
const MOST_REGIONS = 64;

interface Search {
  readonly index: CoachIndex;
  readonly demand: Demand;
  readonly money: Money;
  readonly chosenOf: (made: Made) => Chosen;
}

const inLimits = (demand: Demand, plan: { costCents: number; minutes: number }): boolean =>
  (demand.budgetCents === undefined || plan.costCents <= demand.budgetCents) &&
  (demand.maxMinutes === undefined || plan.minutes <= demand.maxMinutes);

/** The front of several regions together, on the money as it is shown (whole cents). */
function frontOfRegions(search: Search, regions: readonly Region[], isAllowed: (chosen: Chosen) => boolean) {
  const partials: Partial<{ chosen: Chosen; region: number }>[] = [];
  regions.forEach((region, at) => {
    for (const partial of mergePositions(search.index, region, search.money)) {
      const chosen = search.chosenOf(partial.made);
      if (isAllowed(chosen))
        partials.push({ ...partial, cost: chosen.plan.costCents, stock: [], made: { chosen, region: at } });
    }
  });
  return undominated(partials, { minutesCount: false, priceOfStocked: [] }).map((partial) => partial.made);
}

function sift(
  search: Search,
  sieve: Sieve,
  start: Region,
): { chosen: Chosen[]; unchecked: string[]; isComplete: boolean } {
  let regions: Region[] = [start];
  const allowed = (chosen: Chosen): boolean => inLimits(search.demand, chosen.plan);
  const alone = (option: Option): Plan => search.chosenOf({ kind: "option", option }).plan as Plan;
  for (;;) {
    const front = frontOfRegions(search, regions, allowed);
    const isSpent = (): boolean => sieve.asksLeft() <= 0 || regions.length > MOST_REGIONS;
    const failing = front.find(({ chosen }) => !isSpent() && sieve.newFindings(chosen.plan as Plan).length > 0);
    if (isSpent()) {
      const passing = front.filter(({ chosen }) => !sieve.hasFailed(chosen.plan as Plan)).map(({ chosen }) => chosen);
      const unchecked = passing.filter((chosen) => !sieve.isCleared(chosen.plan as Plan)).map(({ plan }) => plan.id);
      return { chosen: passing, unchecked, isComplete: passing.length === front.length && unchecked.length === 0 };
    }
    if (failing === undefined) return { chosen: front.map(({ chosen }) => chosen), unchecked: [], isComplete: true };
    regions = cutPlan(sieve, regions, failing.region, failing.chosen, alone);
  }
}

/**
 * Which plans are worth choosing from? For a controller whose program is fixed: every load stays on its channel; each module is kept, its bank set anew, or another
 * kind fitted. Exact: no combination of choices beats a plan of the front on cost (whole cents, tax not in it), wish value and modules
 * touched at once, and none that is not beaten is missing. `job` gives wishes (they win over the loads' own), budget, minutes, locked modules and forbidden kinds.
 * A plan that would leave the record with a `stop` or `mend` finding it did not have is taken out and the next best takes its place; `cuts` lists them.
 */
export function frontOf(index: CoachIndex, job?: Job, choices: FrontChoices = {}): Front {
  const policy = policyOf(index.record);
  const demand = demandOf(index, job);
  const money = moneyOf(index, policy, demand.maxMinutes !== undefined);
  const positions = [...index.modules.values()].map((module, i) => positionOf(index, policy, demand, module, i));
  const known = new Map<Made, Chosen>();
  const memory: ChoiceMemory = new Map();
  const search: Search = {
    index,
    demand,
    money,
    chosenOf(made) {
      const before = known.get(made);
      if (before !== undefined) return before;
      const options = optionsIn(made);
      const unsteady = new Set<LoadId>();
      for (const option of options) {
        for (const load of option.spoiled) unsteady.add(load);
        for (const load of option.inDoubt) unsteady.add(load);
      }
      const plan = makePlan(index, money, options, memory);
      const chosen: Chosen = {
        plan,
        options: new Map(options.map((option) => [option.module.id, option])),
        dims: new Set(plan.dims),
        unsteady,
      };
      known.set(made, chosen);
      return chosen;
    },
  };
  const start: Region = positions.map((position) => ({ position, options: position.options }));
  const check = choices.check === undefined ? ownCheck : choices.check;
  const sieve = check === null ? undefined : sieveOf(index, check, choices.mostChecks ?? MOST_CHECKS);
  const { chosen, unchecked, isComplete } =
    sieve === undefined
      ? {
          chosen: frontOfRegions(search, [start], (each) => inLimits(demand, each.plan)).map((each) => each.chosen),
          unchecked: [] as string[],
          isComplete: true,
        }
      : sift(search, sieve, start);
  const hasLimits = demand.budgetCents !== undefined || demand.maxMinutes !== undefined;
  const beyond = hasLimits ? frontOfRegions(search, [start], () => true).map((each) => each.chosen) : [];
  const around = surroundingsOf(
    index,
    demand,
    positions,
    chosen,
    beyond.filter((each) => !inLimits(demand, each.plan)),
    sieve?.cutOptions ?? new Set<string>(),
  );
  const plans = chosen.map((each) => explain(around, each));
  const hasMusts = [...demand.wishes.values()].some((wish) => wish.wish !== "nice-to-dim");
  return {
    plans,
    picks: picksOf(plans, hasMusts),
    mustFactor: demand.mustFactor,
    cuts: sieve?.cuts ?? [],
    unchecked,
    isComplete,
    faults: [...demand.faults, ...demandFaults(index, demand, positions, plans, beyond, job)],
  };
}
