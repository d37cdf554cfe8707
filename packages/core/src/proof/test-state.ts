import type { Circuit, CircuitId, CoachIndex, LoadClass } from "../record/index.js";

const NEVER_OFF: ReadonlySet<LoadClass> = new Set(["detector", "electronics"]);

/** Does this circuit feed a life-safety detector? */
export const feedsDetector = (index: CoachIndex, circuit: Circuit): boolean =>
  (circuit.loads ?? []).some((id) => index.loads.get(id)?.class === "detector");

/**
 * Which circuits stay on whatever is pressed? Those on a plain fuse that feed only detectors and electronics without a switch of their own.
 * Common practice, no source.
 */
export function alwaysOn(index: CoachIndex): CircuitId[] {
  return [...index.circuits.values()]
    .filter(
      (circuit) =>
        circuit.module === undefined &&
        circuit.isSpare !== true &&
        (circuit.loads ?? []).length > 0 &&
        (circuit.loads ?? []).every((id) => {
          const load = index.loads.get(id);
          return load?.class !== undefined && NEVER_OFF.has(load.class) && load.hasOwnSwitch !== true;
        }),
    )
    .map((circuit) => circuit.id);
}

/** The record as if it had only these circuits: what is off carries nothing, and the network is built in half the time. Paths stay those of the whole record. */
export function indexOfOnly(index: CoachIndex, on: readonly CircuitId[]): CoachIndex {
  const kept: ReadonlySet<string> = new Set(on);
  return {
    ...index,
    circuits: new Map([...index.circuits].filter(([id]) => kept.has(id))),
    circuitsOfModule: new Map(
      [...index.circuitsOfModule].map(([id, circuits]) => [id, circuits.filter((each) => kept.has(each.id))]),
    ),
  };
}
