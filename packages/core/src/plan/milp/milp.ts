/** One unknown of a model: what one unit of it costs and between which ends it lies. `Infinity` and `-Infinity` where there is no end. */
export interface MilpColumn {
  readonly name: string;
  readonly cost: number;
  readonly lower: number;
  readonly upper: number;
  readonly isInteger: boolean;
  /** What the column belongs to in words of the plan; a solver does not read it. */
  readonly group?: string;
}

/** One rule of a model: `lower <= sum(coefficient * column) <= upper`. A column stands at most once in a row. */
export interface MilpRow {
  readonly name: string;
  /** The rule of the plan this row is part of ("budget", "this load must not dim"): conflicts are named by group. */
  readonly group?: string;
  readonly lower: number;
  readonly upper: number;
  readonly terms: readonly (readonly [column: number, coefficient: number])[];
}

/** A mixed whole-number linear model as plain data: the least of `sum(cost * column)` under the rows. Money and minutes are whole numbers. */
export interface Milp {
  readonly name: string;
  readonly columns: readonly MilpColumn[];
  readonly rows: readonly MilpRow[];
}
