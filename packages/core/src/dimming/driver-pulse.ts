import { DROP_OUT_RAMP_RATIO } from "../network/index.js";

/** A driver with its input capacitor behind a loop. */
export interface DriverCircuit {
  readonly supplyV: number;
  readonly loopOhm: number;
  readonly capacitanceF: number;
  readonly powerW: number;
  readonly dropOutV: number;
}

/** What one period adds up to. */
export interface PulseSums {
  chargeC: number;
  squareA2s: number;
  runsS: number;
}

/** What the driver takes from its capacitor at these volts: constant power, going out within the last hundredth of its drop-out. */
function driverA({ powerW, dropOutV }: DriverCircuit, atV: number): number {
  if (atV >= dropOutV) return powerW / atV;
  const outV = dropOutV * (1 - DROP_OUT_RAMP_RATIO);
  return atV <= outV ? 0 : ((powerW / dropOutV) * (atV - outV)) / (dropOutV - outV);
}

/** Steps in the quickest time constant, and how close to rest the remainder of a pulse counts as rest. */
const STEPS_IN_CONSTANT = 40;
const AT_REST_RATIO = 1e-12;

/** Runs one pulse from `fromV` at the capacitor and gives the volts at its end. The charge is followed step by step, then held once it is at rest. */
export function chargeOn(circuit: DriverCircuit, fromV: number, onS: number, sums: PulseSums): number {
  const { supplyV, loopOhm, capacitanceF, powerW, dropOutV } = circuit;
  const rise = (atV: number): number => ((supplyV - atV) / loopOhm - driverA(circuit, Math.max(atV, 0))) / capacitanceF;
  const loopS = loopOhm * capacitanceF;
  const rampS = powerW > 0 ? (capacitanceF * dropOutV * dropOutV * DROP_OUT_RAMP_RATIO) / powerW : loopS;
  let atV = fromV;
  let leftS = onS;
  while (leftS > 0) {
    const isNearRamp = atV < 1.02 * dropOutV && atV > 0.95 * dropOutV;
    const h = Math.min(leftS, (isNearRamp ? Math.min(loopS, rampS) : loopS) / STEPS_IN_CONSTANT);
    const a = rise(atV);
    const middleV = atV + (h / 2) * a;
    const b = rise(middleV);
    const c = rise(atV + (h / 2) * b);
    const d = rise(atV + h * c);
    const nextV = atV + (h / 6) * (a + 2 * b + 2 * c + d);
    if (Math.abs(nextV - atV) <= AT_REST_RATIO * supplyV && h < leftS) {
      addTo(sums, circuit, [atV, atV, atV], leftS);
      return atV;
    }
    addTo(sums, circuit, [atV, (atV + nextV) / 2 + (h / 8) * (a - rise(nextV)), nextV], h);
    atV = nextV;
    leftS -= h;
  }
  return atV;
}

function addTo(sums: PulseSums, circuit: DriverCircuit, volts: readonly [number, number, number], timeS: number): void {
  const [first, middle, last] = volts.map((atV) => (circuit.supplyV - atV) / circuit.loopOhm) as [
    number,
    number,
    number,
  ];
  sums.chargeC += (timeS / 6) * (first + 4 * middle + last);
  sums.squareA2s += (timeS / 6) * (first * first + 4 * middle * middle + last * last);
  if ((volts[0] + volts[2]) / 2 >= circuit.dropOutV * (1 - DROP_OUT_RAMP_RATIO)) sums.runsS += timeS;
}

/** Lets the driver live off its capacitor for `offS` and gives the volts left. In closed form: constant power, then the short way out. */
export function drainOff(circuit: DriverCircuit, fromV: number, offS: number, sums: PulseSums): number {
  const { capacitanceF, powerW, dropOutV } = circuit;
  const outV = dropOutV * (1 - DROP_OUT_RAMP_RATIO);
  if (powerW <= 0 || fromV <= outV) {
    if (fromV > outV) sums.runsS += offS;
    return fromV;
  }
  let leftS = offS;
  let atV = fromV;
  if (fromV > dropOutV) {
    const untilS = (capacitanceF * (fromV * fromV - dropOutV * dropOutV)) / (2 * powerW);
    if (untilS >= offS) {
      sums.runsS += offS;
      return Math.sqrt(fromV * fromV - (2 * powerW * offS) / capacitanceF);
    }
    sums.runsS += untilS;
    leftS -= untilS;
    atV = dropOutV;
  }
  const slope = powerW / dropOutV / (dropOutV - outV);
  return outV + (atV - outV) * Math.exp((-slope * leftS) / capacitanceF);
}
