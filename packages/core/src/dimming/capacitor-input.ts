import { known, type Outcome, refused } from "../quantity/index.js";
import { chargeOn, type DriverCircuit, drainOff, type PulseSums } from "./driver-pulse.js";

/** A driver with a capacitor at its input, fed in pulses through a loop of wire. Figures are for all pieces on the wire together. */
export interface CapacitorInput {
  readonly supplyV: number;
  /** Out and back, contact, fuse and the capacitor's own resistance: all that limits the charge. */
  readonly loopOhm: number;
  readonly capacitanceF: number;
  /** What the driver draws while it runs, whatever its volts. */
  readonly powerW: number;
  /** Below it the driver stops. */
  readonly dropOutV: number;
  readonly pwmHz: number;
  readonly dutyRatio: number;
}

/** Once every pulse is like the one before. */
export interface CapacitorInputCurrents {
  /** At the start of each pulse: what is left to charge over the loop. */
  readonly peakA: number;
  /** Of the first pulse into an empty capacitor. */
  readonly firstPeakA: number;
  readonly rmsA: number;
  readonly meanA: number;
  /** At the capacitor, least and most. */
  readonly lowV: number;
  readonly highV: number;
  /** Share of the time that the driver has enough volts to run. 1: its light does not dim. */
  readonly runsRatio: number;
  /** False where it would not start from empty at this duty, though it runs on when dimmed down from full. */
  readonly startsFromEmpty: boolean;
  readonly loopHeatW: number;
}

const MAX_PERIODS = 20_000;
const SETTLED_RATIO = 1e-9;

/**
 * What does a channel feel when it dims a driver that has a capacitor at its input? Each pulse charges the capacitor anew through nothing but the
 * loop: peak, root mean square and mean, once the pulses repeat, coming down from full. Inductance is left out; it can only make the peak smaller.
 * The driver takes constant power, and goes out within the last hundredth of `dropOutV` as in the network. Refused: a figure out of range, by name.
 */
export function capacitorInput(input: CapacitorInput): Outcome<CapacitorInputCurrents> {
  const { supplyV, loopOhm, capacitanceF, powerW, dropOutV, pwmHz, dutyRatio } = input;
  if (!(dutyRatio > 0 && dutyRatio <= 1))
    return refused("duty-out-of-range", `duty lies above 0, at most 1, got ${dutyRatio}`);
  for (const [name, value] of Object.entries({ supplyV, loopOhm, capacitanceF, dropOutV, pwmHz }))
    if (!(value > 0 && Number.isFinite(value)))
      return refused("figure-out-of-range", `${name}: wanted above 0, got ${value}`);
  if (!(powerW >= 0 && Number.isFinite(powerW)))
    return refused("figure-out-of-range", `powerW: wanted 0 W or more, got ${powerW}`);
  const circuit: DriverCircuit = { supplyV, loopOhm, capacitanceF, powerW, dropOutV };
  const onS = dutyRatio / pwmHz;
  const offS = (1 - dutyRatio) / pwmHz;
  const periodFrom = (lowV: number): { highV: number; lowV: number; sums: PulseSums } => {
    const sums: PulseSums = { chargeC: 0, squareA2s: 0, runsS: 0 };
    const highV = chargeOn(circuit, lowV, onS, sums);
    return { highV, lowV: drainOff(circuit, highV, offS, sums), sums };
  };
  const settle = (fromV: number) => {
    let lowV = fromV;
    for (let period = 0; period < MAX_PERIODS; period++) {
      const next = periodFrom(lowV);
      if (Math.abs(next.lowV - lowV) <= SETTLED_RATIO * supplyV) return next;
      lowV = next.lowV;
    }
    return undefined;
  };
  const settled = settle(supplyV);
  if (settled === undefined)
    return refused("does-not-settle", `the capacitor takes more than ${MAX_PERIODS} pulses to come to rest`);
  const runsRatio = Math.min(1, settled.sums.runsS * pwmHz);
  const fromEmpty = settle(0);
  const rmsA = Math.sqrt(settled.sums.squareA2s * pwmHz);
  return known({
    peakA: (supplyV - settled.lowV) / loopOhm,
    firstPeakA: supplyV / loopOhm,
    rmsA,
    meanA: settled.sums.chargeC * pwmHz,
    lowV: settled.lowV,
    highV: settled.highV,
    runsRatio,
    startsFromEmpty: fromEmpty !== undefined && fromEmpty.lowV > settled.lowV - 1e-4 * supplyV,
    loopHeatW: rmsA * rmsA * loopOhm,
  });
}
