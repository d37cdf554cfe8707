import { known, type Outcome, refused, type Span } from "../quantity/index.js";
import type { CircuitWiring, CoachNetwork } from "./coach-network.js";
import { type CoreBounds, coreBounds, type Port } from "./span-core.js";
import { LoadRanges } from "./span-currents.js";
import { unknownMostOfA } from "./unknown-current.js";

/** A load whose way is not known is taken to get at least this share of the coach's volts: below it, it would be seen not to work. Common practice, no source. */
const WORKS_RATIO = 0.75;
const MOST_ROUNDS = 200;

/** Intervals that hold every operating point which the record's figures and their tolerances allow. */
export interface Enclosure {
  readonly core: CoreBounds;
  /** By network load. */
  readonly loadLoV: Float64Array;
  readonly loadHiV: Float64Array;
  readonly loadLoA: Float64Array;
  readonly loadHiA: Float64Array;
  readonly loadLoDropV: Float64Array;
  readonly loadHiDropV: Float64Array;
  /** By circuit: the known loads, and what the unknown ones may add. */
  readonly unknownHiA: readonly number[];
  /** The ports, and for each circuit and module its own. */
  readonly portOfCircuit: readonly number[];
  readonly portOfModule: readonly number[];
}

interface Spur {
  readonly port: number;
  readonly loads: readonly { readonly k: number; readonly tail: Span }[];
  readonly way: Span;
  readonly isKnown: boolean;
  readonly unknownHiA: number;
}

const NOTHING: Span = { lo: 0, hi: 0 };

/** The most that the unknown loads of this circuit may go on drawing: nothing where all are known. */
export const unknownMostA = (coach: CoachNetwork, wiring: CircuitWiring): number =>
  wiring.currentNeeds.length === 0 ? 0 : unknownMostOfA(coach.index, wiring.circuit);

/**
 * Encloses every operating point: starts from the widest volts a load can have and narrows them by the network's own equation
 * V(load) = V0 - R(battery) sum I - sum Z I - R(own way) I, each side an interval, until they stand still. What is cut away holds no operating point, so
 * the rest holds them all. Refused where there is no battery.
 */
export function encloseCoach(coach: CoachNetwork): Outcome<Enclosure> {
  const batteries = coach.supplies.filter((supply) => supply.branch >= 0);
  const first = batteries[0];
  if (!first)
    return refused("span-not-bounded", "no battery is connected: volts held by chargers alone are not bounded here");
  const ports: Port[] = [];
  const portAt = new Map<string, number>();
  const portOf = (positive: number, negative: number): number => {
    const key = `${positive}/${negative}`;
    const found = portAt.get(key);
    if (found !== undefined) return found;
    portAt.set(key, ports.length);
    ports.push({ positive, negative });
    return ports.length - 1;
  };
  const spurs: Spur[] = [];
  const portOfCircuit = coach.circuits.map((wiring) => {
    const start = wiring.outBranch >= 0 ? coach.network.branches[wiring.outBranch]!.from : wiring.farNode;
    const port = wiring.isCutOff ? -1 : portOf(start, wiring.joinedReturn);
    const loads = wiring.loads
      .filter((load) => load.networkLoad >= 0)
      .map((load) => ({ k: load.networkLoad, tail: load.tail?.span ?? NOTHING }));
    const isKnown = wiring.wayNeeds.length === 0 && wiring.loads.every((load) => load.tailNeeds.length === 0);
    const way = {
      lo: (wiring.out?.span.lo ?? 0) + (wiring.back?.span.lo ?? 0),
      hi: (wiring.out?.span.hi ?? 0) + (wiring.back?.span.hi ?? 0),
    };
    spurs.push({ port, loads, way, isKnown, unknownHiA: unknownMostA(coach, wiring) });
    return port;
  });
  const single = (from: number, to: number, k: number): number => {
    const port = portOf(from, to);
    spurs.push({ port, loads: [{ k, tail: NOTHING }], way: NOTHING, isKnown: true, unknownHiA: 0 });
    return port;
  };
  const portOfModule = coach.modules.map(({ quiescentLoad }) => {
    const { from, to } = coach.network.loads[quiescentLoad]!;
    return single(from, to, quiescentLoad);
  });
  for (const supply of coach.supplies) if (supply.load >= 0) single(supply.positive, supply.negative, supply.load);
  const portOfBattery = batteries.map((battery) => portOf(battery.positive, battery.negative));
  const core = coreBounds(coach, ports);
  const fed = spurs.filter((spur) => spur.port >= 0 && core.isFed[spur.port]);
  return known(
    narrow(coach, core, fed, portOfBattery, {
      portOfCircuit,
      portOfModule,
      unknownHiA: spurs.slice(0, coach.circuits.length).map((s) => s.unknownHiA),
    }),
  );
}

function narrow(
  coach: CoachNetwork,
  core: CoreBounds,
  spurs: readonly Spur[],
  portOfBattery: readonly number[],
  rest: Pick<Enclosure, "portOfCircuit" | "portOfModule" | "unknownHiA">,
): Enclosure {
  const batteries = coach.supplies.filter((supply) => supply.branch >= 0);
  const ownOhm = batteries.length === 1 ? coach.ohmSpan[batteries[0]!.branch]! : NOTHING;
  const rest0 = restVolts(coach, core, portOfBattery);
  let topV = rest0.topV;
  for (const supply of coach.supplies) {
    const model = supply.load >= 0 ? coach.loadBounds[supply.load]!.least : undefined;
    if (model?.kind === "regulated") topV = Math.max(topV, model.setV);
  }
  const count = core.ports.length;
  const loads = coach.network.loads.length;
  const ranges = new LoadRanges(coach.loadBounds);
  // Where returns are shared across feeders a starved load's volts may even turn round.
  const loadLoV = new Float64Array(loads).fill(-topV);
  const loadHiV = new Float64Array(loads).fill(topV);
  const loadLoDropV = new Float64Array(loads);
  const loadHiDropV = new Float64Array(loads);
  const portLoA = new Float64Array(count);
  const portHiA = new Float64Array(count);
  const coreLoV = new Float64Array(count);
  const coreHiV = new Float64Array(count);
  // Rounding of the sums here, far below any figure's doubt.
  const slackV = 1e-11 * topV;
  const worksV = WORKS_RATIO * coach.nominalV;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    portLoA.fill(0);
    portHiA.fill(0);
    for (const spur of spurs) {
      for (const { k } of spur.loads) {
        const lo = spur.isKnown ? loadLoV[k]! : Math.min(worksV, loadHiV[k]!);
        ranges.at(k, { lo, hi: loadHiV[k]! });
        portLoA[spur.port]! += ranges.lo[k]!;
        portHiA[spur.port]! += ranges.hi[k]!;
      }
      portHiA[spur.port]! += spur.unknownHiA;
    }
    let sumLoA = 0;
    let sumHiA = 0;
    for (let p = 0; p < count; p++) {
      sumLoA += portLoA[p]!;
      sumHiA += portHiA[p]!;
    }
    const own = times(ownOhm, sumLoA, sumHiA);
    for (let j = 0; j < count; j++) {
      let lo = 0;
      let hi = 0;
      for (let k = 0; k < count; k++) {
        const a = portLoA[k]!;
        const b = portHiA[k]!;
        const zl = core.lo[j * count + k]!;
        const zh = core.hi[j * count + k]!;
        lo += Math.min(zl * a, zl * b, zh * a, zh * b);
        hi += Math.max(zl * a, zl * b, zh * a, zh * b);
      }
      coreLoV[j] = lo;
      coreHiV[j] = hi;
    }
    let moved = 0;
    for (const spur of spurs) {
      let circuitLo = 0;
      let circuitHi = spur.unknownHiA;
      for (const { k } of spur.loads) {
        circuitLo += ranges.lo[k]!;
        circuitHi += ranges.hi[k]!;
      }
      const way = times(spur.way, circuitLo, circuitHi);
      for (const { k, tail } of spur.loads) {
        const last = times(tail, ranges.lo[k]!, ranges.hi[k]!);
        loadLoDropV[k] = coreLoV[spur.port]! + way.lo + last.lo - slackV;
        loadHiDropV[k] = coreHiV[spur.port]! + way.hi + last.hi + slackV;
        const lo = Math.max(loadLoV[k]!, rest0.lo[spur.port]! - own.hi - loadHiDropV[k]!);
        const hi = Math.min(loadHiV[k]!, rest0.hi[spur.port]! - own.lo - loadLoDropV[k]!);
        moved = Math.max(moved, lo - loadLoV[k]!, loadHiV[k]! - hi);
        loadLoV[k] = lo;
        loadHiV[k] = Math.max(lo, hi);
      }
    }
    if (moved < 1e-9 * topV) break;
  }
  if (batteries.length > 1) {
    // Then the drop is measured from terminals that move themselves.
    const terminalLoV = Math.min(...portOfBattery.map((p) => rest0.lo[p]! - coreHiV[p]!));
    const terminalHiV = Math.min(topV, Math.max(...portOfBattery.map((p) => rest0.hi[p]! - coreLoV[p]!)));
    for (let k = 0; k < loads; k++) {
      loadLoDropV[k] = terminalLoV - loadHiV[k]! - slackV;
      loadHiDropV[k] = terminalHiV - loadLoV[k]! + slackV;
    }
  }
  return { core, loadLoV, loadHiV, loadLoA: ranges.lo, loadHiA: ranges.hi, loadLoDropV, loadHiDropV, ...rest };
}

/**
 * Volts at each port with no load. One battery: its own. Several: were all at E0 every port would be at E0; what each is off by, it adds in the share
 * Z(port, battery) / R(battery), which is never more than one. Where all batteries stand on one negative no way can lead current back into it but through
 * one of them: the shares are then none below nothing, together one, and no port lies outside the batteries' own volts.
 */
function restVolts(coach: CoachNetwork, core: CoreBounds, portOfBattery: readonly number[]) {
  const batteries = coach.supplies.filter((supply) => supply.branch >= 0);
  const emf = batteries.map((battery) => coach.emfSpan[battery.branch]!);
  const count = core.ports.length;
  const first = emf[0]!;
  if (batteries.length === 1)
    return { lo: new Float64Array(count).fill(first.lo), hi: new Float64Array(count).fill(first.hi), topV: first.hi };
  const isOneNegative = batteries.every((battery) => battery.negative === batteries[0]!.negative);
  const leastV = Math.min(...emf.map((one) => one.lo));
  const mostV = Math.max(...emf.map((one) => one.hi));
  const middleV = emf.reduce((sum, one) => sum + (one.lo + one.hi) / 2, 0) / emf.length;
  const lo = new Float64Array(count).fill(middleV);
  const hi = new Float64Array(count).fill(middleV);
  for (const [s, battery] of batteries.entries()) {
    const ohm = coach.ohmSpan[battery.branch]!;
    const off = { lo: emf[s]!.lo - middleV, hi: emf[s]!.hi - middleV };
    for (let j = 0; j < count; j++) {
      const at = j * count + portOfBattery[s]!;
      const share = {
        lo: Math.max(isOneNegative ? 0 : -1, Math.min(core.lo[at]! / ohm.lo, core.lo[at]! / ohm.hi)),
        hi: Math.min(1, Math.max(core.hi[at]! / ohm.lo, core.hi[at]! / ohm.hi)),
      };
      const ends = [share.lo * off.lo, share.lo * off.hi, share.hi * off.lo, share.hi * off.hi];
      lo[j]! += Math.min(...ends);
      hi[j]! += Math.max(...ends);
    }
  }
  if (isOneNegative) {
    for (let j = 0; j < count; j++) {
      lo[j] = Math.max(leastV, lo[j]!);
      hi[j] = Math.min(mostV, hi[j]!);
    }
    return { lo, hi, topV: mostV };
  }
  // No port can be further apart than all batteries in a row.
  return { lo, hi, topV: emf.reduce((sum, one) => sum + one.hi, 0) };
}

/** A resistance of zero or more times a current. */
const times = (ohm: Span, lo: number, hi: number): Span => ({
  lo: lo >= 0 ? ohm.lo * lo : ohm.hi * lo,
  hi: hi >= 0 ? ohm.hi * hi : ohm.lo * hi,
});
