/**
 * Sums, products and quotients of two numbers as a pair that holds the true result: where binary rounding loses something, the end that
 * would be wrong moves out by one unit in the last place; where the result is exact, both ends are it. The error of each operation is found
 * with the usual error-free transformations (Knuth's two-sum, Dekker's two-product; from memory).
 */
export interface Bracket {
  readonly down: number;
  readonly up: number;
}

const float = new Float64Array(1);
const bits = new BigInt64Array(float.buffer);

const nextUp = (x: number): number => {
  if (Number.isNaN(x) || x === Number.POSITIVE_INFINITY) return x;
  if (x === 0) return Number.MIN_VALUE;
  float[0] = x;
  bits[0] = bits[0]! + (x > 0 ? 1n : -1n);
  return float[0]!;
};
const nextDown = (x: number): number => -nextUp(-x);

const TINY = 2 ** -960;

/** `error` is true result minus `rounded`; not a number where it could not be found. */
const bracket = (rounded: number, error: number): Bracket => {
  if (rounded === Number.POSITIVE_INFINITY) return { down: Number.MAX_VALUE, up: rounded };
  if (rounded === Number.NEGATIVE_INFINITY) return { down: rounded, up: -Number.MAX_VALUE };
  if (error === 0) return { down: rounded, up: rounded };
  const isFound = Number.isFinite(error);
  return {
    down: isFound && error > 0 ? rounded : nextDown(rounded),
    up: isFound && error < 0 ? rounded : nextUp(rounded),
  };
};

/** Neither end may pass zero: the true result has this sign. */
const ofSign = (isNegative: boolean, of: Bracket): Bracket =>
  isNegative ? { down: of.down, up: Math.min(of.up, 0) } : { down: Math.max(of.down, 0), up: of.up };

const isInfinite = (x: number): boolean => x === Number.POSITIVE_INFINITY || x === Number.NEGATIVE_INFINITY;

export const sumBracket = (a: number, b: number): Bracket => {
  const rounded = a + b;
  if (isInfinite(a) || isInfinite(b)) return { down: rounded, up: rounded };
  const part = rounded - a;
  return bracket(rounded, a - (rounded - part) + (b - part));
};

const productError = (a: number, b: number, rounded: number): number => {
  if (Math.abs(rounded) < TINY) return Number.NaN;
  const split = 134217729;
  const aHigh = a * split - (a * split - a);
  const bHigh = b * split - (b * split - b);
  const aLow = a - aHigh;
  const bLow = b - bHigh;
  return aLow * bLow - (rounded - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
};

export const productBracket = (a: number, b: number): Bracket => {
  if (a === 0 || b === 0) return { down: 0, up: 0 };
  const rounded = a * b;
  if (isInfinite(a) || isInfinite(b)) return { down: rounded, up: rounded };
  return ofSign(a < 0 !== b < 0, bracket(rounded, productError(a, b, rounded)));
};

/** The divisor is not zero. */
export const quotientBracket = (a: number, b: number): Bracket => {
  if (a === 0) return { down: 0, up: 0 };
  const rounded = a / b;
  if (isInfinite(a)) return { down: rounded, up: rounded };
  if (isInfinite(b)) return { down: Math.min(0, nextDown(rounded)), up: Math.max(0, nextUp(rounded)) };
  if (Math.abs(rounded) < TINY || Math.abs(a) < TINY) return ofSign(a < 0 !== b < 0, bracket(rounded, Number.NaN));
  const back = rounded * b;
  const left = a - back - productError(rounded, b, back);
  return bracket(rounded, left === 0 ? 0 : left * Math.sign(b));
};
