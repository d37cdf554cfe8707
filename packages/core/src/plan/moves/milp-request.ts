import { Invariant } from "../../quantity/index.js";
import type { MilpRequest } from "../milp/index.js";
import type { Term } from "./milp-rows.js";
import type { Choice, MovesProblem } from "./problem.js";
import { scoreOf } from "./score.js";

/** What to look for the best of, and what it must keep to: cost in sixtieths of a cent, value in thousandths, wires counted. */
export interface Objective {
  /** `weighted`: cost less value, one whole weight counting as much as `moneyPerWeight` (1 where absent) of the currency. */
  readonly best: "least-cost" | "most-value" | "fewest-wires" | "weighted";
  readonly moneyPerWeight?: number;
  readonly leastValue?: number;
  readonly mostCost?: number;
  readonly mostWires?: number;
}

/** Where the parts of the problem stand among columns and rows. */
export interface MilpLayout {
  /** `pattern[module][pattern]`: the column that says that this is done. */
  readonly pattern: readonly (readonly number[])[];
  /** `placing[circuit][placing]`. */
  readonly placing: readonly (readonly number[])[];
  /** One for each place: it is opened. */
  readonly opened: readonly number[];
  /** One for each part: how many are bought. */
  readonly bought: readonly number[];
  /** Rows that hold the sum of each objective, open at both ends: in `costUnit`, `valueUnit` and wires. */
  readonly rows: { readonly cost: number; readonly value: number; readonly wires: number };
}

export interface ObjectiveTerms {
  readonly cost: readonly Term[];
  readonly value: readonly Term[];
  readonly wires: readonly Term[];
}

const gcd = (a: number, b: number): number => (b === 0 ? Math.abs(a) : gcd(b, a % b));

/** The costs and row bounds of one objective, all whole where `moneyPerWeight` is. */
export function requestOf(
  problem: MovesProblem,
  columns: number,
  rows: MilpLayout["rows"],
  terms: ObjectiveTerms,
  asked: Objective,
): Required<Pick<MilpRequest, "costs" | "rowBounds">> {
  const costs = new Array<number>(columns).fill(0);
  const add = (which: readonly Term[], factor: number): void => {
    for (const [column, coefficient] of which) costs[column] = (costs[column] ?? 0) + factor * coefficient;
  };
  switch (asked.best) {
    case "least-cost":
      add(terms.cost, 1);
      break;
    case "most-value":
      add(terms.value, -1);
      break;
    case "fewest-wires":
      add(terms.wires, 1);
      break;
    case "weighted": {
      // One whole weight is a thousand thousandths, one of the currency six thousand sixtieths of a cent.
      const perValue = 6 * (asked.moneyPerWeight ?? 1) * problem.valueUnit;
      const unit = Number.isInteger(perValue) ? Math.max(1, gcd(problem.costUnit, perValue)) : 1;
      add(terms.cost, problem.costUnit / unit);
      add(terms.value, -perValue / unit);
    }
  }
  const rowBounds: { at: number; lower: number; upper: number }[] = [];
  const bound = (at: number, lower: number, upper: number): void => void rowBounds.push({ at, lower, upper });
  if (asked.mostCost !== undefined)
    bound(rows.cost, Number.NEGATIVE_INFINITY, Math.floor(asked.mostCost / problem.costUnit));
  if (asked.leastValue !== undefined)
    bound(rows.value, Math.ceil(asked.leastValue / problem.valueUnit), Number.POSITIVE_INFINITY);
  if (asked.mostWires !== undefined) bound(rows.wires, Number.NEGATIVE_INFINITY, asked.mostWires);
  return { costs, rowBounds };
}

const chosenIn = (columns: readonly number[], values: readonly number[], what: string): number => {
  const at = columns.findIndex((column) => (values[column] ?? 0) > 0.5);
  if (at < 0) throw new Invariant("milp-without-choice", `nothing is chosen for ${what}`);
  return at;
};

/** The choice that column values stand for. */
export const decoded = (problem: MovesProblem, layout: MilpLayout, values: readonly number[]): Choice => ({
  patterns: layout.pattern.map((columns, m) => chosenIn(columns, values, problem.modules[m]?.module ?? "")),
  placings: layout.placing.map((columns, c) => chosenIn(columns, values, problem.circuits[c]?.circuit ?? "")),
});

/** Column values for a choice, places opened and parts bought included. */
export function encoded(problem: MovesProblem, layout: MilpLayout, columns: number, choice: Choice): number[] {
  const values = new Array<number>(columns).fill(0);
  const set = (column: number | undefined, value: number): void => {
    if (column !== undefined) values[column] = value;
  };
  layout.pattern.forEach((each, m) => {
    set(each[choice.patterns[m] ?? -1], 1);
  });
  layout.placing.forEach((each, c) => {
    set(each[choice.placings[c] ?? -1], 1);
  });
  const score = scoreOf(problem, choice);
  for (const place of score.opened) set(layout.opened[place], 1);
  score.bought.forEach((count, k) => {
    set(layout.bought[k], count);
  });
  return values;
}
