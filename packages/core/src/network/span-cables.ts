import { known, type Outcome, type Span } from "../quantity/index.js";
import type { CableId } from "../record/index.js";
import { type CableFlow, cableNeeds, type Ends } from "./cable-flow.js";
import type { CoachNetwork } from "./coach-network.js";
import type { CoachSpans, Spanned } from "./results.js";
import type { CornerSolver } from "./span-corners.js";
import type { Enclosure } from "./span-enclosure.js";
import { type Cornered, spanned } from "./spanned.js";

/** A current between two ends, as an interval. */
interface Drawn {
  readonly ends: Ends;
  readonly lo: number;
  readonly hi: number;
}

/** Spans of the currents in the cables, and what they carry at least where some of it is not known. */
export function cableSpans(
  coach: CoachNetwork,
  flow: CableFlow,
  nominal: CoachSpans["nominal"],
  box: Enclosure,
  corners: CornerSolver | undefined,
): Pick<CoachSpans, "cableA" | "cableDropV" | "cableAtLeastA"> {
  const { drawn, unknown, unplacedA } = currentsOf(coach, flow, box);
  const needs = cableNeeds(coach, flow);
  const cableA = new Map<CableId, Outcome<Spanned>>();
  const cableDropV = new Map<CableId, Outcome<Spanned>>();
  const cableAtLeastA = new Map<CableId, number>();
  const putDrop = (id: CableId, current: Outcome<Spanned>, ohm: Span, exact: Cornered | undefined) => {
    const drop = nominal.cableDropV.get(id)!;
    if (drop.kind !== "known") cableDropV.set(id, drop);
    else if (current.kind === "known") {
      const { lo, hi } = current.value.span;
      cableDropV.set(id, known(spanned(drop.value, { lo: Math.max(0, lo) * ohm.lo, hi: hi * ohm.hi }, exact)));
    }
  };
  for (const { cable, branch, edge } of coach.cables) {
    const found = nominal.cableA.get(cable.id)!;
    if (edge < 0) {
      cableAtLeastA.set(cable.id, 0);
      const none = known(spanned(0, { lo: 0, hi: 0 }, undefined));
      cableA.set(cable.id, found.kind === "known" ? none : found);
      cableDropV.set(cable.id, none);
      continue;
    }
    if (flow.isInLoop(edge)) {
      cableAtLeastA.set(cable.id, 0);
      const whole = { lo: 0, hi: loopMostA(coach, box) };
      const current = found.kind === "known" ? known(spanned(found.value, whole, undefined)) : found;
      cableA.set(cable.id, current);
      putDrop(cable.id, current, coach.ohmSpan[branch]!, undefined);
      continue;
    }
    const sum = through(flow, edge, drawn);
    // What is not known may run against what is, so it can take from the least as well.
    const doubt = through(flow, edge, unknown);
    const strayA = needs[edge]!.size > 0 ? unplacedA : 0;
    cableAtLeastA.set(cable.id, sizeOf({ lo: sum.lo + doubt.lo - strayA, hi: sum.hi + doubt.hi + strayA }).lo);
    const exact = corners?.setCurrent(corners.loadsOf(branch));
    const size = sizeOf(sum);
    const current =
      found.kind === "known"
        ? known(spanned(found.value, size, exact && { ...exact, span: sizeOf(exact.span) }))
        : found;
    cableA.set(cable.id, current);
    putDrop(cable.id, current, coach.ohmSpan[branch]!, corners?.branchDrop(branch));
  }
  return { cableA, cableDropV, cableAtLeastA };
}

function currentsOf(coach: CoachNetwork, flow: CableFlow, box: Enclosure) {
  const drawn: Drawn[] = [];
  const unknown: Drawn[] = [];
  let unplacedA = 0;
  const draw = (ends: Ends, k: number) => drawn.push({ ends, lo: box.loadLoA[k]!, hi: box.loadHiA[k]! });
  coach.circuits.forEach((wiring, c) => {
    if (wiring.isCutOff) return;
    const ends = flow.endsOf(wiring);
    unknown.push({ ends, lo: 0, hi: box.unknownHiA[c]! });
    const isUnplaced = wiring.feedNode < 0 || wiring.returnNode < 0;
    if (isUnplaced) unplacedA += box.unknownHiA[c]!;
    for (const load of wiring.loads) {
      if (load.networkLoad < 0) continue;
      draw(ends, load.networkLoad);
      if (isUnplaced) unplacedA += Math.max(0, box.loadHiA[load.networkLoad]!);
    }
  });
  for (const k of [...coach.modules.map((one) => one.quiescentLoad), ...coach.supplies.map((one) => one.load)])
    if (k >= 0) draw(coach.network.loads[k]!, k);
  return { drawn, unknown, unplacedA };
}

/** What these currents together put through a cable that is the only way, signed. */
function through(flow: CableFlow, edge: number, drawn: readonly Drawn[]): Span {
  let lo = 0;
  let hi = 0;
  for (const one of drawn) {
    const share = flow.share(edge, one.ends);
    if (!share) continue;
    lo += share > 0 ? one.lo : -one.hi;
    hi += share > 0 ? one.hi : -one.lo;
  }
  return { lo, hi };
}

/** The size of a current whichever way it runs. */
const sizeOf = (sum: Span): Span => {
  if (sum.lo >= 0) return sum;
  if (sum.hi <= 0) return { lo: -sum.hi, hi: -sum.lo };
  return { lo: 0, hi: Math.max(-sum.lo, sum.hi) };
};

/** In a loop no cable carries more than every load and every supply together; with several batteries, what one may push into another comes on top. */
function loopMostA(coach: CoachNetwork, box: Enclosure): number {
  let mostA = 0;
  for (let k = 0; k < box.loadLoA.length; k++) mostA += Math.max(Math.abs(box.loadLoA[k]!), Math.abs(box.loadHiA[k]!));
  for (const unknownA of box.unknownHiA) mostA += unknownA;
  const batteries = coach.supplies.filter((supply) => supply.branch >= 0);
  if (batteries.length > 1) {
    const emf = batteries.map((battery) => coach.emfSpan[battery.branch]!);
    const apartV = Math.max(...emf.map((one) => one.hi)) - Math.min(...emf.map((one) => one.lo));
    mostA += batteries.reduce((sum, battery) => sum + apartV / coach.ohmSpan[battery.branch]!.lo, 0);
  }
  return mostA;
}
