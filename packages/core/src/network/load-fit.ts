import {
  type Figure,
  figureValue,
  hull,
  intersect,
  known,
  missing,
  type Outcome,
  refused,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { LoadClass } from "../record/index.js";
import { fitLine, type LineFit, type SpannedReading } from "./fit-line.js";
import { FILAMENT_CURRENT_EXPONENT } from "./load-model.js";

/** Volts across a load and its current, read together. A bare number is a reading too: its doubt is a meter's, not a label's. */
export interface DrawReading {
  readonly voltageV: Figure;
  readonly currentA: Figure;
  /** How many alike the clamp took in; one where absent. */
  readonly pieces?: number | undefined;
}

/** What is known of the lamp beside its readings. */
export interface LampPrior {
  readonly class: LoadClass | undefined;
  /** 12 or 24: where the class's forward volts come from. */
  readonly nominalV: number;
  /** The record's own forward volts, where it has them. */
  readonly forwardV?: Figure | undefined;
}

/** One piece: a line for a ballasted LED; for every other class one figure that stays the same at all volts. */
export type LampFit =
  | ({ readonly kind: "led" } & LineFit)
  | {
      /** `current` in A, `power` in W, `resistance` in ohm, `filament` in A at 1 V (current = figure * V^0.55). */
      readonly kind: "current" | "power" | "resistance" | "filament";
      readonly nominal: number;
      readonly span: Span;
    };

const asRead = (figure: Figure): Figure => (typeof figure === "number" ? { value: figure, basis: "measured" } : figure);

function spannedOf(reading: DrawReading): SpannedReading {
  const pieces = reading.pieces ?? 1;
  const voltageV = spanOf(asRead(reading.voltageV), "voltage");
  const currentA = spanOf(asRead(reading.currentA), "current");
  return {
    voltageV: { lo: Math.max(0, voltageV.lo), hi: voltageV.hi },
    currentA: { lo: Math.max(0, currentA.lo) / pieces, hi: currentA.hi / pieces },
    nominalV: figureValue(reading.voltageV),
    nominalA: figureValue(reading.currentA) / pieces,
  };
}

/** How a filament's handbook doubts itself: current as V^0.55, power as V^1.6. */
const FILAMENT_EXPONENTS = [FILAMENT_CURRENT_EXPONENT, 0.6] as const;

/**
 * What is this load, by its readings of volts and amps? A ballasted LED: forward volts and resistor, from two readings alone, or from one with the
 * class's forward volts; a filament, a regulated or a switch-mode load from one. Every span is as wide as the meters make it.
 * Missing: `drawReadings`, `class`. Refused, naming the readings by their place in the list from 1: `reading-not-positive`, `reading-too-wide`,
 * `current-falls-as-volts-rise`, `rises-too-little` (no forward volts fit: not a ballasted LED), `readings-apart`.
 */
export function fitLamp(readings: readonly DrawReading[], prior: LampPrior): Outcome<LampFit> {
  if (readings.length === 0) return missing("drawReadings");
  const bad = readings.findIndex(({ voltageV, currentA }) => !(figureValue(voltageV) > 0 && figureValue(currentA) > 0));
  if (bad >= 0)
    return refused(
      "reading-not-positive",
      `reading ${bad + 1}: volts and amps above 0 are wanted, read while it is on`,
    );
  const spanned = readings.map(spannedOf);
  const wide = spanned.findIndex(({ voltageV, currentA }) => !(voltageV.lo > 0 && currentA.lo > 0));
  if (wide >= 0)
    return refused(
      "reading-too-wide",
      `reading ${wide + 1}: the meter's doubt is as large as what it read; clamp several pieces together, or use a finer meter`,
    );
  if (prior.class === undefined) return missing("class");
  const kind = KIND_OF_CLASS[prior.class] ?? "current";
  const mayFall = kind === "power";
  if (!mayFall) {
    const falls = fallingPair(spanned);
    if (falls)
      return refused(
        "current-falls-as-volts-rise",
        `readings ${falls[0]} and ${falls[1]}: fewer amps at more volts; only a switch-mode driver does that, or one of them is wrong`,
      );
  }
  if (kind === "led") {
    const line = fitLine(spanned, prior);
    return line.kind === "known" ? known({ kind: "led", ...line.value }) : line;
  }
  return fitFigure(kind, spanned);
}

/** Two readings, by their place from 1, of which the one at more volts has fewer amps, whatever the meters. */
function fallingPair(readings: readonly SpannedReading[]): readonly [number, number] | undefined {
  for (const [i, low] of readings.entries())
    for (const [j, high] of readings.entries())
      if (low.voltageV.hi < high.voltageV.lo && low.currentA.lo > high.currentA.hi) return [i + 1, j + 1];
  return undefined;
}

const KIND_OF_CLASS: Readonly<Partial<Record<LoadClass, LampFit["kind"]>>> = {
  "led-resistor": "led",
  "led-driver": "power",
  electronics: "power",
  filament: "filament",
  valve: "resistance",
  "relay-coil": "resistance",
  "resistive-heater": "resistance",
};

function fitFigure(
  kind: "current" | "power" | "resistance" | "filament",
  readings: readonly SpannedReading[],
): Outcome<LampFit> {
  const exponents = kind === "filament" ? FILAMENT_EXPONENTS : [1];
  let fallback: Span | undefined;
  for (const exponent of exponents) {
    const at = (v: number, a: number) =>
      kind === "current" ? a : kind === "power" ? v * a : kind === "resistance" ? v / a : a / v ** exponent;
    const spans = readings.map(({ voltageV: v, currentA: a }): Span => {
      const corners = [at(v.lo, a.lo), at(v.lo, a.hi), at(v.hi, a.lo), at(v.hi, a.hi)];
      return { lo: Math.min(...corners), hi: Math.max(...corners) };
    });
    const agreed = spans
      .slice(1)
      .reduce<Outcome<Span>>(
        (all, next) => (all.kind === "known" ? intersect(all.value, next) : all),
        known(spans[0]!),
      );
    if (agreed.kind === "known") {
      if (fallback !== undefined) return known({ kind, nominal: (fallback.lo + fallback.hi) / 2, span: fallback });
      const middle =
        readings.reduce((sum, { nominalV, nominalA }) => sum + at(nominalV, nominalA), 0) / readings.length;
      return known({ kind, nominal: Math.min(Math.max(middle, agreed.value.lo), agreed.value.hi), span: agreed.value });
    }
    fallback ??= hull(spans[0]!, ...spans.slice(1));
  }
  return refused(
    "readings-apart",
    `no ${kind === "current" ? "steady current" : kind} fits all ${readings.length} readings, whatever their meters: one is wrong, or the load is of another class`,
  );
}
