import { driverA, filamentOhm, heatGained, type InrushUnit, startOf, type UnitState } from "./inrush-units.js";

/** What feeds a circuit at the moment it is switched on. */
export interface InrushFeed {
  readonly supplyV: number;
  /** Battery, cables, channel, wire out and back: all that lies before the loads. */
  readonly loopOhm: number;
}

/** Current against time from the moment of switching on. */
export interface InrushCurve {
  readonly timeS: readonly number[];
  readonly currentA: readonly number[];
  /** Integral of current squared from the start, A2s. */
  readonly jouleA2s: readonly number[];
  readonly peakA: number;
  /** Once all is warm, turning and charged. */
  readonly steadyA: number;
  /** Time in which the excess over the steady current falls to 1/e of what it was; 0 where there is none. */
  readonly timeConstantS: number;
  /** Joule integral of the current until the excess is a tenth of the steady current; what a fuse must let through. */
  readonly startJouleA2s: number;
  readonly settledS: number;
}

/** The first step is this part of the quickest time constant there is. */
const FIRST_RATIO = 1e-3;
/** Each step is this part of the time gone by. */
const STEP_RATIO = 0.02;
/** The same for a whole circuit, which is asked for each fuse of the coach: joules within about a hundredth. */
export const COARSE_STEP_RATIO = 0.06;
const LONGEST_S = 60;
/** The start is over once the current is within a tenth of the steady one. */
const SETTLED_RATIO = 1.1;
/** Nothing changes: one step says it. */
const STEADY_S = 0.1;

/** The units while they are followed, and each one through a step as a source behind a resistance: the trapezoidal rule's companion. */
class Followed {
  private readonly states: readonly UnitState[];
  private readonly unitA: Float64Array;
  private readonly heats: Float64Array;
  private readonly emfV: Float64Array;
  private readonly siemens: Float64Array;
  /** Where all units hang, behind the loop. */
  private volts: number;

  constructor(
    private readonly units: readonly InrushUnit[],
    private readonly feed: InrushFeed,
  ) {
    const count = units.length;
    this.states = units.map(startOf);
    this.unitA = new Float64Array(count);
    this.heats = new Float64Array(count);
    this.emfV = new Float64Array(count);
    this.siemens = new Float64Array(count);
    units.forEach((unit, k) => {
      if (unit.kind === "steady") this.unitA[k] = unit.currentA;
      else this.siemens[k] = 1 / (unit.kind === "filament" ? unit.hotOhm / unit.hotOverCold : unit.ohm);
    });
    this.volts = this.commonV();
    for (let k = 0; k < count; k++) this.unitA[k] = this.through(k, this.volts);
  }

  get currentA(): number {
    let sum = 0;
    for (const a of this.unitA) sum += a;
    return sum;
  }

  private commonV(): number {
    const { supplyV, loopOhm } = this.feed;
    if (!(loopOhm > 0)) return supplyV;
    let siemens = 1 / loopOhm;
    let inA = supplyV / loopOhm;
    for (let k = 0; k < this.units.length; k++) {
      siemens += this.siemens[k]!;
      inA += this.units[k]!.kind === "steady" ? -this.unitA[k]! : this.emfV[k]! * this.siemens[k]!;
    }
    return inA / siemens;
  }

  private through(k: number, volts: number): number {
    if (this.units[k]!.kind === "steady") return this.unitA[k]!;
    return Math.max(0, (volts - this.emfV[k]!) * this.siemens[k]!);
  }

  /** What is taken from behind the unit's own resistance: the driver's draw, or the load torque, which only holds back. */
  private backA(k: number): number {
    const unit = this.units[k]!;
    const { emfV } = this.states[k]!;
    if (unit.kind === "capacitor") return driverA(unit, emfV);
    if (unit.kind !== "motor") return 0;
    return emfV > 0 ? unit.runningA : Math.min(unit.runningA, this.unitA[k]!);
  }

  private prepare(k: number, middleV: number, stepS: number): void {
    const unit = this.units[k]!;
    const state = this.states[k]!;
    if (unit.kind === "steady") return;
    if (unit.kind === "filament") {
      this.heats[k] = state.heat + heatGained(unit, state.heat, middleV, stepS);
      this.siemens[k] = 1 / filamentOhm(unit, this.heats[k]!);
      return;
    }
    const half = stepS / (2 * faradOf(unit));
    this.emfV[k] = state.emfV + half * (this.unitA[k]! - 2 * this.backA(k));
    this.siemens[k] = 1 / (unit.ohm + half);
  }

  /** One step of all units together. Twice: the second time with the volts of the middle of the step. */
  step(stepS: number): void {
    const beforeV = this.volts;
    for (let pass = 0; pass < 2; pass++) {
      for (let k = 0; k < this.units.length; k++) this.prepare(k, (beforeV + this.volts) / 2, stepS);
      this.volts = this.commonV();
    }
    for (let k = 0; k < this.units.length; k++) {
      const unit = this.units[k]!;
      const state = this.states[k]!;
      const now = this.through(k, this.volts);
      if (unit.kind === "filament") state.heat = this.heats[k]!;
      else if (unit.kind !== "steady") {
        const half = stepS / (2 * faradOf(unit));
        state.emfV = Math.max(0, state.emfV + half * (this.unitA[k]! + now - 2 * this.backA(k)));
      }
      this.unitA[k] = now;
    }
  }
}

const faradOf = (unit: InrushUnit): number =>
  unit.kind === "motor" ? unit.runUpS / unit.ohm : unit.kind === "capacitor" ? unit.farad : 0;

/** The quickest of them: what the first step is measured by. */
function quickestS(units: readonly InrushUnit[], feed: InrushFeed): number {
  let least = 1e-2;
  for (const unit of units) {
    if (unit.kind === "filament") least = Math.min(least, unit.heatS / unit.hotOverCold ** 2);
    if (unit.kind === "motor") least = Math.min(least, unit.runUpS);
    if (unit.kind === "capacitor") least = Math.min(least, unit.farad * (unit.ohm + feed.loopOhm));
  }
  return Math.max(1e-9, least);
}

/** How long to follow: until the slowest of them has had time to come to rest. */
function horizonS(units: readonly InrushUnit[], feed: InrushFeed): number {
  let longest = 1e-3;
  for (const unit of units) {
    if (unit.kind === "filament") longest = Math.max(longest, 4 * unit.heatS);
    if (unit.kind === "motor") longest = Math.max(longest, 12 * unit.runUpS * (1 + feed.loopOhm / unit.ohm));
    if (unit.kind === "capacitor") longest = Math.max(longest, 15 * unit.farad * (unit.ohm + feed.loopOhm));
  }
  return Math.min(LONGEST_S, longest);
}

/**
 * What current do these loads draw, moment by moment, when one switch closes on all of them? Each is a source behind a resistance that changes as it
 * warms, turns or charges; they share the loop before them. Trapezoidal rule on steps that grow with the time gone by. Inductance is left out:
 * it only makes the first moment milder.
 */
export function inrushCurve(
  units: readonly InrushUnit[],
  feed: InrushFeed,
  stepRatio: number = STEP_RATIO,
): InrushCurve {
  const followed = new Followed(units, feed);
  const timeS = [0];
  const currentA = [followed.currentA];
  const jouleA2s = [0];
  const isSteady = units.every((unit) => unit.kind === "steady");
  const endS = isSteady ? STEADY_S : horizonS(units, feed);
  const firstS = isSteady ? STEADY_S : FIRST_RATIO * quickestS(units, feed);
  for (let t = 0; t < endS; ) {
    const stepS = Math.max(firstS, stepRatio * t);
    followed.step(stepS);
    t += stepS;
    const before = currentA.at(-1)!;
    const now = followed.currentA;
    timeS.push(t);
    currentA.push(now);
    // Simpson on a straight current: exact for it.
    jouleA2s.push(jouleA2s.at(-1)! + (stepS * (before * before + before * now + now * now)) / 3);
  }
  return summed(timeS, currentA, jouleA2s);
}

/** Where the current last falls through this level: between which two moments, and how far along. */
function lastThrough(
  currentA: readonly number[],
  levelA: number,
): { readonly before: number; readonly share: number } | undefined {
  const before = currentA.findLastIndex((a) => a > levelA);
  if (before < 0) return undefined;
  if (before === currentA.length - 1) return { before: before - 1, share: 1 };
  return { before, share: (currentA[before]! - levelA) / (currentA[before]! - currentA[before + 1]!) };
}

const along = (values: readonly number[], at: ReturnType<typeof lastThrough>): number =>
  at === undefined ? 0 : values[at.before]! + at.share * (values[at.before + 1]! - values[at.before]!);

function summed(timeS: readonly number[], currentA: readonly number[], jouleA2s: readonly number[]): InrushCurve {
  const steadyA = currentA.at(-1)!;
  const peakA = currentA.reduce((a, b) => Math.max(a, b), 0);
  const excess = currentA[0]! - steadyA;
  const settled = lastThrough(currentA, SETTLED_RATIO * steadyA);
  const isFalling = excess > 1e-9 * peakA;
  return {
    timeS,
    currentA,
    jouleA2s,
    peakA,
    steadyA,
    timeConstantS: isFalling ? along(timeS, lastThrough(currentA, steadyA + excess / Math.E)) : 0,
    startJouleA2s: along(jouleA2s, settled),
    settledS: along(timeS, settled),
  };
}

/** The current at any time after switching on, A; between two steps straight. */
export function inrushAt(curve: InrushCurve, atS: number): number {
  const { timeS, currentA } = curve;
  if (atS <= 0) return currentA[0]!;
  const above = timeS.findIndex((t) => t >= atS);
  if (above < 0) return curve.steadyA;
  const share = (atS - timeS[above - 1]!) / (timeS[above]! - timeS[above - 1]!);
  return currentA[above - 1]! + share * (currentA[above]! - currentA[above - 1]!);
}
