import { codedValue, type Family } from "./family.js";

/** n (n - 1) … in k factors: ways to seat k bits on n switches. */
export function seatings(n: number, k: number): number {
  let product = 1;
  for (let i = 0; i < k; i++) product *= n - i;
  return n < k ? 0 : product;
}

/** Ways to choose a of m. */
export function choices(m: number, a: number): number {
  let product = 1;
  for (let i = 0; i < a; i++) product = (product * (m - i)) / (i + 1);
  return Math.round(product);
}

/**
 * The rules of a family where every switch of every sample was read: each bit then belongs to exactly one class, and the number of rules that fit
 * a further row is a product over the classes. `ones[c]`: how many switches of class c stand at 1 in the further row, turned as the class is.
 */
export class ReadFamily {
  /** The class of each bit, and whether the bit runs opposite to the turned column. */
  private readonly bits: readonly { readonly c: number; readonly isOpposite: boolean; readonly isEither: boolean }[];

  constructor(readonly family: Family) {
    this.bits = family.fits.map((fits) => {
      const c = fits.findIndex((fit) => fit.same || fit.opposite);
      const fit = fits[c]!;
      return { c, isOpposite: !fit.same, isEither: fit.same && fit.opposite };
    });
  }

  get rules(): number {
    return Number(this.family.rules);
  }

  /** For each class: bits that must stand at 1 and at 0 for this address, and bits that fit either way (no sample yet). */
  needsFor(address: number): { ones: number[]; zeros: number[]; either: number[] } | undefined {
    const coded = codedValue(this.family.shape, address);
    if (coded === undefined) return undefined;
    const none = () => this.family.classes.map(() => 0);
    const needs = { ones: none(), zeros: none(), either: none() };
    this.bits.forEach((bit, i) => {
      const isOne = (((coded >>> i) & 1) === 1) !== bit.isOpposite;
      const list = bit.isEither ? needs.either : isOne ? needs.ones : needs.zeros;
      list[bit.c]!++;
    });
    return needs;
  }
}

/** Rules of one class that fit when `ones` of its `size` switches stand at 1. */
export const fitting = (
  needs: { ones: number[]; zeros: number[]; either: number[] },
  c: number,
  size: number,
  ones: number,
): number =>
  needs.either[c]! > 0
    ? seatings(size, needs.either[c]!)
    : seatings(ones, needs.ones[c]!) * seatings(size - ones, needs.zeros[c]!);
