import type { Circuit, CircuitId, CoachIndex } from "../../record/index.js";
import type { Demand } from "../demand.js";

/** Why a circuit stays on its channel. `not-said`: nobody said that the program lets it move. */
export type StayReason =
  | "not-on-module"
  | "spare"
  | "not-said"
  | "program-fixed"
  | "has-detector"
  | "shares-channel"
  | "module-locked"
  | "circuit-locked"
  | "moves-ruled-out";

const isSpare = (circuit: Circuit): boolean => circuit.isSpare === true && (circuit.loads ?? []).length === 0;

/** Circuits that a control stated as `fixed` works. */
const worked = new WeakMap<CoachIndex, ReadonlySet<CircuitId>>();

function workedByFixed(index: CoachIndex): ReadonlySet<CircuitId> {
  const known = worked.get(index);
  if (known !== undefined) return known;
  const found = new Set<CircuitId>();
  for (const control of index.controls.values())
    if (control.program === "fixed")
      for (const action of control.does ?? []) for (const circuit of action.circuits ?? []) found.add(circuit);
  worked.set(index, found);
  return found;
}

/** What keeps this circuit where it is, whatever it feeds; `undefined`: its wires may be worked on. A lock, a shared channel, a detector. */
export function untouchableBecause(index: CoachIndex, demand: Demand, circuit: Circuit): StayReason | undefined {
  const module = circuit.module === undefined ? undefined : index.modules.get(circuit.module);
  if (module === undefined || circuit.channel === undefined) return "not-on-module";
  if (isSpare(circuit)) return "spare";
  if ((circuit.loads ?? []).some((load) => index.loads.get(load)?.class === "detector")) return "has-detector";
  const beside = (index.circuitsOfModule.get(module.id) ?? []).filter(
    (other) => other.channel === circuit.channel && other !== circuit,
  );
  if (beside.length > 0) return "shares-channel";
  if (module.isLocked === true || demand.locked.has(module.id)) return "module-locked";
  if (demand.lockedCircuits.has(circuit.id)) return "circuit-locked";
  return undefined;
}

/**
 * Why may this circuit not go to another channel? `undefined`: it may. The program must let it (`canMove`), no control stated as `fixed` may work it, it feeds no
 * life-safety detector, is alone on its channel, and neither it, a load of it nor its module is locked.
 */
export function staysBecause(index: CoachIndex, demand: Demand, circuit: Circuit): StayReason | undefined {
  const untouchable = untouchableBecause(index, demand, circuit);
  if (untouchable !== undefined) return untouchable;
  if (circuit.canMove !== true) return "not-said";
  if (workedByFixed(index).has(circuit.id)) return "program-fixed";
  if (demand.ruledOut.has("moves")) return "moves-ruled-out";
  return undefined;
}

/** A channel with nothing on it, as the record says. */
export const isSpareEntry = isSpare;
