import {
  type Comparison,
  compareSpan,
  known,
  type Outcome,
  refused,
  type Source,
  type Span,
} from "../quantity/index.js";
import { sourceOf } from "../tables/index.js";

/** IEEE Std 1789-2015, 8.1.1, as an open-source module that cites the clause gives it (seen there; the clause itself was not opened). */
export const FLICKER_SOURCE: Source = sourceOf("ieee1789");

/** Limits of modulation at one frequency; undefined means that the standard sets none there. */
export interface FlickerLimits {
  readonly lowRiskRatio: number | undefined;
  readonly noEffectRatio: number | undefined;
}

/**
 * How much may light vary at this frequency? Modulation as a share, (max - min) / (max + min). Low risk: 0.025 % of f below 90 Hz, 0.08 % of f
 * from 90 to 1250 Hz, no limit above. No observable effect: 0.01 % of f below 90 Hz, f/30 % from 90 to 3000 Hz, no limit from there.
 */
export function flickerLimits(frequencyHz: number): FlickerLimits {
  return {
    lowRiskRatio: frequencyHz < 90 ? 0.00025 * frequencyHz : frequencyHz <= 1250 ? 0.0008 * frequencyHz : undefined,
    noEffectRatio: frequencyHz < 90 ? 0.0001 * frequencyHz : frequencyHz < 3000 ? frequencyHz / 3000 : undefined,
  };
}

export interface Flicker extends FlickerLimits {
  readonly pwmHz: Span;
  readonly modulationRatio: Span;
  /** Limits above are those at the lowest frequency of the span, the strictest. */
  readonly lowRisk: Comparison;
  readonly noEffect: Comparison;
  readonly source: Source;
}

const asSpan = (value: number | Span): Span => (typeof value === "number" ? { lo: value, hi: value } : value);

/**
 * Does a lamp dimmed at this frequency keep the two limits of IEEE 1789? `modulationRatio`: how far its light swings, 1 for light that goes out
 * between pulses (see `modulationOf`). Both may be spans; the limits rise with frequency, so the ends decide.
 * Refused: `frequency-out-of-range` (not above 0 Hz), `modulation-out-of-range` (outside 0..1).
 */
export function flickerOf(pwmHz: number | Span, modulationRatio: number | Span): Outcome<Flicker> {
  const frequency = asSpan(pwmHz);
  const modulation = asSpan(modulationRatio);
  if (!(frequency.lo > 0 && frequency.hi >= frequency.lo && Number.isFinite(frequency.hi)))
    return refused("frequency-out-of-range", `the PWM frequency is above 0 Hz, got ${frequency.lo} to ${frequency.hi}`);
  if (!(modulation.lo >= 0 && modulation.hi >= modulation.lo && modulation.hi <= 1))
    return refused(
      "modulation-out-of-range",
      `modulation lies between 0 and 1, got ${modulation.lo} to ${modulation.hi}`,
    );
  const strict = flickerLimits(frequency.lo);
  const lenient = flickerLimits(frequency.hi);
  return known({
    ...strict,
    pwmHz: frequency,
    modulationRatio: modulation,
    lowRisk: judge(modulation, strict.lowRiskRatio, lenient.lowRiskRatio),
    noEffect: judge(modulation, strict.noEffectRatio, lenient.noEffectRatio),
    source: FLICKER_SOURCE,
  });
}

function judge(modulation: Span, strict: number | undefined, lenient: number | undefined): Comparison {
  if (strict === undefined || compareSpan(modulation, strict, "at-most") === "holds") return "holds";
  return lenient !== undefined && compareSpan(modulation, lenient, "at-most") === "fails" ? "fails" : "open";
}
