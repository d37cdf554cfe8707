import { type CoachSpans, onlyState, type Spanned, spanCoach } from "../network/index.js";
import { missing, type Outcome } from "../quantity/index.js";
import type { Circuit, CircuitId, CoachIndex, LoadId } from "../record/index.js";
import { indexOfOnly } from "./test-state.js";

/** What a meter should show on one circuit, in the state of its test. */
export interface ExpectedAmounts {
  readonly on: readonly CircuitId[];
  /** The load to probe: the detector where there is one, else the one with the least voltage. */
  readonly load: LoadId | undefined;
  readonly voltage: Outcome<Spanned>;
  readonly current: Outcome<Spanned>;
  readonly without: readonly string[];
}

function leastVoltage(
  index: CoachIndex,
  circuit: Circuit,
  spans: CoachSpans,
): { load?: LoadId; voltage: Outcome<Spanned> } {
  const detectors = (circuit.loads ?? []).filter((id) => index.loads.get(id)?.class === "detector");
  let least: { load: LoadId; voltage: Outcome<Spanned>; nominal: number } | undefined;
  for (const load of detectors.length > 0 ? detectors : (circuit.loads ?? [])) {
    const found = spans.loads.get(load) ?? missing(index.pathOf("loads", load));
    if (found.kind !== "known") return { load, voltage: found };
    const { onV } = found.value;
    if (least === undefined || onV.nominal < least.nominal)
      least = { load, voltage: { kind: "known", value: onV }, nominal: onV.nominal };
  }
  return least ?? { voltage: missing(`${index.pathOf("circuits", circuit.id)}.loads`) };
}

/**
 * What should a meter show at the load and at the fuse with only this circuit on, and what is never off, on battery alone? Volts across the load's own
 * terminals. Missing where any load of the circuit lacks figures: the drop in the wire they share is then not known.
 */
export function expectedAmounts(index: CoachIndex, circuit: Circuit, steady: readonly CircuitId[]): ExpectedAmounts {
  const on = [...new Set([circuit.id, ...steady])];
  const loadsPath = `${index.pathOf("circuits", circuit.id)}.loads`;
  const none = (outcome: Outcome<never>): ExpectedAmounts => ({
    on,
    load: circuit.loads?.[0],
    voltage: outcome,
    current: outcome,
    without: [],
  });
  if ((circuit.loads ?? []).length === 0) return none(missing(loadsPath));
  const spans = spanCoach(indexOfOnly(index, on), onlyState(index, on, circuit.name ?? circuit.id));
  if (spans.kind !== "known") return none(spans);
  const own = spans.value.nominal.leftOut.filter((path) => isOfCircuit(index, circuit, path));
  // A wire of unknown size may carry next to nothing: such an expectation would pass any reading.
  const current: Outcome<Spanned> =
    own.length > 0 ? missing(...own) : (spans.value.circuitA.get(circuit.id) ?? missing(loadsPath));
  const { load, voltage } = leastVoltage(index, circuit, spans.value);
  return {
    on,
    load: load ?? circuit.loads?.[0],
    voltage: current.kind === "known" || voltage.kind !== "known" ? voltage : current,
    current,
    without: spans.value.nominal.leftOut,
  };
}

function isOfCircuit(index: CoachIndex, circuit: Circuit, path: string): boolean {
  const roots = [index.pathOf("circuits", circuit.id), ...(circuit.loads ?? []).map((id) => index.pathOf("loads", id))];
  return roots.some((root) => path === root || path.startsWith(`${root}.`));
}
