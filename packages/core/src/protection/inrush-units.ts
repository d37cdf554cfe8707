/**
 * What stands at the end of the wire in the moments after it is switched on, cold and at rest. Figures are for all pieces of a load together.
 * `ohm` is what limits the current at the first moment, the circuit's own wires not counted.
 */
export type InrushUnit =
  /** Draws what it draws from the first moment on. */
  | { readonly kind: "steady"; readonly currentA: number }
  /** A filament warms: its resistance goes straight with its temperature, its heat goes out by radiation. `heatS`: the heat it holds over its rated watts. */
  | {
      readonly kind: "filament";
      /** At its rated volts and heat. */
      readonly hotOhm: number;
      readonly ratedV: number;
      readonly hotOverCold: number;
      readonly heatS: number;
      readonly hotC: number;
    }
  /** A brush motor runs up against a steady torque: winding, and an inertia that answers like a capacitor of runUpS / ohm. */
  | { readonly kind: "motor"; readonly ohm: number; readonly runningA: number; readonly runUpS: number }
  /** A driver's input capacitor fills through its own resistance; behind it, constant power above `dropOutV`. */
  | {
      readonly kind: "capacitor";
      readonly ohm: number;
      readonly farad: number;
      readonly powerW: number;
      readonly dropOutV: number;
    };

/** Room temperature of a filament before it is switched on. */
export const COLD_C = 20;
const ZERO_K = 273.15;

/** A unit while it is followed in time: a source of `emfV` behind `ohm`, or a steady current. */
export interface UnitState {
  /** Back electromotive force, or volts on the capacitor. */
  emfV: number;
  /** Filament: temperature as a share of its rated one, in kelvin over kelvin. */
  heat: number;
}

export const startOf = (unit: InrushUnit): UnitState => ({
  emfV: 0,
  heat: unit.kind === "filament" ? (COLD_C + ZERO_K) / (unit.hotC + ZERO_K) : 0,
});

/** Resistance of a filament at this share of its rated temperature. */
export function filamentOhm(unit: InrushUnit & { kind: "filament" }, heat: number): number {
  const cold = (COLD_C + ZERO_K) / (unit.hotC + ZERO_K);
  const warmth = (heat - cold) / (1 - cold);
  return (unit.hotOhm / unit.hotOverCold) * (1 + (unit.hotOverCold - 1) * warmth);
}

/**
 * How much of its rated temperature a filament gains in a step at these volts. At its rated volts and heat it stays: what comes in is radiated.
 * Linearly implicit, so that a long step after it is warm does no harm.
 */
export function heatGained(
  unit: InrushUnit & { kind: "filament" },
  heat: number,
  volts: number,
  stepS: number,
): number {
  const cold = (COLD_C + ZERO_K) / (unit.hotC + ZERO_K);
  const ohm = filamentOhm(unit, heat);
  const ohmSlope = ((unit.hotOhm / unit.hotOverCold) * (unit.hotOverCold - 1)) / (1 - cold);
  const inRatio = (volts * volts * unit.hotOhm) / (unit.ratedV * unit.ratedV * ohm);
  // Multiplied out: this runs for every step of every lamp.
  const heat3 = heat * heat * heat;
  const cold4 = cold * cold * cold * cold;
  const outRatio = (heat3 * heat - cold4) / (1 - cold4);
  const scale = (1 - cold) / unit.heatS;
  const slope = (-(inRatio * ohmSlope) / ohm - (4 * heat3) / (1 - cold4)) * scale;
  return (stepS * (inRatio - outRatio) * scale) / (1 - (stepS / 2) * slope);
}

/** What the driver behind its capacitor takes, A: nothing below its drop-out. */
export const driverA = (unit: InrushUnit & { kind: "capacitor" }, volts: number): number =>
  volts >= unit.dropOutV ? unit.powerW / volts : 0;
