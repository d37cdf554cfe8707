import { type CoachIndex, type Job, type LoadId, policyOf } from "../../record/index.js";
import {
  boundsUnder,
  cheapestRelease,
  groupTester,
  type StopRule,
  smallestConflict,
  smallestOfOrders,
} from "../conflict/index.js";
import type { ValuedWish } from "../demand.js";
import type { MilpSession, MilpSolver } from "../milp/index.js";
import { milpOf, movesProblemOf } from "../moves/index.js";
import type { Obstacle } from "../plan.js";
import { type Asked, askedOf, readAsked, supposing } from "./asked.js";
import { choiceGroupsOf } from "./choice-groups.js";
import { moveObstacles } from "./move-obstacles.js";
import { type Near, nearOf } from "./near.js";
import { physicalGroupsOf } from "./physical-groups.js";
import { physicalTester } from "./physical-tester.js";
import { bareGroup, type PlanGroup } from "./plan-group.js";
import { inShort, type PlanInShort } from "./release-plan.js";
import { type WishModel, wishModelOf } from "./wish-model.js";
import { meets } from "./wish-rows.js";

/** One way out: what is given up or raised, and the plan it then comes to. */
export interface WayOut {
  readonly groups: readonly PlanGroup[];
  readonly plan: PlanInShort;
}

/**
 * Why a wish is not met.
 * `can-be`: a plan as asked meets it, with every other wish in `kept`; the cheapest such is `plan`. `conflict`: `groups` cannot all hold and could without any
 * one of them; `waysOut` cheapest first, each proved. `physical`: what is named is none of anybody's choosing; no change of plan can meet the wish.
 * `no-wish`: nothing is asked of this load that a plan could meet. `stopped`: the solver was stopped before it could say.
 */
export type WhyNotOutcome =
  | { readonly kind: "can-be"; readonly plan: PlanInShort }
  | { readonly kind: "conflict"; readonly groups: readonly PlanGroup[]; readonly waysOut: readonly WayOut[] }
  | { readonly kind: "physical"; readonly groups: readonly PlanGroup[] }
  | { readonly kind: "no-wish" | "not-on-module" | "stopped" };

export interface WhyNot {
  readonly load: LoadId;
  /** The rules that stop it, one by one, whatever the rest of the plan. */
  readonly rules: readonly Obstacle[];
  /** Musts that had to stay met while this was asked. */
  readonly kept: readonly LoadId[];
  /** Everything that was weighed beside facts: the wish, limits, choices, kept wishes. */
  readonly weighed: readonly PlanGroup[];
  readonly outcome: WhyNotOutcome;
  readonly solves: number;
}

export interface WhyNotChoices extends StopRule {
  /** Wishes that have to stay met. Absent: the musts that the plan with the most wish value meets. */
  readonly keeps?: readonly LoadId[];
}

class Stopped extends Error {}

/** The musts that the best plan as asked meets. */
async function mustsMet(index: CoachIndex, asked: Asked, solver: MilpSolver, stop: StopRule): Promise<ValuedWish[]> {
  const { demand } = readAsked(asked);
  const problem = movesProblemOf(index, policyOf(index.record), demand);
  const form = milpOf(problem, { best: "most-value" });
  const session = await solver.open(form.milp);
  try {
    const answer = await session.solve(stop);
    if (answer.status === "stopped") throw new Stopped();
    if (answer.values === undefined) return [];
    const choice = form.decode(answer.values);
    return [...demand.wishes.values()].filter((wish) => wish.wish !== "nice-to-dim" && meets(problem, choice, wish));
  } finally {
    session.close();
  }
}

const costsOf = (model: WishModel): readonly number[] => {
  const { costs } = model.form.request({ best: "least-cost" });
  return costs;
};

/** The cheapest plan with every group holding but these; undefined where there is none. */
async function cheapestWithout(
  model: WishModel,
  session: MilpSession,
  given: ReadonlySet<string>,
  stop: StopRule,
): Promise<PlanInShort | undefined> {
  const { isClash, ...bounds } = boundsUnder(
    model.grouped,
    model.grouped.groups.filter((group) => !given.has(group.name)),
  );
  if (isClash) return undefined;
  const answer = await session.solve({ ...stop, ...bounds, costs: costsOf(model) });
  if (answer.status === "stopped") throw new Stopped();
  return answer.values === undefined ? undefined : inShort(model.problem, model.form.decode(answer.values));
}

const groupsNamed = (model: WishModel, names: readonly string[]): PlanGroup[] =>
  names.flatMap((name) => model.planGroups.get(name) ?? []);

/** Each group of the conflict that is a way out by itself, and the cheapest way out of all, which may take several. */
async function waysOut(
  model: WishModel,
  session: MilpSession,
  conflict: readonly PlanGroup[],
  wish: ValuedWish,
  solver: MilpSolver,
  stop: StopRule,
): Promise<{ readonly ways: WayOut[]; readonly solves: number }> {
  const own = `wish ${wish.load}`;
  const worthOfGroup = (name: string): number => Number(model.planGroups.get(name)?.parameters.value ?? 0);
  const unit = model.grouped.groups.reduce((low, group) => gcd(low, worthOfGroup(group.name)), 0) || 1;
  const release = await cheapestRelease(
    model.grouped,
    solver,
    [
      { group: (group) => (group.nature === "wish" ? worthOfGroup(group.name) / unit : 0) },
      { columns: costsOf(model) },
    ],
    (group) => group.name !== own,
    stop,
  );
  if (release.kind === "stopped") throw new Stopped();
  let { solves } = release;
  const ways: WayOut[] = [];
  if (release.kind === "released")
    ways.push({
      groups: groupsNamed(
        model,
        release.groups.map((group) => group.name),
      ),
      plan: inShort(model.problem, model.form.decode(release.values)),
    });
  const singles: WayOut[] = [];
  for (const group of conflict) {
    if (group.name === own || (ways[0]?.groups.length === 1 && ways[0].groups[0] === group)) continue;
    solves++;
    const plan = await cheapestWithout(model, session, new Set([group.name]), stop);
    if (plan !== undefined) singles.push({ groups: [group], plan });
  }
  const givesWish = (way: WayOut): number => Number(way.groups.some((group) => group.nature === "wish"));
  singles.sort((a, b) => givesWish(a) - givesWish(b) || a.plan.costCents - b.plan.costCents);
  return { ways: [...ways, ...singles], solves };
}

const gcd = (a: number, b: number): number => (b === 0 ? Math.abs(a) : gcd(b, a % b));

/** The facts behind a conflict of choices, or behind a wish that no choice can help. */
async function factsBehind(
  asked: Asked,
  near: Near,
  model: WishModel,
  held: readonly PlanGroup[],
  wishes: readonly ValuedWish[],
  solver: MilpSolver,
  stop: StopRule,
): Promise<{ readonly groups: PlanGroup[]; readonly solves: number }> {
  const { index, demand } = readAsked(asked);
  const names = new Set(held.map((group) => group.name));
  const lifts = [...model.lifts].flatMap(([name, lift]) => (names.has(name) ? [] : [lift]));
  // A load kept steady by a wish alone is among the choices already.
  const facts = physicalGroupsOf(index, demand, near).filter(
    ({ group }) => !(group.parameters.why === "wished-steady" && model.lifts.has(`wish ${group.parameters.load}`)),
  );
  const tester = physicalTester(
    {
      asked: supposing(asked, lifts),
      wishes: wishes.filter((wish) => names.has(`wish ${wish.load}`)),
      holdsBudget: names.has("budget"),
      holdsMinutes: names.has("minutes"),
    },
    facts,
    solver,
    stop,
  );
  const conflict = await smallestConflict(
    tester,
    facts.map((fact) => bareGroup(fact.group)),
  );
  if (conflict.kind === "stopped") throw new Stopped();
  const named = new Set(conflict.kind === "conflict" ? conflict.groups.map((group) => group.name) : []);
  return { groups: facts.flatMap(({ group }) => (named.has(group.name) ? [group] : [])), solves: conflict.solves };
}

/**
 * Why is the wish for this load not met, and what would it take? Asked of the whole plan with moves: the wish is forced, everything else stays as asked, and
 * where that cannot be, the smallest set of things in each other's way is named. First what somebody chose, held against all facts; then the facts that
 * set rests on. What is physical is never given up.
 */
export async function whyNot(
  index: CoachIndex,
  job: Job | undefined,
  load: LoadId,
  solver: MilpSolver,
  choices: WhyNotChoices = {},
): Promise<WhyNot> {
  const { keeps, ...stop } = choices;
  const asked = askedOf(index, job);
  const { demand } = readAsked(asked);
  const wish = demand.wishes.get(load);
  const rules = moveObstacles(index, demand, load);
  let weighed: readonly PlanGroup[] = [];
  const answer = (outcome: WhyNotOutcome, kept: readonly ValuedWish[], solves: number): WhyNot => ({
    load,
    rules,
    kept: kept.map((each) => each.load),
    weighed,
    outcome,
    solves,
  });
  if (wish === undefined) return answer({ kind: "no-wish" }, [], 0);
  const near = nearOf(index, index.circuitOfLoad.get(load));
  if (near === undefined) return answer({ kind: "not-on-module" }, [], 0);
  let kept: ValuedWish[] = [];
  let solves = 1;
  try {
    kept = (
      keeps === undefined
        ? await mustsMet(index, asked, solver, stop)
        : keeps.flatMap((each) => demand.wishes.get(each) ?? [])
    ).filter((each) => each.load !== load);
    const model = wishModelOf(asked, near, choiceGroupsOf(asked, near), wish, kept);
    weighed = [...model.planGroups.values()];
    const session = await solver.open(model.grouped.milp);
    try {
      const tester = groupTester(model.grouped, session, stop);
      const conflict = await smallestOfOrders(tester, model.grouped.groups);
      solves += conflict.solves;
      if (conflict.kind === "stopped") throw new Stopped();
      if (conflict.kind === "none") {
        const plan = await cheapestWithout(model, session, new Set(), stop);
        if (plan === undefined) throw new Stopped();
        return answer({ kind: "can-be", plan }, kept, solves + 1);
      }
      const chosen = groupsNamed(
        model,
        conflict.groups.map((group) => group.name),
      );
      const facts = await factsBehind(asked, near, model, chosen, [wish, ...kept], solver, stop);
      solves += facts.solves;
      const groups = [...chosen, ...facts.groups];
      if (chosen.every((group) => group.name === `wish ${load}`))
        return answer({ kind: "physical", groups }, kept, solves);
      const found = await waysOut(model, session, chosen, wish, solver, stop);
      return answer({ kind: "conflict", groups, waysOut: found.ways }, kept, solves + found.solves);
    } finally {
      session.close();
    }
  } catch (error) {
    if (error instanceof Stopped) return answer({ kind: "stopped" }, kept, solves);
    throw error;
  }
}
