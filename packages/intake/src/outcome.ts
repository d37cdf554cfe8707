import type { Grid } from "@fusebook/core/record";

/** Why a file cannot be read as a table: where, what is wanted, what to do next. */
export interface GridFault {
  readonly place: string;
  readonly code: string;
  readonly message: string;
}

export type GridOutcome =
  | { readonly kind: "grid"; readonly grid: Grid }
  | { readonly kind: "refused"; readonly faults: readonly GridFault[] };

export const refusedGrid = (place: string, code: string, message: string): GridOutcome => ({
  kind: "refused",
  faults: [{ place, code, message }],
});
