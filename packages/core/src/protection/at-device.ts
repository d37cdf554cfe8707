import type { CoachNetwork } from "../network/index.js";
import { known, missing, type Outcome, refused, type Span } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import { faultCoachOf } from "./fault-coach.js";
import { faultSourceOf, shortCurrent } from "./fault-source.js";

/** The greatest current that a short right behind a device can drive through it. */
export interface ProspectiveAtDevice {
  /** Through the return that is on record. */
  readonly currentA: number;
  /** Up to a short straight to battery negative. */
  readonly span: Span;
}

const NONE: Span = { lo: 0, hi: 0 };

function between(coach: CoachNetwork, from: number, back: number, negative: number): Outcome<ProspectiveAtDevice> {
  const ownReturn = faultSourceOf(coach, from, back);
  const straight = faultSourceOf(coach, from, negative);
  if (straight.kind !== "known") return straight;
  const most = shortCurrent(straight.value, 0, NONE);
  if (ownReturn.kind !== "known") return known({ currentA: most.value, span: most.span });
  const usual = shortCurrent(ownReturn.value, 0, NONE);
  return known({
    currentA: usual.value,
    span: { lo: Math.min(usual.span.lo, most.span.lo), hi: Math.max(usual.span.hi, most.span.hi) },
  });
}

/** What may a short right behind this circuit's fuse drive through it? The device itself counts as no resistance. Missing, refused as `faultAtFarEnd`. */
export function prospectiveAtFuse(index: CoachIndex, circuitId: string): Outcome<ProspectiveAtDevice> {
  const circuit = index.circuits.get(circuitId as never);
  if (circuit === undefined) return refused("no-such-circuit", `the record has no circuit ${circuitId}`);
  if (circuit.isSpare === true) return refused("spare", `${circuitId} is a spare: nothing hangs on it`);
  const built = faultCoachOf(index, circuitId);
  if (built.kind !== "known") return built;
  const wiring = built.value.circuits.find((one) => one.circuit.id === circuit.id)!;
  if (wiring.feedNode < 0) return missing(...wiring.wayNeeds);
  if (wiring.supply === undefined) return refused("not-fed", "no battery reaches this fuse");
  const needs = wiring.supply.toFeeds.needsTo(wiring.feedNode);
  if (needs.length > 0) return missing(...needs);
  const { negative } = wiring.supply;
  return between(built.value, wiring.feedNode, wiring.returnNode < 0 ? negative : wiring.returnNode, negative);
}

/** The end of a cable that is nearer the battery, and the other; undefined where no battery reaches it on its positive side. */
function endsOf(coach: CoachNetwork, cableId: string) {
  const at = coach.cables.find((one) => one.cable.id === cableId);
  if (at === undefined || at.edge < 0) return undefined;
  const edge = coach.edges[at.edge]!;
  for (const supply of coach.supplies) {
    const { by, isReached } = supply.toFeeds;
    if (isReached[edge.a] !== 1 && isReached[edge.b] !== 1) continue;
    const far = by[edge.a] === at.edge ? edge.a : edge.b;
    return { supply, far, near: far === edge.a ? edge.b : edge.a, wiring: at };
  }
  return undefined;
}

/** A short at both ends of a feeder. */
export interface CableFault {
  /** Right behind its device. */
  readonly atSource: ProspectiveAtDevice;
  /** At its far end. */
  readonly atEnd: ProspectiveAtDevice;
}

/** What may a short on this feeder drive through its device? At its far end through the return of a module fed there, where one is. */
export function cableFaultOf(index: CoachIndex, cableId: string): Outcome<CableFault> {
  const built = faultCoachOf(index, "");
  if (built.kind !== "known") return built;
  const coach = built.value;
  const ends = endsOf(coach, cableId);
  if (ends === undefined) return refused("not-fed", `no battery feeds ${cableId}`);
  const needs = [...ends.supply.toFeeds.needsTo(ends.near), ...ends.wiring.needs];
  if (needs.length > 0) return missing(...new Set(needs));
  const { negative } = ends.supply;
  const module = [...index.modules.values()].find((one) => coach.nodeOf.get(one.feedNode ?? "") === ends.far);
  const back = coach.nodeOf.get(module?.returnNode ?? "") ?? negative;
  const atSource = between(coach, ends.near, negative, negative);
  const atEnd = between(coach, ends.far, back, negative);
  if (atSource.kind !== "known") return atSource;
  return atEnd.kind === "known" ? known({ atSource: atSource.value, atEnd: atEnd.value }) : atEnd;
}
