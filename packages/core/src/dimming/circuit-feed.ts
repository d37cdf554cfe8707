import { loadFiguresOf, nominalVOf, onlyState, solveCoach, spanCoach } from "../network/index.js";
import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { Circuit, CoachIndex } from "../record/index.js";
import type { SpannedFeed } from "./driver-pulses.js";

/** What feeds the drivers of a circuit, all as one, and what each of them takes. */
export interface CircuitFeed extends SpannedFeed {
  readonly driverW: ReadonlyMap<string, number>;
}

/**
 * The same for one of the drivers: its own watts behind its share of the loop, which drops on the others' current too. Exact where all have the same
 * capacitor for their watts.
 */
export function feedOfDriver(feed: CircuitFeed, loadId: string): SpannedFeed | undefined {
  const powerW = feed.driverW.get(loadId);
  if (powerW === undefined || !(powerW > 0)) return undefined;
  const times = feed.powerW / powerW;
  return {
    ...feed,
    powerW,
    loopOhm: feed.loopOhm * times,
    loopSpanOhm: { lo: feed.loopSpanOhm.lo * times, hi: feed.loopSpanOhm.hi * times },
  };
}

/**
 * What feeds the drivers of this circuit: the supply's volts with nothing on, and the whole loop out and back, battery included. From the network with this
 * circuit alone on. Missing: the fields of its way or its currents, or a driver. Refused where the network has no answer.
 */
export function circuitFeed(index: CoachIndex, circuit: Circuit): Outcome<CircuitFeed> {
  const nominalV = nominalVOf(index);
  let powerW = 0;
  const driverW = new Map<string, number>();
  let dropOutV = 0;
  let driver: string | undefined;
  for (const id of circuit.loads ?? []) {
    const load = index.loads.get(id);
    if (load?.class !== "led-driver") continue;
    const figures = loadFiguresOf(load, nominalV, index.pathOf("loads", load.id));
    if (figures.kind !== "known") return figures;
    const { nominal } = figures.value;
    if (nominal.kind !== "power") continue;
    powerW += nominal.powerW;
    driverW.set(load.id, nominal.powerW);
    // The first to stop counts: from there on the light is not whole.
    dropOutV = Math.max(dropOutV, nominal.dropOutV);
    driver ??= load.id;
  }
  if (driver === undefined) return missing(`${index.pathOf("circuits", circuit.id)}.loads`);
  const restV = restVoltsOf(index);
  if (restV.kind !== "known") return restV;
  const spans = spanCoach(index, onlyState(index, [circuit.id], "this circuit alone"));
  if (spans.kind !== "known") return spans;
  const spanned = [...spans.value.loads].find(([id]) => id === driver)?.[1];
  if (spanned === undefined) return missing(`${index.pathOf("circuits", circuit.id)}.loads`);
  if (spanned.kind !== "known") return spanned;
  const circuitA = spans.value.circuitA.get(circuit.id);
  if (circuitA?.kind !== "known") return circuitA ?? missing(`${index.pathOf("circuits", circuit.id)}.loads`);
  const amps = circuitA.value;
  if (!(amps.nominal > 0 && amps.span.lo > 0))
    return refused("no-current", "nothing flows in this circuit when it is on");
  const drop = spanned.value.dropV;
  const loopOhm = (restV.value - spanned.value.onV.nominal) / amps.nominal;
  const besideOhm = Math.max(0, loopOhm - drop.nominal / amps.nominal);
  return known({
    supplyV: restV.value,
    loopOhm: Math.max(loopOhm, 1e-4),
    loopSpanOhm: {
      lo: Math.max(besideOhm + Math.max(0, drop.span.lo) / amps.span.hi, 1e-4),
      hi: besideOhm + drop.span.hi / amps.span.lo,
    },
    powerW,
    dropOutV,
    driverW,
  });
}

/** Volts at the battery's terminals with every circuit off. */
function restVoltsOf(index: CoachIndex): Outcome<number> {
  const rest = solveCoach(index, onlyState(index, [], "everything off"));
  if (rest.kind !== "known") return rest;
  const volts = [...rest.value.supplies.values()].map((supply) => supply.terminalV).filter((each) => each > 0);
  return volts.length === 0 ? missing("supplies") : known(Math.max(...volts));
}
