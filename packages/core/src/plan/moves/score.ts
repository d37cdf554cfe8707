import type { Choice, MovePattern, MovesProblem, Placing } from "./problem.js";

/** What a choice costs and gives, in the problem's units; `costCents` as it is shown. */
export interface Score {
  readonly cost: number;
  readonly costCents: number;
  readonly value: number;
  readonly wiresMoved: number;
  readonly minutes: number;
  /** Modules replaced or set anew. */
  readonly modulesTouched: number;
  /** Of each part: how many must be bought. */
  readonly bought: readonly number[];
  /** Places opened, by their place in the problem. */
  readonly opened: readonly number[];
}

/** A millionth of an ampere is the last digit; half of it is rounding. */
const CURRENT_SLACK_A = 5e-7;

export const patternAt = (problem: MovesProblem, choice: Choice, module: number): MovePattern | undefined =>
  problem.modules[module]?.patterns[choice.patterns[module] ?? -1];

export const placingAt = (problem: MovesProblem, choice: Choice, circuit: number): Placing | undefined =>
  problem.circuits[circuit]?.placings[choice.placings[circuit] ?? -1];

/** Places that this way of sitting opens: work is done at the circuit's home and where it goes. */
export function placesOpenedBy(problem: MovesProblem, circuit: number, placing: Placing): ReadonlySet<number> {
  const opened = new Set<number>();
  if (placing.wiresMoved === 0) return opened;
  for (const module of [problem.circuits[circuit]?.home, placing.module])
    for (const place of (module === undefined ? undefined : problem.modules[module]?.places) ?? []) opened.add(place);
  return opened;
}

/** Cents, half a cent up: parts are whole cents, so this rounds the labour. */
export const centsOfCost = (cost: number): number => Math.floor((cost + 30) / 60);

/** What this choice costs, gives and disturbs, exactly. */
export function scoreOf(problem: MovesProblem, choice: Choice): Score {
  let cost = 0;
  let value = 0;
  let wiresMoved = 0;
  let minutes = 0;
  let modulesTouched = 0;
  const opened = new Set<number>();
  const wanted = problem.parts.map((part) => -part.inStock);
  problem.modules.forEach((module, m) => {
    const pattern = patternAt(problem, choice, m);
    if (pattern === undefined) return;
    cost += pattern.cost;
    minutes += pattern.minutes;
    value += pattern.value;
    if (pattern.part !== undefined) wanted[pattern.part] = (wanted[pattern.part] ?? 0) + 1;
    if (pattern.frees !== undefined) wanted[pattern.frees] = (wanted[pattern.frees] ?? 0) - 1;
    if (!pattern.isTouched) return;
    modulesTouched++;
    for (const place of module.places) opened.add(place);
  });
  problem.circuits.forEach((_, c) => {
    const placing = placingAt(problem, choice, c);
    if (placing === undefined) return;
    cost += placing.cost;
    minutes += placing.minutes;
    value += placing.value;
    wiresMoved += placing.wiresMoved;
    for (const place of placesOpenedBy(problem, c, placing)) opened.add(place);
  });
  for (const place of opened) {
    cost += problem.places[place]?.cost ?? 0;
    minutes += problem.places[place]?.minutes ?? 0;
  }
  const bought = wanted.map((count) => Math.max(0, count));
  bought.forEach((count, part) => {
    if (count > 0) cost += count * (problem.parts[part]?.price ?? 0);
  });
  return {
    cost,
    costCents: centsOfCost(cost),
    value,
    wiresMoved,
    minutes,
    modulesTouched,
    bought,
    opened: [...opened].sort((a, b) => a - b),
  };
}

/** A rule that a choice breaks: which, and at which module, circuit, part or feeder. */
export interface ChoiceFault {
  readonly code:
    | "no-pattern"
    | "no-placing"
    | "pattern-forbids-placing"
    | "too-many-dimmed"
    | "too-many-switched"
    | "too-many-circuits"
    | "module-over-rating"
    | "feeder-over-limit"
    | "part-not-to-be-had"
    | "over-budget"
    | "over-minutes";
  readonly at: string;
}

/** Which rules of the problem does this choice break? Empty: it can be done. */
export function choiceFaults(problem: MovesProblem, choice: Choice): ChoiceFault[] {
  const faults: ChoiceFault[] = [];
  const held = problem.modules.map(() => ({ dimmable: 0, switchable: 0, slots: 0, currentA: 0, steadyA: 0 }));
  problem.circuits.forEach((circuit, c) => {
    const placing = placingAt(problem, choice, c);
    if (placing === undefined) {
      faults.push({ code: "no-placing", at: circuit.circuit });
      return;
    }
    const home = held[circuit.home];
    if (home !== undefined) home.steadyA += placing.steadyA;
    const at = placing.module === undefined ? undefined : held[placing.module];
    if (placing.module === undefined || at === undefined) return;
    if (!placing.patterns.includes(choice.patterns[placing.module] ?? -1))
      faults.push({ code: "pattern-forbids-placing", at: circuit.circuit });
    at.slots++;
    if (placing.takesDimmable) at.dimmable++;
    if (placing.takesSwitchable) at.switchable++;
    at.currentA += placing.currentA;
  });
  problem.modules.forEach((module, m) => {
    const pattern = patternAt(problem, choice, m);
    const here = held[m];
    if (pattern === undefined || here === undefined) {
      faults.push({ code: "no-pattern", at: module.module });
      return;
    }
    if (here.dimmable > pattern.dimmable) faults.push({ code: "too-many-dimmed", at: module.module });
    if (here.switchable > pattern.switchable) faults.push({ code: "too-many-switched", at: module.module });
    if (here.slots > pattern.slots) faults.push({ code: "too-many-circuits", at: module.module });
    if (here.currentA > pattern.mostA + CURRENT_SLACK_A) faults.push({ code: "module-over-rating", at: module.module });
  });
  for (const feeder of problem.feeders) {
    const currentA = feeder.modules.reduce((sum, m) => sum + (held[m]?.currentA ?? 0) + (held[m]?.steadyA ?? 0), 0);
    if (currentA > feeder.mostA + CURRENT_SLACK_A) faults.push({ code: "feeder-over-limit", at: feeder.id });
  }
  const score = scoreOf(problem, choice);
  problem.parts.forEach((part, k) => {
    if ((score.bought[k] ?? 0) > 0 && part.price === Number.POSITIVE_INFINITY)
      faults.push({ code: "part-not-to-be-had", at: part.kind });
  });
  if (problem.mostCost !== undefined && score.cost > problem.mostCost) faults.push({ code: "over-budget", at: "" });
  if (problem.mostMinutes !== undefined && score.minutes > problem.mostMinutes)
    faults.push({ code: "over-minutes", at: "" });
  return faults;
}
