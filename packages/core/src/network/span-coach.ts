import { known, type Outcome, refused, type Span } from "../quantity/index.js";
import type { CableId, CircuitId, CoachIndex, LoadId, ModuleId } from "../record/index.js";
import { buildCoach } from "./build-coach.js";
import { CableFlow, type Ends } from "./cable-flow.js";
import type { CircuitWiring, CoachNetwork, LoadWiring } from "./coach-network.js";
import type { CoachSpans, SpanMethod, Spanned, SpannedLoad } from "./results.js";
import { readOff, whyNoPoint } from "./solve-coach.js";
import { NetworkSolver } from "./solver.js";
import { CornerSolver } from "./span-corners.js";
import { type Enclosure, encloseCoach } from "./span-enclosure.js";
import type { CoachState } from "./state.js";

/**
 * Between what may the volts and amperes of this state lie, over every value that the record's figures allow? Exact where the coach's structure proves
 * which corner is the extreme, else a guaranteed enclosure; each result says which. Missing and refused as `solveCoach`; also refused with
 * `span-not-bounded` where no bound can be given.
 */
export function spanCoach(index: CoachIndex, state: CoachState): Outcome<CoachSpans> {
  const built = buildCoach(index, state);
  if (built.kind !== "known") return built;
  const coach = built.value;
  const solver = new NetworkSolver(coach.network);
  const status = solver.run();
  if (status !== "solved") return refused("no-operating-point", whyNoPoint(coach, status, solver.goingOut));
  const flow = new CableFlow(coach);
  const enclosed = encloseCoach(coach, flow);
  if (enclosed.kind !== "known") return enclosed;
  return known(assemble(coach, flow, solver, enclosed.value));
}

function assemble(coach: CoachNetwork, flow: CableFlow, solver: NetworkSolver, box: Enclosure): CoachSpans {
  const nominal = readOff(coach, solver, flow);
  const corners = CornerSolver.of(coach, flow, solver);
  const spanned = (value: number, enclosure: Span, exact: Span | undefined): Spanned => {
    const span = exact ?? enclosure;
    const method: SpanMethod =
      span.hi - span.lo <= 1e-8 * Math.abs(value) ? "point" : exact ? "exact-corners" : "enclosure";
    // The nominal figures are among those allowed: rounding may not put their result outside.
    return { nominal: value, span: { lo: Math.min(span.lo, value), hi: Math.max(span.hi, value) }, method };
  };
  const sumOf = (set: readonly number[]): Span => ({
    lo: set.reduce((sum, k) => sum + box.loadLoA[k]!, 0),
    hi: set.reduce((sum, k) => sum + box.loadHiA[k]!, 0),
  });
  const setsOf = (wiring: CircuitWiring) =>
    wiring.loads.filter((load) => load.networkLoad >= 0).map((load) => load.networkLoad);

  const loads = new Map<LoadId, Outcome<SpannedLoad>>();
  const circuitA = new Map<CircuitId, Outcome<Spanned>>();
  const ofModule = new Map<string, { set: number[]; needs: string[] }>();
  for (const wiring of coach.circuits) {
    const set = setsOf(wiring);
    for (const load of wiring.loads)
      if (!loads.has(load.load.id))
        loads.set(load.load.id, spanOfLoad(coach, nominal, box, corners, wiring, load, spanned));
    const found = nominal.circuitA.get(wiring.circuit.id)!;
    circuitA.set(
      wiring.circuit.id,
      found.kind === "known"
        ? known(spanned(found.value, sumOf(set), set.length > 0 ? corners?.setCurrent(set) : undefined))
        : found,
    );
    if (wiring.circuit.module === undefined) continue;
    const sum = ofModule.get(wiring.circuit.module) ?? { set: [], needs: [] };
    sum.set.push(...set);
    sum.needs.push(...wiring.currentNeeds);
    ofModule.set(wiring.circuit.module, sum);
  }

  const moduleA = new Map<ModuleId, Outcome<Spanned>>();
  const moduleAtLeastA = new Map<ModuleId, number>();
  for (const { module, quiescentLoad } of coach.modules) {
    const set = [...(ofModule.get(module.id)?.set ?? []), quiescentLoad];
    moduleAtLeastA.set(module.id, Math.max(0, sumOf(set).lo));
    const found = nominal.moduleA.get(module.id)!;
    moduleA.set(
      module.id,
      found.kind === "known" ? known(spanned(found.value, sumOf(set), corners?.setCurrent(set))) : found,
    );
  }

  const { cableA, cableAtLeastA } = cableSpans(coach, flow, nominal, box, corners, spanned);
  return { state: coach.state, nominal, loads, circuitA, moduleA, cableA, moduleAtLeastA, cableAtLeastA };
}

type Spanning = (value: number, enclosure: Span, exact: Span | undefined) => Spanned;

function spanOfLoad(
  coach: CoachNetwork,
  nominal: CoachSpans["nominal"],
  box: Enclosure,
  corners: CornerSolver | undefined,
  wiring: CircuitWiring,
  load: LoadWiring,
  spanned: Spanning,
): Outcome<SpannedLoad> {
  const found = nominal.loads.get(load.load.id)!;
  if (found.kind !== "known") return found;
  const k = load.networkLoad;
  const port = box.portOfCircuit[coach.circuits.indexOf(wiring)]!;
  if (port < 0 || !box.core.isFed[port]) return refused("span-not-bounded", "no battery feeds it");
  const { onV, onA, dropV } = found.value;
  return known({
    onV: spanned(onV, { lo: box.loadLoV[k]!, hi: box.loadHiV[k]! }, corners?.loadVolts(k)),
    onA: spanned(onA, { lo: box.loadLoA[k]!, hi: box.loadHiA[k]! }, corners?.setCurrent([k])),
    dropV: spanned(dropV, { lo: box.loadLoDropV[k]!, hi: box.loadHiDropV[k]! }, undefined),
  });
}

function cableSpans(
  coach: CoachNetwork,
  flow: CableFlow,
  nominal: CoachSpans["nominal"],
  box: Enclosure,
  corners: CornerSolver | undefined,
  spanned: Spanning,
) {
  const drawn: { readonly ends: Ends; readonly k: number }[] = [];
  for (const wiring of coach.circuits)
    if (!wiring.isCutOff)
      for (const load of wiring.loads)
        if (load.networkLoad >= 0) drawn.push({ ends: flow.endsOf(wiring), k: load.networkLoad });
  for (const k of [...coach.modules.map((one) => one.quiescentLoad), ...coach.supplies.map((one) => one.load)])
    if (k >= 0) drawn.push({ ends: coach.network.loads[k]!, k });
  const cableA = new Map<CableId, Outcome<Spanned>>();
  const cableAtLeastA = new Map<CableId, number>();
  for (const { cable, branch, edge } of coach.cables) {
    const found = nominal.cableA.get(cable.id)!;
    if (edge < 0) {
      cableAtLeastA.set(cable.id, 0);
      cableA.set(cable.id, found.kind === "known" ? known(spanned(0, { lo: 0, hi: 0 }, undefined)) : found);
      continue;
    }
    const isInLoop = flow.isInLoop(edge);
    const sum = { lo: 0, hi: 0 };
    if (!isInLoop)
      for (const { ends, k } of drawn) {
        const share = flow.share(edge, ends);
        if (!share) continue;
        sum.lo += share > 0 ? box.loadLoA[k]! : -box.loadHiA[k]!;
        sum.hi += share > 0 ? box.loadHiA[k]! : -box.loadLoA[k]!;
      }
    const size = isInLoop ? { lo: 0, hi: loopMostA(coach, box) } : sizeOf(sum);
    cableAtLeastA.set(cable.id, size.lo);
    const exact = corners?.setCurrent(corners.loadsOf(branch));
    cableA.set(cable.id, found.kind === "known" ? known(spanned(found.value, size, exact && sizeOf(exact))) : found);
  }
  return { cableA, cableAtLeastA };
}

/** The size of a current whichever way it runs. */
const sizeOf = (sum: Span): Span => {
  if (sum.lo >= 0) return sum;
  if (sum.hi <= 0) return { lo: -sum.hi, hi: -sum.lo };
  return { lo: 0, hi: Math.max(-sum.lo, sum.hi) };
};

/** In a loop no cable carries more than every load and every supply together; with two batteries, what one may push into the other comes on top. */
function loopMostA(coach: CoachNetwork, box: Enclosure): number {
  let mostA = 0;
  for (let k = 0; k < box.loadLoA.length; k++) mostA += Math.max(Math.abs(box.loadLoA[k]!), Math.abs(box.loadHiA[k]!));
  const batteries = coach.supplies.filter((supply) => supply.branch >= 0);
  if (batteries.length > 1) {
    const emf = batteries.map((battery) => coach.emfSpan[battery.branch]!);
    const apartV = Math.max(...emf.map((one) => one.hi)) - Math.min(...emf.map((one) => one.lo));
    mostA += batteries.reduce((sum, battery) => sum + apartV / coach.ohmSpan[battery.branch]!.lo, 0);
  }
  return mostA;
}
