import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { CableId, CircuitId, CoachIndex, LoadId, ModuleId, SupplyId } from "../record/index.js";
import { buildCoach } from "./build-coach.js";
import { CableFlow, cableNeeds } from "./cable-flow.js";
import type { CircuitWiring, CoachNetwork, LoadWiring } from "./coach-network.js";
import { dropSplit } from "./drop-split.js";
import { probeVolts } from "./probe-volts.js";
import type { CoachSolution, LoadResult } from "./results.js";
import { NetworkSolver, type SolveStatus } from "./solver.js";
import type { CoachState } from "./state.js";

/**
 * What are the volts and amperes of the whole coach in this state? Missing where no supply is known well enough to feed anything; refused with
 * `no-operating-point` where the loads cannot all run, naming those that go out. See `CoachSolution` for what is missing inside a known answer.
 */
export function solveCoach(index: CoachIndex, state: CoachState): Outcome<CoachSolution> {
  const built = buildCoach(index, state);
  if (built.kind !== "known") return built;
  return solutionOf(built.value);
}

/** Solves a coach already built, and reads the results off. */
export function solutionOf(coach: CoachNetwork): Outcome<CoachSolution> {
  const solver = new NetworkSolver(coach.network);
  const status = solver.run();
  if (status !== "solved") return refused("no-operating-point", whyNoPoint(coach, status, solver.goingOut));
  return known(readOff(coach, solver));
}

/** The load of the record that each load of the network is. */
export function loadNames(coach: CoachNetwork): Map<number, string> {
  const names = new Map<number, string>();
  for (const circuit of coach.circuits)
    for (const load of circuit.loads) if (load.networkLoad >= 0) names.set(load.networkLoad, load.load.id);
  return names;
}

export function whyNoPoint(coach: CoachNetwork, status: SolveStatus, goingOut: readonly number[]): string {
  if (status === "going-out") {
    const names = loadNames(coach);
    const which = goingOut.map((k) => names.get(k) ?? String(k)).join(", ");
    return `${which}: drawing its power takes the volts below its drop-out, and when it stops they rise again, so it can neither run nor stay out`;
  }
  return status === "unstable"
    ? "the loads pull the volts down further the less they get: there is no point at which they can stay"
    : "there is no point at which every load gets what it draws";
}

/** On-time current of a circuit: what all its loads draw together. */
const circuitCurrentA = (wiring: CircuitWiring, loadA: ArrayLike<number>): number =>
  wiring.loads.reduce((sum, load) => sum + (load.networkLoad < 0 ? 0 : loadA[load.networkLoad]!), 0);

export function readOff(coach: CoachNetwork, solver: NetworkSolver, flow = new CableFlow(coach)): CoachSolution {
  const { nodeV, branchA, loadA } = solver;
  const loads = new Map<LoadId, Outcome<LoadResult>>();
  const circuitA = new Map<CircuitId, Outcome<number>>();
  const moduleA = new Map<ModuleId, Outcome<number>>();
  const cableA = new Map<CableId, Outcome<number>>();
  const cableDropV = new Map<CableId, Outcome<number>>();
  const supplies = new Map<SupplyId, { currentA: number; terminalV: number }>();
  const moduleSum = new Map<string, { currentA: number; needs: string[] }>();
  for (const wiring of coach.circuits) {
    const { circuit } = wiring;
    const currentA = circuitCurrentA(wiring, loadA);
    circuitA.set(circuit.id, wiring.currentNeeds.length > 0 ? missing(...wiring.currentNeeds) : known(currentA));
    if (circuit.module !== undefined) {
      const sum = moduleSum.get(circuit.module) ?? { currentA: 0, needs: [] };
      sum.currentA += currentA;
      sum.needs.push(...wiring.currentNeeds);
      moduleSum.set(circuit.module, sum);
    }
    const dutyRatio = coach.state.dutyRatio?.get(circuit.id) ?? 1;
    for (const load of wiring.loads)
      if (!loads.has(load.load.id)) loads.set(load.load.id, loadResult(coach, solver, wiring, load, dutyRatio));
  }
  for (const { module, quiescentLoad } of coach.modules) {
    const sum = moduleSum.get(module.id) ?? { currentA: 0, needs: [] };
    moduleA.set(module.id, sum.needs.length > 0 ? missing(...sum.needs) : known(sum.currentA + loadA[quiescentLoad]!));
  }
  const needs = cableNeeds(coach, flow);
  for (const { cable, branch, edge, needs: own } of coach.cables) {
    if (branch < 0) {
      cableA.set(cable.id, known(0));
      cableDropV.set(cable.id, known(0));
      continue;
    }
    const lacks = [...needs[edge]!];
    const currentA = branchA[branch]!;
    cableA.set(cable.id, lacks.length > 0 ? missing(...lacks) : known(Math.abs(currentA)));
    const dropLacks = [...own, ...lacks];
    const dropV = Math.abs(currentA) * coach.network.branches[branch]!.resistanceOhm;
    cableDropV.set(cable.id, dropLacks.length > 0 ? missing(...dropLacks) : known(dropV));
  }
  for (const { supply, branch, load, positive, negative } of coach.supplies)
    supplies.set(supply.id, {
      currentA: branch >= 0 ? branchA[branch]! : -loadA[load]!,
      terminalV: nodeV[positive]! - nodeV[negative]!,
    });
  return {
    state: coach.state,
    nodeV: probeVolts(coach, solver),
    loads,
    circuitA,
    moduleA,
    cableA,
    cableDropV,
    supplies,
    leftOut: coach.leftOut,
    assumed: coach.assumed,
    balance: solver.balance,
    iterations: solver.iterations,
  };
}

function loadResult(
  coach: CoachNetwork,
  solver: NetworkSolver,
  wiring: CircuitWiring,
  load: LoadWiring,
  dutyRatio: number,
): Outcome<LoadResult> {
  const needs = [...wiring.wayNeeds, ...load.currentNeeds, ...load.tailNeeds];
  if (needs.length > 0) return missing(...needs);
  const { supply } = wiring;
  if (wiring.isCutOff || !supply)
    return refused(
      "cut-off",
      "no closed way leads from a supply to this load and back: a disconnect is open or a cable is not on record",
    );
  const { nodeV, branchA, loadA } = solver;
  const { from, to } = coach.network.loads[load.networkLoad]!;
  const onV = nodeV[from]! - nodeV[to]!;
  const onA = loadA[load.networkLoad]!;
  return known({
    onV,
    onA,
    onW: onV * onA,
    meanA: dutyRatio * onA,
    rmsA: Math.sqrt(dutyRatio) * onA,
    dropV: nodeV[supply.positive]! - nodeV[supply.negative]! - onV,
    parts: dropSplit(coach, branchA, supply, wiring, load),
  });
}
