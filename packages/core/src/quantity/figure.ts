import type { Basis } from "./basis.js";

/** A figure as the record keeps it: a bare number is `marked`. The unit is in the name of the field that holds it. */
export type Figure =
  | number
  | {
      value: number;
      basis: Basis;
      /** Half-width of the interval the value may lie in, in the field's own unit. Wins over the basis's default. */
      plusMinus?: number | undefined;
      /** ISO date of the reading. */
      at?: string | undefined;
      by?: string | undefined;
      note?: string | undefined;
    };

/** The number itself. */
export const figureValue = (figure: Figure): number => (typeof figure === "number" ? figure : figure.value);

/** How it is known; a bare number was read off a label or print. */
export const figureBasis = (figure: Figure): Basis => (typeof figure === "number" ? "marked" : figure.basis);
