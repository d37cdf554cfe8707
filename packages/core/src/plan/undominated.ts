/** A partial plan on its way to the front. Costs are in sixtieths of a cent, so that minutes at an hourly rate stay whole. */
export interface Partial<Made> {
  readonly cost: number;
  readonly value: number;
  readonly touched: number;
  readonly minutes: number;
  /** Parts taken from stock so far, by place in the list of stocked kinds. */
  readonly stock: readonly number[];
  readonly made: Made;
}

/** What else, beside cost, value and modules touched, can make one partial plan worth keeping over another. */
export interface Rivalry {
  /** True where a limit on minutes is set: then a plan of less work is worth keeping though it costs more. */
  readonly minutesCount: boolean;
  /** Cost of one part beyond the stock, in sixtieths of a cent; Infinity where none can be bought. */
  readonly priceOfStocked: readonly number[];
}

/** `a` can stand in for `b` in every plan: no worse in anything, even if it must buy the stocked parts that it uses more of than `b`. */
function standsIn<Made>(a: Partial<Made>, b: Partial<Made>, rivalry: Rivalry): boolean {
  if (a.value < b.value || a.touched > b.touched || (rivalry.minutesCount && a.minutes > b.minutes)) return false;
  let cost = a.cost;
  for (let i = 0; i < a.stock.length; i++) {
    const more = (a.stock[i] ?? 0) - (b.stock[i] ?? 0);
    if (more > 0) cost += more * (rivalry.priceOfStocked[i] ?? 0);
  }
  return cost <= b.cost;
}

/** The partial plans that no other can stand in for, cheapest first. Ties go to less work, then to the one that came first. */
export function undominated<Made>(partials: Partial<Made>[], rivalry: Rivalry): Partial<Made>[] {
  // A sort keeps the order of equals.
  const order = [...partials].sort(
    (a, b) => a.cost - b.cost || b.value - a.value || a.touched - b.touched || a.minutes - b.minutes,
  );
  const kept: Partial<Made>[] = [];
  const isPlain = !rivalry.minutesCount && rivalry.priceOfStocked.length === 0;
  // Without stock or a limit on minutes, the best value so far for each count of touched modules says all that is needed.
  const bestValue: number[] = [];
  for (const partial of order) {
    if (isPlain) {
      let isBeaten = false;
      for (let touched = 0; touched <= partial.touched && !isBeaten; touched++)
        isBeaten = (bestValue[touched] ?? Number.NEGATIVE_INFINITY) >= partial.value;
      if (isBeaten) continue;
      bestValue[partial.touched] = partial.value;
    } else if (kept.some((other) => standsIn(other, partial, rivalry))) continue;
    kept.push(partial);
  }
  return kept;
}
