import { demandOf, type Front, moveObstacles, type Obstacle, type Plan } from "@fusebook/core/plan";
import type { CoachIndex, Job, LoadId } from "@fusebook/core/record";

/**
 * The front with a reason for each unmet wish: another plan of the front that meets it, where there is one; else the rules that stop it wherever it sits. Reasons
 * that the search gave itself stay.
 */
export function withReasons(front: Front, index: CoachIndex, job: Job | undefined): Front {
  const demand = demandOf(index, job);
  const rules = new Map<LoadId, readonly Obstacle[]>();
  const rulesOf = (load: LoadId): readonly Obstacle[] => {
    const known = rules.get(load) ?? moveObstacles(index, demand, load);
    rules.set(load, known);
    return known;
  };
  const dearer = (plan: Plan, load: LoadId): Obstacle[] => {
    const others = front.plans.filter((each) => !each.unmet.some((wish) => wish.load === load));
    // Cheapest first: the next one up, where there is one.
    const other = others.find((each) => each.costCents >= plan.costCents) ?? others[0];
    if (other === undefined) return [];
    const parameters = {
      load,
      plan: other.id,
      moreCents: other.costCents - plan.costCents,
      moreModules: other.modulesTouched - plan.modulesTouched,
    };
    return [{ code: "dearer-than-chosen", parameters }];
  };
  const reasonsOf = (plan: Plan, load: LoadId): readonly Obstacle[] => {
    const other = dearer(plan, load);
    return other.length > 0 ? other : rulesOf(load);
  };
  return {
    ...front,
    plans: front.plans.map((plan) => ({
      ...plan,
      unmet: plan.unmet.map((wish) =>
        wish.stoppedBy.length > 0 ? wish : { ...wish, stoppedBy: reasonsOf(plan, wish.load) },
      ),
    })),
  };
}
