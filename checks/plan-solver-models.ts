import type { Milp, MilpColumn, MilpRow } from "@fusebook/core/plan";
import { chanceOf } from "@fusebook/fixtures";

/** Puts a model together column by column and row by row, for checks. */
export class ModelMaker {
  readonly columns: MilpColumn[] = [];
  readonly rows: MilpRow[] = [];
  constructor(readonly name: string) {}

  whole(name: string, cost: number, lower = 0, upper = 1): number {
    return this.columns.push({ name, cost, lower, upper, isInteger: true }) - 1;
  }
  share(name: string, cost: number, lower = 0, upper = Infinity): number {
    return this.columns.push({ name, cost, lower, upper, isInteger: false }) - 1;
  }
  row(name: string, lower: number, terms: MilpRow["terms"], upper: number): void {
    this.rows.push({ name, lower, terms, upper });
  }
  get milp(): Milp {
    return { name: this.name, columns: this.columns, rows: this.rows };
  }
}

/** Generalised assignment: every job to exactly one agent, each agent within its capacity. */
export function assignment(
  name: string,
  cost: readonly (readonly number[])[],
  resource: readonly (readonly number[])[],
  capacity: readonly number[],
): Milp {
  const make = new ModelMaker(name);
  const at = cost.map((row, agent) => row.map((each, job) => make.whole(`x_${agent}_${job}`, each)));
  for (let job = 0; job < (cost[0]?.length ?? 0); job++)
    make.row(
      `job_${job}`,
      1,
      at.map((row) => [row[job] as number, 1] as const),
      1,
    );
  at.forEach((row, agent) => {
    const terms = row.map((column, job) => [column, resource[agent]?.[job] ?? 0] as const);
    make.row(`agent_${agent}`, -Infinity, terms, capacity[agent] ?? 0);
  });
  return make.milp;
}

/** Binary knapsack of several rows, least of the costs. */
export function knapsack(
  name: string,
  costs: readonly number[],
  weights: readonly (readonly number[])[],
  room: readonly number[],
): Milp {
  const make = new ModelMaker(name);
  for (const [item, cost] of costs.entries()) make.whole(`x${item + 1}`, cost);
  for (const [at, row] of weights.entries()) {
    const terms = row.map((weight, item) => [item, weight] as const);
    make.row(`row${at + 1}`, -Infinity, terms, room[at] ?? 0);
  }
  return make.milp;
}

/** A seeded generalised assignment; some have no answer. */
export function seededAssignment(seed: number): Milp {
  const chance = chanceOf(seed);
  const [agents, jobs] = [chance.whole(2, 4), chance.whole(5, 10)];
  const table = (from: number, to: number) =>
    Array.from({ length: agents }, () => Array.from({ length: jobs }, () => chance.whole(from, to)));
  const resource = table(5, 25);
  const capacity = resource.map((row) =>
    Math.round((row.reduce((sum, each) => sum + each, 0) / agents) * chance.between(0.7, 1.1)),
  );
  return assignment(`assignment-${seed}`, table(100, 2500), resource, capacity);
}

/** A seeded knapsack of one to three rows. */
export function seededKnapsack(seed: number, items = 0, rows = 0): Milp {
  const chance = chanceOf(seed);
  const [n, m] = [items || chance.whole(8, 20), rows || chance.whole(1, 3)];
  const weights = Array.from({ length: m }, () => Array.from({ length: n }, () => chance.whole(10, 1000)));
  const costs = Array.from({ length: n }, (_, item) => {
    const sum = weights.reduce((all, row) => all + (row[item] ?? 0), 0);
    return -(Math.round(sum / m) + chance.whole(0, 300));
  });
  return knapsack(
    `knapsack-${seed}`,
    costs,
    weights,
    weights.map((row) => Math.round(row.reduce((a, b) => a + b, 0) / 2)),
  );
}
