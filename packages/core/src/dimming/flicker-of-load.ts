import { type Figure, known, type Outcome, refused, type Span, spanOf } from "../quantity/index.js";
import { type Flicker, flickerOf } from "./flicker.js";
import { type DriverFeed, type LampFigures, type Modulation, modulationDepth } from "./modulation-depth.js";

export interface LoadFlicker extends Flicker {
  /** Where the light swings most, of the duties looked at. */
  readonly worstDutyRatio: number;
  readonly modulation: Modulation;
}

/** Duties that stand for all: a filament swings most between a quarter and a half. */
const DUTIES = [0.05, 0.15, 0.25, 0.35, 0.5, 0.75] as const;

/**
 * Does this load keep both limits of IEEE 1789 at the worst duty from `fromDutyRatio` up, over the whole span of the PWM frequency and of its
 * own filtering? What filters is in `modulation`. Missing and refused as `modulationDepth` and `flickerOf`.
 */
export function flickerOfLoad(
  load: LampFigures,
  pwm: Figure,
  fromDutyRatio = 0,
  feed: DriverFeed | undefined = undefined,
): Outcome<LoadFlicker> {
  const pwmHz = spanOf(pwm, "frequency");
  if (!(pwmHz.lo > 0))
    return refused("frequency-out-of-range", `the PWM frequency is above 0 Hz, got ${pwmHz.lo} to ${pwmHz.hi}`);
  const duties = new Set([Math.max(fromDutyRatio, 0.01), ...DUTIES.filter((duty) => duty > fromDutyRatio)]);
  let worst: { dutyRatio: number; modulation: Modulation } | undefined;
  let ratio: Span | undefined;
  for (const dutyRatio of duties) {
    if (dutyRatio >= 1) continue;
    // Slower PWM swings more, so that the lowest frequency bounds from above and the highest from below.
    const most = modulationDepth(load, pwmHz.lo, dutyRatio, feed);
    if (most.kind !== "known") return most;
    const { knownFrom, filter } = most.value;
    const isFiltered = filter === "thermal" || filter === "capacitor";
    const least = isFiltered ? modulationDepth(load, pwmHz.hi, dutyRatio, feed) : most;
    const lo = least.kind === "known" ? least.value.ratio.lo : 0;
    if (worst === undefined || most.value.ratio.hi > worst.modulation.ratio.hi)
      worst = { dutyRatio, modulation: { ...most.value, knownFrom, ratio: { lo, hi: most.value.ratio.hi } } };
    ratio =
      ratio === undefined
        ? { lo, hi: most.value.ratio.hi }
        : { lo: Math.max(ratio.lo, lo), hi: Math.max(ratio.hi, most.value.ratio.hi) };
  }
  const modulation: Modulation = worst?.modulation ?? {
    ratio: { lo: 0, hi: 0 },
    nominalRatio: 0,
    filter: "none",
    knownFrom: "physics",
    wouldSettle: [],
    source: { id: "common-practice", name: "common practice, no source", how: "practice" },
  };
  const flicker = flickerOf(pwmHz, ratio ?? { lo: 0, hi: 0 });
  if (flicker.kind !== "known") return flicker;
  return known({ ...flicker.value, worstDutyRatio: worst?.dutyRatio ?? 1, modulation });
}
