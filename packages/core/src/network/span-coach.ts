import { known, type Outcome, refused, type Span } from "../quantity/index.js";
import type { CircuitId, CoachIndex, LoadId, ModuleId } from "../record/index.js";
import { buildCoach } from "./build-coach.js";
import { CableFlow } from "./cable-flow.js";
import type { CircuitWiring, CoachNetwork, LoadWiring } from "./coach-network.js";
import type { CoachSpans, Spanned, SpannedLoad } from "./results.js";
import { readOff, whyNoPoint } from "./solve-coach.js";
import { NetworkSolver } from "./solver.js";
import { cableSpans } from "./span-cables.js";
import { CornerSolver } from "./span-corners.js";
import { type Enclosure, encloseCoach } from "./span-enclosure.js";
import { spanned } from "./spanned.js";
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
  const enclosed = encloseCoach(coach);
  if (enclosed.kind !== "known") return enclosed;
  return known(assemble(coach, flow, solver, enclosed.value));
}

function assemble(coach: CoachNetwork, flow: CableFlow, solver: NetworkSolver, box: Enclosure): CoachSpans {
  const nominal = readOff(coach, solver, flow);
  const corners = CornerSolver.of(coach, flow, solver);
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
      if (!loads.has(load.load.id)) loads.set(load.load.id, spanOfLoad(coach, nominal, box, corners, wiring, load));
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

  const { cableA, cableDropV, cableAtLeastA } = cableSpans(coach, flow, nominal, box, corners);
  return { state: coach.state, nominal, loads, circuitA, moduleA, cableA, cableDropV, moduleAtLeastA, cableAtLeastA };
}

function spanOfLoad(
  coach: CoachNetwork,
  nominal: CoachSpans["nominal"],
  box: Enclosure,
  corners: CornerSolver | undefined,
  wiring: CircuitWiring,
  load: LoadWiring,
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
    dropV: spanned(dropV, { lo: box.loadLoDropV[k]!, hi: box.loadHiDropV[k]! }, corners?.loadDrop(k)),
  });
}
