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
const LONGEST_S = 60;
/** The start is over once the current is within a tenth of the steady one. */
const SETTLED_RATIO = 1.1;
/** Nothing changes: one step says it. */
const STEADY_S = 0.1;

/** One unit through one step, as a source behind a resistance: the trapezoidal rule's companion. `currentA` is drawn beside it. */
interface Companion {
  emfV: number;
  siemens: number;
  currentA: number;
}

interface Followed {
  readonly unit: InrushUnit;
  readonly state: UnitState;
  currentA: number;
}

/** What is taken from behind the unit's own resistance: the driver's draw, or the load torque, which only holds back. */
function backA({ unit, state, currentA }: Followed): number {
  if (unit.kind === "capacitor") return driverA(unit, state.emfV);
  if (unit.kind !== "motor") return 0;
  return state.emfV > 0 ? unit.runningA : Math.min(unit.runningA, currentA);
}

const faradOf = (unit: InrushUnit): number =>
  unit.kind === "motor" ? unit.runUpS / unit.ohm : unit.kind === "capacitor" ? unit.farad : 0;

function companionOf(followed: Followed, stepS: number, heat: number): Companion {
  const { unit, state } = followed;
  switch (unit.kind) {
    case "steady":
      return { emfV: 0, siemens: 0, currentA: unit.currentA };
    case "filament":
      return { emfV: 0, siemens: 1 / filamentOhm(unit, heat), currentA: 0 };
    default: {
      const half = stepS / (2 * faradOf(unit));
      const out = backA(followed);
      return { emfV: state.emfV + half * (followed.currentA - 2 * out), siemens: 1 / (unit.ohm + half), currentA: 0 };
    }
  }
}

/** Volts where all units hang, behind the loop. */
function commonV(companions: readonly Companion[], feed: InrushFeed): number {
  if (!(feed.loopOhm > 0)) return feed.supplyV;
  let siemens = 1 / feed.loopOhm;
  let inA = feed.supplyV / feed.loopOhm;
  for (const each of companions) {
    siemens += each.siemens;
    inA += each.emfV * each.siemens - each.currentA;
  }
  return inA / siemens;
}

const through = (of: Companion, volts: number): number =>
  of.siemens === 0 ? of.currentA : Math.max(0, (volts - of.emfV) * of.siemens);

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

const sumOf = (all: readonly Followed[]): number => all.reduce((sum, each) => sum + each.currentA, 0);

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
export function inrushCurve(units: readonly InrushUnit[], feed: InrushFeed): InrushCurve {
  const all: Followed[] = units.map((unit) => ({ unit, state: startOf(unit), currentA: 0 }));
  const first = all.map((each) => atOnce(each.unit));
  const startV = commonV(first, feed);
  for (let k = 0; k < all.length; k++) all[k]!.currentA = through(first[k]!, startV);
  const timeS = [0];
  const currentA = [sumOf(all)];
  const jouleA2s = [0];
  const isSteady = units.every((unit) => unit.kind === "steady");
  const endS = isSteady ? STEADY_S : horizonS(units, feed);
  const firstS = isSteady ? STEADY_S : FIRST_RATIO * quickestS(units, feed);
  let volts = startV;
  for (let t = 0; t < endS; ) {
    const stepS = Math.max(firstS, STEP_RATIO * t);
    volts = step(all, feed, volts, stepS);
    t += stepS;
    const before = currentA.at(-1)!;
    const now = sumOf(all);
    timeS.push(t);
    currentA.push(now);
    // Simpson on a straight current: exact for it.
    jouleA2s.push(jouleA2s.at(-1)! + (stepS * (before * before + before * now + now * now)) / 3);
  }
  return summed(timeS, currentA, jouleA2s);
}

const atOnce = (unit: InrushUnit): Companion => {
  if (unit.kind === "steady") return { emfV: 0, siemens: 0, currentA: unit.currentA };
  const ohm = unit.kind === "filament" ? unit.hotOhm / unit.hotOverCold : unit.ohm;
  return { emfV: 0, siemens: 1 / ohm, currentA: 0 };
};

/** One step of all units together; gives the volts at its end. Twice: the second time with the volts of the middle of the step. */
function step(all: readonly Followed[], feed: InrushFeed, beforeV: number, stepS: number): number {
  let volts = beforeV;
  let heats: number[] = [];
  let companions: Companion[] = [];
  for (let pass = 0; pass < 2; pass++) {
    const middleV = (beforeV + volts) / 2;
    heats = all.map(({ unit, state }) =>
      unit.kind === "filament" ? state.heat + heatGained(unit, state.heat, middleV, stepS) : 0,
    );
    companions = all.map((each, k) => companionOf(each, stepS, heats[k]!));
    volts = commonV(companions, feed);
  }
  for (let k = 0; k < all.length; k++) {
    const each = all[k]!;
    const now = through(companions[k]!, volts);
    if (each.unit.kind === "filament") each.state.heat = heats[k]!;
    else if (each.unit.kind !== "steady") {
      const half = stepS / (2 * faradOf(each.unit));
      each.state.emfV = Math.max(0, each.state.emfV + half * (each.currentA + now - 2 * backA(each)));
    }
    each.currentA = now;
  }
  return volts;
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
