import type { How } from "./basis.js";

/** Where a limit or a published figure comes from. `table` is the id in `tables/`, or null for a rule of the trade. */
export interface Source {
  /** Id of the table in `tables/`, or "common-practice". */
  readonly id: string;
  /** The publication by its usual name, or "common practice, no source". */
  readonly name: string;
  readonly edition?: string;
  readonly clause?: string;
  readonly how: How | "practice";
}

/** A rule of the trade that no text we opened states. */
export const COMMON_PRACTICE: Source = { id: "common-practice", name: "common practice, no source", how: "practice" };
