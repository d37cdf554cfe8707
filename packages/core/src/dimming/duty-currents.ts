import { type CoachState, onlyState, solveCoach } from "../network/index.js";
import { known, missing, type Outcome } from "../quantity/index.js";
import type { Circuit, CircuitId, CoachIndex } from "../record/index.js";

/** What the wire of one circuit carries at one duty, its own channel alone on. Capacitors at drivers are left out: see `driverPulses`. */
export interface CircuitAtDuty {
  readonly dutyRatio: number;
  /** In the pulse. */
  readonly onA: number;
  readonly meanA: number;
  readonly rmsA: number;
  /** Greatest drop of its loads while on, supply's terminals to load and back. */
  readonly dropV: number;
  /** Mean power that the battery's terminals give to this circuit, loads and wires together. */
  readonly meanW: number;
}

/**
 * Which currents flow in this circuit, and how many volts drop while on, duty by duty? From the network, this circuit alone on. Missing: the fields
 * of its currents or its way. Refused as the network.
 */
export function dutyCurrents(
  index: CoachIndex,
  circuit: Circuit,
  duties: readonly number[],
): Outcome<readonly CircuitAtDuty[]> {
  const rows: CircuitAtDuty[] = [];
  const alone = onlyState(index, [circuit.id], "this circuit alone");
  for (const dutyRatio of duties) {
    const state: CoachState = { ...alone, dutyRatio: new Map<CircuitId, number>([[circuit.id, dutyRatio]]) };
    const solved = solveCoach(index, state);
    if (solved.kind !== "known") return solved;
    const current = solved.value.circuitA.get(circuit.id);
    if (current === undefined) return missing(`${index.pathOf("circuits", circuit.id)}.loads`);
    if (current.kind !== "known") return current;
    let dropV = 0;
    let meanW = 0;
    for (const id of circuit.loads ?? []) {
      const load = [...solved.value.loads].find(([each]) => each === id)?.[1];
      if (load === undefined) continue;
      if (load.kind !== "known") return load;
      dropV = Math.max(dropV, load.value.dropV);
      meanW += load.value.meanA * (load.value.onV + load.value.dropV);
    }
    const onA = current.value;
    rows.push({ dutyRatio, onA, meanA: dutyRatio * onA, rmsA: Math.sqrt(dutyRatio) * onA, dropV, meanW });
  }
  return known(rows);
}
