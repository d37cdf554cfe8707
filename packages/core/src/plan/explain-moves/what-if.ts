import { type CoachIndex, type FixedChoice, type Job, type PlanMeans, policyOf } from "../../record/index.js";
import type { StopRule } from "../conflict/index.js";
import { type Demand, demandOf } from "../demand.js";
import type { BoundChange, MilpSolver } from "../milp/index.js";
import {
  type Choice,
  type MilpForm,
  type MoveCircuit,
  type MoveModule,
  type MovePattern,
  milpOf,
  movesProblemOf,
  type Objective,
  type Placing,
  type RecordProblem,
  type Score,
  scoreOf,
} from "../moves/index.js";
import type { PlanFault } from "../plan.js";

/** What is tried out: held as it is, given another place, or ruled out. The same words as the constraints of a job. */
export type Trial = Pick<
  NonNullable<Job["constraints"]>,
  "budget" | "maxMinutes" | "lockedModules" | "lockedCircuits" | "lockedLoads" | "forbiddenKinds" | "fixedChoices"
> & {
  /** Fitting again what was taken out stands in the prices: to rule that out, ask anew. */
  readonly rulesOut?: readonly Exclude<PlanMeans, "reuse">[];
};

export interface WhatIfQuestion extends StopRule {
  readonly trial: Trial;
  /** What to look for; the most wish value where absent, and of that the least cost. */
  readonly objective?: Objective;
}

/** `infeasible`: nothing keeps to the trial. `stopped`: the best so far, where there is one. */
export interface WhatIfAnswer {
  readonly status: "optimal" | "infeasible" | "stopped";
  readonly choice?: Choice;
  readonly score?: Score;
  /** What of the trial names nothing on record or contradicts itself, by path: it was left out. */
  readonly faults: readonly PlanFault[];
}

/** One problem held open: each question is solved on the model that stands, from the last answer where that still keeps to it. */
export interface WhatIf {
  readonly problem: RecordProblem;
  ask(question: WhatIfQuestion): Promise<WhatIfAnswer>;
  close(): void;
}

const sameBlocks = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((block) => b.includes(block));

const doesSo = (pattern: MovePattern, choice: FixedChoice): boolean =>
  (choice.kind === undefined || pattern.kind === choice.kind) &&
  (choice.enables === undefined || (!pattern.isFree && sameBlocks(pattern.enables, choice.enables)));

const sitsSo = (placing: Placing, choice: FixedChoice, modules: readonly MoveModule[]): boolean =>
  (choice.toModule === undefined ||
    (placing.module !== undefined && modules[placing.module]?.module === choice.toModule)) &&
  (choice.isDimmed === undefined || placing.isDimmed === choice.isDimmed);

function patternShut(module: MoveModule, pattern: MovePattern, trial: Demand): boolean {
  if (trial.locked.has(module.module) && pattern.isTouched) return true;
  if (pattern.isReplaced && pattern.kind !== undefined && trial.forbidden.has(pattern.kind)) return true;
  return trial.fixedChoices.some(
    ({ choice }) => choice.module === module.module && doesSo(pattern, choice) === (choice.isForbidden === true),
  );
}

function placingShut(circuit: MoveCircuit, placing: Placing, modules: readonly MoveModule[], trial: Demand): boolean {
  const isWork = placing.wiresMoved > 0;
  const at = [circuit.home, ...(placing.module === undefined ? [] : [placing.module])];
  if (isWork && at.some((m) => trial.locked.has(modules[m]?.module ?? ("" as MoveModule["module"])))) return true;
  if (isWork && trial.lockedCircuits.has(circuit.circuit)) return true;
  if (placing.isMoved && trial.ruledOut.has("moves")) return true;
  if (placing.steady.length > 0 && trial.ruledOut.has("steady-feeds")) return true;
  if (placing.isRewired && trial.ruledOut.has("rewires")) return true;
  return trial.fixedChoices.some(
    ({ choice }) =>
      choice.circuit === circuit.circuit && sitsSo(placing, choice, modules) === (choice.isForbidden === true),
  );
}

function shutBy(problem: RecordProblem, form: MilpForm, trial: Demand): BoundChange[] {
  const shut: BoundChange[] = [];
  const close = (at: number | undefined): void => {
    if (at !== undefined) shut.push({ at, lower: 0, upper: 0 });
  };
  problem.modules.forEach((module, m) => {
    module.patterns.forEach((pattern, p) => {
      if (patternShut(module, pattern, trial)) close(form.layout.pattern[m]?.[p]);
    });
  });
  problem.circuits.forEach((circuit, c) => {
    circuit.placings.forEach((placing, j) => {
      if (placingShut(circuit, placing, problem.modules, trial)) close(form.layout.placing[c]?.[j]);
    });
  });
  return shut;
}

/**
 * Opens the job's problem for trying things out: lock or forbid a module, a circuit, a kind, a means, a load's circuit, set a budget or a limit on minutes, and solve
 * again on the same model. A trial can only take away from what the job allows; to give more, ask anew.
 */
export async function openWhatIf(index: CoachIndex, job: Job | undefined, solver: MilpSolver): Promise<WhatIf> {
  const demand = demandOf(index, job);
  // Patterns that another stands in for count as soon as that other is ruled out.
  const problem = movesProblemOf(index, policyOf(index.record), demand, { dominated: true });
  const form = milpOf(problem);
  const minutesRow = form.milp.rows.length;
  const session = await solver.open({
    ...form.milp,
    rows: [
      ...form.milp.rows,
      {
        name: "minutes tried",
        lower: Number.NEGATIVE_INFINITY,
        upper: Number.POSITIVE_INFINITY,
        terms: minuteTerms(problem, form),
      },
    ],
  });
  let last: readonly number[] | undefined;
  return {
    problem,
    async ask({ trial, objective = { best: "most-value" }, ...stop }) {
      const asked = demandOf(index, { id: "trial", title: "trial", constraints: trial } as Job);
      const { faults } = asked;
      const { costs, rowBounds } = form.request(objective);
      const bounds: BoundChange[] = [...rowBounds];
      const most = (at: number, upper: number): void => {
        const own = bounds.find((bound) => bound.at === at);
        const lower = own?.lower ?? Number.NEGATIVE_INFINITY;
        bounds.splice(own === undefined ? bounds.length : bounds.indexOf(own), 1, {
          at,
          lower,
          upper: Math.min(upper, own?.upper ?? upper),
        });
      };
      if (asked.budgetCents !== undefined)
        most(form.layout.rows.cost, Math.floor((asked.budgetCents * 60 + 29) / problem.costUnit));
      if (asked.maxMinutes !== undefined) most(minutesRow, asked.maxMinutes);
      const columnBounds = shutBy(problem, form, asked);
      const solve = (with_: readonly number[], rows: readonly BoundChange[]) =>
        session.solve({
          ...stop,
          costs: with_,
          rowBounds: rows,
          columnBounds,
          ...(last === undefined ? {} : { start: last }),
        });
      let answer = await solve(costs, bounds);
      if (answer.values !== undefined) last = answer.values;
      if (answer.status === "optimal" && objective.best === "most-value" && answer.objective !== undefined) {
        const least = form.request({ best: "least-cost" }).costs;
        const value = form.layout.rows.value;
        const held = bounds.filter((bound) => bound.at !== value);
        answer = await solve(least, [
          ...held,
          { at: value, lower: -answer.objective, upper: Number.POSITIVE_INFINITY },
        ]);
        if (answer.values !== undefined) last = answer.values;
      }
      if (answer.values === undefined) return { status: answer.status, faults };
      const choice = form.decode(answer.values);
      return { status: answer.status, choice, score: scoreOf(problem, choice), faults };
    },
    close() {
      session.close();
    },
  };
}

function minuteTerms(problem: RecordProblem, form: MilpForm): [number, number][] {
  const { layout } = form;
  const terms: [number, number][] = [];
  const add = (at: number | undefined, minutes: number): void => {
    if (at !== undefined && minutes !== 0) terms.push([at, minutes]);
  };
  problem.modules.forEach((module, m) => {
    module.patterns.forEach((pattern, p) => {
      add(layout.pattern[m]?.[p], pattern.minutes);
    });
  });
  problem.circuits.forEach((circuit, c) => {
    circuit.placings.forEach((placing, j) => {
      add(layout.placing[c]?.[j], placing.minutes);
    });
  });
  problem.places.forEach((place, k) => {
    add(layout.opened[k], place.minutes);
  });
  return terms;
}
