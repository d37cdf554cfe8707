import { checkRecord } from "../findings/index.js";
import { type CoachIndex, indexRecord, type Job, policyOf } from "../record/index.js";
import {
  addUnbeaten,
  culpritsOf,
  type Element,
  elementKey,
  frontOfProblem,
  type ProblemFront,
  withoutElements,
} from "./chain/index.js";
import { demandOf } from "./demand.js";
import { frontOf } from "./front.js";
import type { MilpSolver, StopSignal } from "./milp/index.js";
import { type Choice, movesProblemOf, planOfChoice, problemFaults, type RecordProblem } from "./moves/index.js";
import { picksOf } from "./picks.js";
import type { Cut, Front, Plan } from "./plan.js";
import { type RecordCheck, type Sieve, sieveOf } from "./sift.js";

export interface PlanFrontProgress {
  /** Unbeaten so far, not all of them checked. */
  readonly found: number;
  /** Parts of the field in which more may lie; 0 when the search is done. */
  readonly open: number;
  readonly checked: number;
  readonly cuts: number;
}

export interface PlanFrontChoices {
  /** Needed where stock, minutes, feeders or reach join modules otherwise than in a row; asked for single hard questions elsewhere. */
  readonly solver?: MilpSolver | undefined;
  /** Each plan as it is offered: checked, picks first. Later ones may beat it. */
  readonly onPlan?: ((plan: Plan) => void) | undefined;
  readonly onProgress?: ((progress: PlanFrontProgress) => void) | undefined;
  readonly signal?: StopSignal | undefined;
  /** Checks the record as each plan would leave it; `findings`' own check where absent, none where null. */
  readonly check?: RecordCheck | null | undefined;
  /** Most records to check. */
  readonly mostChecks?: number | undefined;
  /** Awaited between turns, so that a stop can be heard and a screen drawn. */
  readonly breathe?: (() => Promise<void>) | undefined;
}

const ownCheck: RecordCheck = (record) => checkRecord(indexRecord(record), { atLeast: "mend" });
const MOST_CHECKS = 150;
/** Checks that the search itself may spend on plans that stand out before it is done. */
const EARLY_CHECKS = 6;
/** Parts into which cut combinations may split the search. */
const MOST_REGIONS = 16;

interface Offered {
  readonly plan: Plan;
  readonly choice: Choice;
  readonly cost: number;
  readonly value: number;
  readonly wires: number;
}

/** Parts that a plan frees and that some other module could take. */
const mayReuse = (problem: RecordProblem): boolean =>
  problem.modules.some(({ patterns }) =>
    patterns.some(
      ({ frees }) =>
        frees !== undefined && problem.modules.some((other) => other.patterns.some(({ part }) => part === frees)),
    ),
  );

class FrontSearch {
  readonly problem: RecordProblem;
  readonly cuts: Cut[] = [];
  readonly sieve: Sieve | undefined;
  private readonly plans = new Map<string, Offered>();
  private readonly told = new Set<string>();
  private readonly fronts = new Map<string, ProblemFront>();
  /** Decisions taken out of each part of the search. */
  regions: (readonly Element[])[] = [[]];
  hasMusts: boolean;
  private found = 0;
  private open = 0;

  constructor(
    problem: RecordProblem,
    private readonly choices: PlanFrontChoices,
  ) {
    this.problem = problem;
    const { index, demand } = problem.source.basis;
    const check = choices.check === undefined ? ownCheck : choices.check;
    this.sieve = check === null ? undefined : sieveOf(index, check, choices.mostChecks ?? MOST_CHECKS);
    this.hasMusts = [...demand.wishes.values()].some((wish) => wish.wish !== "nice-to-dim");
  }

  offer(choice: Choice): Offered {
    const key = `${choice.patterns.join(" ")};${choice.placings.join(" ")}`;
    let offered = this.plans.get(key);
    if (offered === undefined) {
      const plan = planOfChoice(this.problem, choice);
      offered = { plan, choice, cost: plan.costCents, value: plan.wishValue, wires: plan.wiresMoved };
      this.plans.set(key, offered);
    }
    return offered;
  }

  /** Undefined: there are no checks left to ask. */
  fails(plan: Plan): boolean | undefined {
    const { sieve } = this;
    if (sieve === undefined || sieve.isCleared(plan)) return false;
    if (sieve.hasFailed(plan)) return true;
    return sieve.asksLeft() <= 0 ? undefined : sieve.newFindings(plan).length > 0;
  }

  tell(plan: Plan): void {
    if (this.told.has(plan.id)) return;
    this.told.add(plan.id);
    this.choices.onPlan?.(plan);
  }

  report(): void {
    this.choices.onProgress?.({
      found: this.found,
      open: this.open,
      checked: this.told.size,
      cuts: this.cuts.length,
    });
  }

  get isStopped(): boolean {
    return this.choices.signal?.aborted === true;
  }

  private async frontOfRegion(removed: readonly Element[]): Promise<ProblemFront> {
    const key = removed.map(elementKey).sort().join(" ");
    const known = this.fronts.get(key);
    if (known !== undefined) return known;
    const reduced = withoutElements(this.problem, removed);
    let early = this.told.size === 0 ? EARLY_CHECKS : 0;
    const inWhole = (front: Pick<ProblemFront, "points">) =>
      front.points.map((point) => ({ ...point, choice: reduced.inWhole(point.choice) }));
    let latest: ProblemFront["points"] = [];
    const front = await frontOfProblem(reduced.problem, {
      solver: this.choices.solver,
      signal: this.choices.signal,
      onProgress: ({ points, open, areEndsKnown }) => {
        latest = areEndsKnown ? points : points.slice(0, 1);
        this.found = points.length;
        this.open = open;
        this.report();
      },
      breathe: async () => {
        // What stands out already is checked and shown while the rest is sought.
        const [cheapest, worthiest] = [latest[0], latest.at(-1)];
        for (const point of [cheapest, worthiest]) {
          if (point === undefined || early <= 0) continue;
          const { plan } = this.offer(reduced.inWhole(point.choice));
          if (this.told.has(plan.id)) continue;
          early--;
          if (this.fails(plan) === false) this.tell(plan);
        }
        await this.choices.breathe?.();
      },
    });
    const whole: ProblemFront = { ...front, points: inWhole(front) };
    this.fronts.set(key, whole);
    return whole;
  }

  /** The unbeaten plans of all parts together, cheapest first, on the money as it is shown. */
  async merged(): Promise<{ readonly offered: readonly Offered[]; readonly isComplete: boolean }> {
    let offered: Offered[] = [];
    let isComplete = true;
    for (const region of this.regions) {
      const front = await this.frontOfRegion(region);
      isComplete &&= front.isComplete;
      for (const point of front.points) offered = addUnbeaten(offered, this.offer(point.choice)) ?? offered;
    }
    offered.sort((a, b) => a.cost - b.cost || b.value - a.value || a.wires - b.wires);
    return { offered, isComplete };
  }

  /** Takes what makes this plan fail out of the search. False where that cannot be, or would split it into too many parts. */
  cut(failing: Offered): boolean {
    const culprits = culpritsOf(this.problem, failing.choice, (choice) => this.fails(this.offer(choice).plan));
    const { index } = this.problem.source.basis;
    let regions = this.regions;
    for (const elements of culprits) {
      // Any plan without all of these lacks at least one of them.
      regions = regions.flatMap((region) =>
        region.some((gone) => elements.some((each) => elementKey(each) === elementKey(gone)))
          ? [region]
          : elements.map((element) => [...region, element]),
      );
      const plan = this.sieve?.newFindings(failing.plan) ?? [];
      const modules = elements.flatMap((element) => {
        const id =
          element.kind === "pattern"
            ? this.problem.modules[element.module]?.module
            : index.circuits.get(this.problem.circuits[element.circuit]?.circuit ?? ("" as never))?.module;
        return id === undefined ? [] : [id];
      });
      this.cuts.push({
        plan: failing.plan.id,
        modules: [...new Set(modules)],
        findings: plan.map(({ code, subject, severity }) => ({ code, subject: subject.id, severity })),
      });
    }
    const isLittle = culprits.length > 0 && regions.length <= MOST_REGIONS;
    if (isLittle) this.regions = regions;
    return isLittle;
  }
}

/** Picks first, then the rest, cheapest first. */
function inOrderOfChecking(offered: readonly Offered[], hasMusts: boolean): Offered[] {
  const picks = new Set(
    picksOf(
      offered.map((each) => each.plan),
      hasMusts,
    ).map((pick) => pick.plan),
  );
  return [...offered.filter((each) => picks.has(each.plan.id)), ...offered.filter((each) => !picks.has(each.plan.id))];
}

/**
 * Which plans are worth choosing from, with circuits that may move? Exact over cost (whole cents, tax not in it), wish value and wires moved, where `isComplete`. Every plan is applied to
 * the record and the record checked before it is offered, picks first; what makes a new `stop` or `mend` is taken out and the search goes on, `cuts` lists
 * it. Where nothing may move it is `frontOf`. Stopped, or out of checks, it gives the best so far and says that it is not complete.
 */
export async function planFront(index: CoachIndex, job?: Job, choices: PlanFrontChoices = {}): Promise<Front> {
  const demand = demandOf(index, job);
  // Where plans are checked a beaten setting may come back: the one that beats it may be taken out.
  const problem = movesProblemOf(index, policyOf(index.record), demand, { dominated: choices.check !== null });
  if (problem.circuits.length === 0 && !mayReuse(problem)) {
    const front = frontOf(index, job, {
      ...(choices.check === undefined ? {} : { check: choices.check }),
      ...(choices.mostChecks === undefined ? {} : { mostChecks: choices.mostChecks }),
    });
    for (const plan of front.plans) choices.onPlan?.(plan);
    return front;
  }
  const search = new FrontSearch(problem, choices);
  for (;;) {
    const { offered, isComplete } = await search.merged();
    const unchecked: Plan[] = [];
    const passing: Plan[] = [];
    let failing: Offered | undefined;
    for (const each of inOrderOfChecking(offered, search.hasMusts)) {
      const fails =
        search.isStopped && search.sieve?.isCleared(each.plan) !== true ? undefined : search.fails(each.plan);
      if (fails === true) {
        failing = each;
        break;
      }
      if (fails === undefined) unchecked.push(each.plan);
      else search.tell(each.plan);
      passing.push(each.plan);
      search.report();
      await choices.breathe?.();
    }
    if (failing !== undefined && !search.isStopped && search.cut(failing)) continue;
    const failed = (plan: Plan): boolean => search.sieve?.hasFailed(plan) === true;
    const plans = offered.map((each) => each.plan).filter((plan) => !failed(plan));
    return {
      plans,
      picks: picksOf(plans, search.hasMusts),
      mustFactor: demand.mustFactor,
      cuts: search.cuts,
      unchecked: plans
        .filter((plan) => unchecked.includes(plan) || (failing !== undefined && !passing.includes(plan)))
        .map((plan) => plan.id),
      isComplete: isComplete && failing === undefined && unchecked.length === 0 && !search.isStopped,
      faults: problemFaults(problem, job),
    };
  }
}
