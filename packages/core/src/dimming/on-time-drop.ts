import { FILAMENT_CURRENT_EXPONENT, type LoadModel, loadCurrentA } from "../network/index.js";
import { known, type Outcome, refused } from "../quantity/index.js";

/** A load on a wire, fed in pulses. */
export interface PulsedWire {
  /** Behind the loop: what the supply holds while the channel is on. */
  readonly supplyV: number;
  /** Everything in series, out and back: contact, fuse, connectors, wires. */
  readonly loopOhm: number;
  readonly model: LoadModel;
  readonly dutyRatio: number;
}

/** What a dimmed wire does: while on, on the mean, and as heat. */
export interface OnTimeDrop {
  /** At the load while on. */
  readonly onV: number;
  /** In the pulse. */
  readonly onA: number;
  /** In the loop while on: dimming does not lower it, and for a filament raises it. */
  readonly dropV: number;
  /** What the battery pays. */
  readonly meanA: number;
  /** What heats the wire. */
  readonly rmsA: number;
  readonly wireHeatW: number;
  /** Mean power of the load itself. */
  readonly loadW: number;
}

const STEPS = 200;

/**
 * What drops in a wire while PWM dims the load at its end? The load's own current in the pulse over the whole loop; the mean goes by the duty and the
 * heat by its root. A filament glows by its mean heat, so that it is cooler and of less resistance when dimmed: its pulse is stronger than its
 * full current, by duty^-0.225 on stiff volts. Without inductance and without a capacitor at the load: for those see `capacitorInput`.
 * Refused: `duty-out-of-range` (0 to 1), `loop-out-of-range`, `volts-out-of-range`, `not-a-load` (a source that holds its volts).
 */
export function onTimeDrop(wire: PulsedWire): Outcome<OnTimeDrop> {
  const { supplyV, loopOhm, model, dutyRatio } = wire;
  if (!(dutyRatio >= 0 && dutyRatio <= 1))
    return refused("duty-out-of-range", `duty lies between 0 and 1, got ${dutyRatio}`);
  if (!(loopOhm >= 0 && Number.isFinite(loopOhm)))
    return refused("loop-out-of-range", `the loop has 0 ohm or more, got ${loopOhm}`);
  if (!(supplyV >= 0 && Number.isFinite(supplyV)))
    return refused("volts-out-of-range", `the supply has 0 V or more, got ${supplyV}`);
  if (model.kind === "regulated") return refused("not-a-load", "a source that holds its volts is no load to dim");
  const onV = dutyRatio === 0 ? supplyV : voltsAtLoad(wire);
  const onA = dutyRatio === 0 ? 0 : pulseA(model, onV, dutyRatio);
  const rmsA = Math.sqrt(dutyRatio) * onA;
  return known({
    onV,
    onA,
    dropV: supplyV - onV,
    meanA: dutyRatio * onA,
    rmsA,
    wireHeatW: rmsA * rmsA * loopOhm,
    loadW: dutyRatio * onA * onV,
  });
}

/** Current in the pulse at these volts in the pulse. A filament's resistance is the one that the mean heat, duty^0.5 of the volts, would give it. */
export function pulseA(model: LoadModel, onV: number, dutyRatio: number): number {
  if (model.kind !== "filament" || dutyRatio <= 0 || onV <= 0) return loadCurrentA(model, onV);
  const heatingV = Math.sqrt(dutyRatio) * onV;
  return (onV * loadCurrentA(model, heatingV)) / heatingV;
}

/** How much stronger than at full is a filament's pulse, on stiff volts? Computed from the published current exponent. */
export const filamentPulseRatio = (dutyRatio: number): number => dutyRatio ** ((FILAMENT_CURRENT_EXPONENT - 1) / 2);

/** Volts left at the load while on. Of the two points of a constant-power load, the upper: the one it comes to from full volts. */
function voltsAtLoad({ supplyV, loopOhm, model, dutyRatio }: PulsedWire): number {
  let lo = 0;
  let hi = supplyV;
  if (model.kind === "power") {
    const inside = supplyV * supplyV - 4 * loopOhm * model.powerW;
    const upperV = inside < 0 ? -1 : (supplyV + Math.sqrt(inside)) / 2;
    if (upperV >= model.dropOutV) return upperV;
    hi = Math.min(supplyV, model.dropOutV);
  }
  // What is over rises with the volts at the load, so that halving cannot miss.
  for (let step = 0; step < STEPS && hi - lo > 1e-13 * supplyV; step++) {
    const mid = (lo + hi) / 2;
    if (mid + loopOhm * pulseA(model, mid, dutyRatio) > supplyV) hi = mid;
    else lo = mid;
  }
  return (lo + hi) / 2;
}
