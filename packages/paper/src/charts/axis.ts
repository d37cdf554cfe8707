import { digitsOf } from "@fusebook/core/quantity";

export interface Tick {
  readonly value: number;
  /** Absent on a fine line between labelled ones. */
  readonly text?: string;
  /** Labelled first where there is no room for all. */
  readonly isMajor?: boolean;
}

/** One axis: which values, and at which part (0..1) of its length each stands. */
export interface Axis {
  readonly kind: "linear" | "log";
  readonly lo: number;
  readonly hi: number;
  readonly ticks: readonly Tick[];
  /** 0 at `lo`, 1 at `hi`; outside them where the value is. */
  ratioOf(value: number): number;
}

/** A number as an axis shows it: no needless zeros, no powers of ten. */
export const tickText = (value: number): string => digitsOf(value, 4);

/** As many decimals as a step needs, so that two neighbouring ticks never read the same. */
function decimalsOf(step: number): number {
  let places = 0;
  while (places < 12 && Math.abs(step * 10 ** places - Math.round(step * 10 ** places)) > 1e-6) places += 1;
  return places;
}

/** Below this a difference is not shown: it would be the rounding of the numbers, not the thing measured. */
const LEAST_REACH = 1e-6;
export const leastReach = (lo: number, hi: number): number => LEAST_REACH * Math.max(1, Math.abs(lo), Math.abs(hi));

/**
 * A linear axis over at least these values, ticks at round steps (1, 2 or 5 times a power of ten, or of the given steps), ends on a tick.
 * `atMost` is the greatest number of labelled ticks.
 */
export function linearAxis(
  lo: number,
  hi: number,
  atMost: number,
  how: { readonly steps?: readonly number[]; readonly suffix?: string; readonly isOpenAbove?: boolean } = {},
): Axis {
  const reach = hi - lo > leastReach(lo, hi) ? hi - lo : Math.abs(lo) > LEAST_REACH ? Math.abs(lo) : 1;
  const raw = reach / Math.max(1, atMost - 1);
  const size = 10 ** Math.floor(Math.log10(raw));
  const steps = how.steps ?? [size, 2 * size, 5 * size, 10 * size];
  const step = steps.find((each) => each >= raw * (1 - 1e-9)) ?? Math.ceil(raw / steps.at(-1)!) * steps.at(-1)!;
  const first = Math.floor(lo / step + 1e-9);
  const last = Math.max(first + 1, how.isOpenAbove ? Math.floor(hi / step + 1e-9) : Math.ceil(hi / step - 1e-9));
  const ticks: Tick[] = [];
  const places = decimalsOf(step);
  for (let i = first; i <= last; i++)
    ticks.push({ value: i * step, text: (i * step).toFixed(places) + (how.suffix ?? "") });
  const [from, to] = [first * step, how.isOpenAbove ? Math.max(hi, last * step) : last * step];
  return { kind: "linear", lo: from, hi: to, ticks, ratioOf: (value) => (value - from) / (to - from) };
}

const STEPS_IN_DECADE = [2, 3, 4, 5, 6, 7, 8, 9] as const;

/**
 * A logarithmic axis from `lo` to `hi`, both above 0. Every decade is labelled; a short axis is labelled at 2 and 5 too; the fine lines between are
 * the honest sign that it is logarithmic.
 */
export function logAxis(
  lo: number,
  hi: number,
  how: { readonly suffix?: string; readonly isRoomy?: boolean } = {},
): Axis {
  const span = Math.log10(hi / lo);
  const suffix = how.suffix ?? "";
  const ticks: Tick[] = [];
  const inside = (value: number): boolean => value >= lo * (1 - 1e-9) && value <= hi * (1 + 1e-9);
  for (let decade = Math.floor(Math.log10(lo)); decade <= Math.ceil(Math.log10(hi)); decade++) {
    const unit = Number(`1e${decade}`);
    if (inside(unit)) ticks.push({ value: unit, text: tickText(unit) + suffix, isMajor: true });
    for (const times of STEPS_IN_DECADE) {
      const value = Number(`${times}e${decade}`);
      if (!inside(value)) continue;
      const isLabelled = (how.isRoomy || span < 3.2) && (times === 2 || times === 5);
      ticks.push(isLabelled ? { value, text: tickText(value) + suffix } : { value });
    }
  }
  return { kind: "log", lo, hi, ticks, ratioOf: (value) => Math.log10(value / lo) / span };
}

/** The next value down or up at 1, 2 or 5 times a power of ten, for the ends of a logarithmic axis. */
export function roundOut(value: number, way: "down" | "up"): number {
  const decade = Math.floor(Math.log10(value) + 1e-9);
  const candidates = [1, 2, 5, 10].map((times) => Number(`${times}e${decade}`));
  return way === "up"
    ? (candidates.find((each) => each >= value * (1 - 1e-9)) ?? Number(`1e${decade + 1}`))
    : (candidates.findLast((each) => each <= value * (1 + 1e-9)) ?? Number(`1e${decade}`));
}
