import {
  demandOf,
  groupsAround,
  type Milp,
  milpOf,
  movesProblemOf,
  type PlanGroup,
  supposeWithout,
  type WhyNot,
} from "@fusebook/core/plan";
import { type CoachRecord, indexRecord, type Job, type LoadId, policyOf, type Wish } from "@fusebook/core/record";
import { Lister } from "./plan-moves-every-plan.js";

export interface Question {
  readonly record: CoachRecord;
  readonly job: Job;
}
type Second = (milp: Milp, limitS: number) => number | "infeasible" | undefined;

/** Every wish of a question, the job's own among them. */
export const wishesOf = ({ record, job }: Question): Map<LoadId, Wish> => {
  const wishes = new Map<LoadId, Wish>();
  for (const load of record.loads ?? []) if (load.wish !== undefined) wishes.set(load.id, load.wish);
  for (const { load, wish } of [...(job.wishes ?? [])].reverse()) wishes.set(load, wish);
  return wishes;
};

/**
 * The cheapest plan, in sixtieths of a cent, that meets all these wishes, by a model built anew from the question and a second solver; `none` where there is none. Which columns meet
 * a wish is written out here again.
 */
export function cheapestBySecond(second: Second, question: Question, wishes: readonly LoadId[]): number | "none" {
  const index = indexRecord({ ...question.record, jobs: [question.job] });
  const problem = movesProblemOf(index, policyOf(index.record), demandOf(index, question.job), { dominated: true });
  const { milp, layout } = milpOf(problem, { best: "least-cost" });
  const asked = wishesOf(question);
  const rows = wishes.map((load) => {
    const isSteady = asked.get(load) === "must-stay-steady";
    const touches = (each: {
      dims: readonly string[];
      spoiled: readonly string[];
      inDoubt: readonly string[];
    }): boolean => (isSteady ? [...each.spoiled, ...each.inDoubt] : each.dims).includes(load);
    const terms: [number, number][] = [];
    problem.modules.forEach(({ patterns }, m) => {
      patterns.forEach((pattern, p) => {
        if (touches(pattern)) terms.push([layout.pattern[m]![p]!, 1]);
      });
    });
    problem.circuits.forEach(({ placings }, c) => {
      placings.forEach((placing, j) => {
        if (touches(placing)) terms.push([layout.placing[c]![j]!, 1]);
      });
    });
    return isSteady
      ? { name: `is met ${load}`, lower: Number.NEGATIVE_INFINITY, upper: 0, terms }
      : { name: `is met ${load}`, lower: 1, upper: Number.POSITIVE_INFINITY, terms };
  });
  // A row without terms: met by all, or by none.
  if (rows.some((row) => row.terms.length === 0 && row.lower > 0)) return "none";
  const answer = second({ ...milp, rows: [...milp.rows, ...rows.filter((row) => row.terms.length > 0)] }, 60);
  if (answer === undefined) throw new Error("the second solver ran out of time");
  return answer === "infeasible" ? "none" : Math.round(answer) * problem.costUnit;
}

/** Cents of sixtieths, half a cent up. */
export const cents = (cost: number | "none"): number | "none" =>
  cost === "none" ? cost : Math.floor((cost + 30) / 60);

/**
 * The same in cents by listing every plan there is under rules written out in the checks: these wishes weigh a thousand each, others to stay steady one, and all others nothing, so
 * that a plan's worth tells whether it meets them.
 */
export function cheapestByListing({ record, job }: Question, wishes: readonly LoadId[]): number | "none" {
  const asked = wishesOf({ record, job });
  const weighed = (record.loads ?? []).map((load) => {
    const { wish: _own, wishWeight: _weight, ...rest } = load;
    const wish = asked.get(load.id);
    if (wishes.includes(load.id))
      return { ...rest, wish: wish === "nice-to-dim" ? ("must-dim" as const) : wish, wishWeight: 1000 };
    return wish === "must-stay-steady" ? { ...rest, wish, wishWeight: 1 } : rest;
  });
  const { wishes: _said, ...bare } = job;
  const lister = new Lister({ ...record, loads: weighed } as CoachRecord, bare as Job);
  const enough = 1000 * wishes.filter((load) => asked.get(load) !== "must-stay-steady").length - 500;
  const costs = lister.every(false).front.kept.flatMap(([cost, value]) => (value >= enough ? [cost] : []));
  return costs.length === 0 ? "none" : Math.min(...costs);
}

/** The question with everything supposed otherwise that may be named and is not among these, and the wishes among these. */
export function holdingOnly(
  question: Question,
  why: WhyNot,
  held: readonly PlanGroup[],
  holdsAllFacts: boolean,
): { readonly question: Question; readonly wishes: LoadId[] } {
  const index = indexRecord({ ...question.record, jobs: [question.job] });
  const names = new Set(held.map((group) => group.name));
  const { choices, facts } = groupsAround(index, question.job, why.load);
  // A wish that is a row of the model is given up by not asking for it; one that keeps a load from dimming also by letting it dim.
  const steady = why.weighed.filter((group) => group.code === "wish" && group.parameters.mayDim === 1);
  const otherwise = [
    "budget",
    "minutes",
    ...[...choices, ...steady, ...(holdsAllFacts ? [] : facts)].map((group) => group.name),
  ].filter((name) => !names.has(name));
  // What keeps a load steady by a wish alone stands among the choices, and is not lifted as a fact too.
  const isTwice = (name: string): boolean =>
    steady.some((group) => name === `load-must-not-dim ${group.parameters.load}`);
  const so = supposeWithout(index, question.job, why.load, new Set(otherwise.filter((name) => !isTwice(name))));
  if (so === undefined) throw new Error(`${why.load} hangs on no module`);
  return {
    question: so,
    wishes: held.flatMap((group) => (group.code === "wish" ? [String(group.parameters.load) as LoadId] : [])),
  };
}
