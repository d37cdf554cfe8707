import { FILAMENT_CURRENT_EXPONENT } from "../network/index.js";
import type { Source, Span } from "../quantity/index.js";
import { sourceOf } from "../tables/index.js";

/** Published near the rated volts: colour temperature and luminous intensity as powers of the volts. */
const TEMPERATURE_EXPONENT = 0.42;
const LIGHT_EXPONENT = 3.4;
/** Heat given off, light and resistance as powers of the filament's temperature, computed from the published ones. */
const HEAT_BY_TEMPERATURE = (1 + FILAMENT_CURRENT_EXPONENT) / TEMPERATURE_EXPONENT;
const LIGHT_BY_TEMPERATURE = LIGHT_EXPONENT / TEMPERATURE_EXPONENT;
const OHM_BY_TEMPERATURE = (1 - FILAMENT_CURRENT_EXPONENT) / TEMPERATURE_EXPONENT;

export const FILAMENT_HEAT_SOURCE: Source = { ...sourceOf("lamp-exponents"), how: "computed" };

/**
 * How slowly filaments cool where the record does not say, in seconds. The fast end makes a cold filament fall to twice its current in 3 ms, which a
 * lamp-driver note gives as the least (table `lamp-inrush`, seen); the slow end, a thick low-volt filament, is from memory.
 */
export const FILAMENT_TIME_CONSTANT: { readonly nominalS: number; readonly spanS: Span; readonly source: Source } = {
  nominalS: 0.03,
  spanS: { lo: 0.0065, hi: 0.2 },
  source: { id: "class-figure", name: "class figure from memory, no source", how: "memory" },
};

/** A filament over one period of PWM, once it repeats. Shares of what it has at full. */
export interface FilamentPulse {
  readonly minLightRatio: number;
  readonly maxLightRatio: number;
  readonly meanLightRatio: number;
  /** Strongest current of the pulse over the current at full: the filament is coolest when the pulse starts. */
  readonly peakCurrentRatio: number;
  readonly modulationRatio: number;
}

const STEPS = 48;
const MAX_STEPS = 40;
/** Share of the full temperature: no filament is colder while it glows at all, and what is left over a period when it repeats. */
const COLDEST = 1e-3;
const SETTLED = 1e-13;

/**
 * How far does a filament's glow swing while PWM heats it? One heat capacity: `timeConstantS * slope` is what it stores, volts^2 over its resistance
 * comes in while on, temperature^3.69 goes out always. Solved for the period that repeats; 0 < duty < 1.
 */
export function filamentPulse(timeConstantS: number, pwmHz: number, dutyRatio: number): FilamentPulse {
  const onS = dutyRatio / pwmHz;
  const offS = (1 - dutyRatio) / pwmHz;
  const store = timeConstantS * HEAT_BY_TEMPERATURE;
  const rise = (temperature: number, isOn: boolean): number =>
    ((isOn ? temperature ** -OHM_BY_TEMPERATURE : 0) - temperature ** HEAT_BY_TEMPERATURE) / store;
  const light = { sum: 0 };
  const run = (from: number, timeS: number, isOn: boolean): number => {
    let at = from;
    // Short against its own quickness, however slow the PWM.
    const steps = Math.max(STEPS, Math.ceil((timeS / timeConstantS) * 24));
    const h = timeS / steps;
    for (let i = 0; i < steps; i++) {
      const a = rise(at, isOn);
      const b = rise(at + (h / 2) * a, isOn);
      const c = rise(at + (h / 2) * b, isOn);
      const d = rise(at + h * c, isOn);
      const next = Math.max(COLDEST, at + (h / 6) * (a + 2 * b + 2 * c + d));
      light.sum += (h / 2) * (at ** LIGHT_BY_TEMPERATURE + next ** LIGHT_BY_TEMPERATURE);
      at = next;
    }
    return at;
  };
  let high = 0;
  const over = (low: number): number => {
    light.sum = 0;
    high = run(low, onS, true);
    return run(high, offS, false) - low;
  };
  // Where it would settle if it were infinitely slow: the steady heat of that duty. What is over after a period falls as the start is hotter.
  let before = dutyRatio ** (1 / (HEAT_BY_TEMPERATURE + OHM_BY_TEMPERATURE));
  let overBefore = over(before);
  let low = Math.max(COLDEST, before + overBefore);
  for (let step = 0; step < MAX_STEPS; step++) {
    const overNow = over(low);
    const slope = (overNow - overBefore) / (low - before);
    if (Math.abs(overNow) < SETTLED || !(slope < 0)) break;
    before = low;
    overBefore = overNow;
    low = Math.min(1, Math.max(COLDEST, low - overNow / slope));
  }
  const minLightRatio = low ** LIGHT_BY_TEMPERATURE;
  const maxLightRatio = high ** LIGHT_BY_TEMPERATURE;
  return {
    minLightRatio,
    maxLightRatio,
    meanLightRatio: light.sum * pwmHz,
    peakCurrentRatio: low ** -OHM_BY_TEMPERATURE,
    modulationRatio: (maxLightRatio - minLightRatio) / (maxLightRatio + minLightRatio),
  };
}
