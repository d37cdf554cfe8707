import type { Pick, Plan } from "./plan.js";

const best = (plans: readonly Plan[], isBetter: (a: Plan, b: Plan) => boolean): Plan | undefined =>
  plans.reduce<Plan | undefined>((top, plan) => (top === undefined || isBetter(plan, top) ? plan : top), undefined);

/**
 * Named plans on the front. `least-for-all-musts`: the cheapest that leaves as few musts unmet as any; only where there are musts. `most-light`: the cheapest of the
 * highest wish value. `least-disturbance`: the fewest wires moved and then the fewest modules touched among those that leave as few musts unmet as any (without musts: that give anything
 * at all), then the most light, then the cheapest. `best-per-money`: the most wish value gained for each cent over the cheapest plan.
 */
export function picksOf(plans: readonly Plan[], hasMusts: boolean): Pick[] {
  const cheapest = plans[0];
  if (cheapest === undefined) return [];
  const picks: Pick[] = [];
  const pick = (name: Pick["name"], plan: Plan | undefined): void => {
    if (plan !== undefined) picks.push({ name, plan: plan.id, mustsLeft: plan.mustsLeft });
  };
  const fewest = Math.min(...plans.map((plan) => plan.mustsLeft));
  const enough = plans.filter((plan) => plan.mustsLeft === fewest);
  if (hasMusts)
    pick(
      "least-for-all-musts",
      best(enough, (a, b) => a.costCents < b.costCents),
    );
  pick(
    "most-light",
    best(plans, (a, b) => a.wishValue > b.wishValue),
  );
  const something = plans.filter((plan) => plan.dims.length > 0);
  pick(
    "least-disturbance",
    best(
      hasMusts ? enough : something.length > 0 ? something : plans,
      (a, b) =>
        (a.wiresMoved - b.wiresMoved ||
          a.modulesTouched - b.modulesTouched ||
          b.wishValue - a.wishValue ||
          a.costCents - b.costCents) < 0,
    ),
  );
  const gain = (plan: Plan): number => plan.wishValue - cheapest.wishValue;
  const more = (plan: Plan): number => plan.costCents - cheapest.costCents;
  const gaining = plans.filter((plan) => gain(plan) > 0);
  pick(
    "best-per-money",
    // Compared crosswise, so that a gain for nothing beats every gain that is paid for.
    best(gaining.length > 0 ? gaining : plans, (a, b) => {
      const left = gain(a) * more(b);
      const right = gain(b) * more(a);
      return left !== right ? left > right : more(a) === 0 && more(b) === 0 && gain(a) > gain(b);
    }),
  );
  return picks;
}
