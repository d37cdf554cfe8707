import type { Outcome, Span } from "../quantity/index.js";
import type { CapacitorInputCurrents } from "./capacitor-input.js";

/** How many capacitors of a span are tried, evenly spaced by ratio. */
export const CAPACITANCE_POINTS = 9;

/** This share of the way from the least to the greatest, by ratio: 0 is the least, 1 the greatest. */
export const between = (total: Span, share: number): number => total.lo * (total.hi / total.lo) ** share;

/** How finely the hottest capacitor is sought between two points of the grid. */
const NARROWINGS = 9;

/** The heat is greatest where a capacitor is just drained in the pause: looked for between the points beside the hottest, on the least loop. */
export function hottestOf(
  at: (capacitanceF: number, loopOhm: number) => Outcome<CapacitorInputCurrents>,
  total: { readonly lo: number; readonly hi: number },
  loopSpanOhm: Span,
): CapacitorInputCurrents | undefined {
  if (!(total.hi > total.lo)) return undefined;
  const loopOhm = Math.max(loopSpanOhm.lo, 1e-4);
  const heat = (share: number): { readonly rmsA: number; readonly one: CapacitorInputCurrents | undefined } => {
    const one = at(between(total, share), loopOhm);
    return one.kind === "known" ? { rmsA: one.value.rmsA, one: one.value } : { rmsA: 0, one: undefined };
  };
  let best = { share: 0, rmsA: 0, one: undefined as CapacitorInputCurrents | undefined };
  for (let i = 0; i < CAPACITANCE_POINTS; i++) {
    const share = i / (CAPACITANCE_POINTS - 1);
    const { rmsA, one } = heat(share);
    if (rmsA > best.rmsA) best = { share, rmsA, one };
  }
  let [lo, hi] = [
    Math.max(0, best.share - 1 / (CAPACITANCE_POINTS - 1)),
    Math.min(1, best.share + 1 / (CAPACITANCE_POINTS - 1)),
  ];
  for (let i = 0; i < NARROWINGS; i++) {
    const [a, b] = [lo + (hi - lo) / 3, hi - (hi - lo) / 3];
    const [left, right] = [heat(a), heat(b)];
    const better = left.rmsA >= right.rmsA ? left : right;
    if (better.rmsA > best.rmsA) best = { share: best.share, ...better };
    if (left.rmsA >= right.rmsA) hi = b;
    else lo = a;
  }
  return best.one;
}
