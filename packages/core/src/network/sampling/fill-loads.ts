import { type CoachIndex, type CoachRecord, indexRecord, type Load, type LoadId } from "../../record/index.js";
import { loadFiguresOf } from "../load-figures.js";
import { unknownMostOfA } from "../unknown-current.js";

export interface FilledCoach {
  readonly index: CoachIndex;
  /** Paths of the currents that were put in. */
  readonly filled: ReadonlySet<string>;
}

/**
 * The coach with a current for every load that has none on record: anything from nothing to what the circuit's fuse would hold, shared out evenly among its
 * unknown loads. A circuit that feeds something nobody has named gets one such load. Without this a sample would count what is not known as nothing.
 */
export function fillLoads(index: CoachIndex, nominalV: number): FilledCoach {
  const { record } = index;
  const circuits = [...(record.circuits ?? [])];
  const loads: Load[] = [...(record.loads ?? [])];
  const placeOf = new Map(loads.map((load, n) => [load.id as string, n]));
  const filled = new Set<string>();
  const unknown = (mostA: number) => ({ value: mostA / 2, basis: "assumed" as const, plusMinus: mostA / 2 });
  for (const [c, circuit] of circuits.entries()) {
    if (circuit.isSpare === true) continue;
    const ids = circuit.loads ?? [];
    const lacking = ids.filter((id) => {
      const load = index.loads.get(id);
      return load === undefined || loadFiguresOf(load, nominalV, "").kind === "missing";
    });
    const mostA = unknownMostOfA(index, circuit);
    for (const id of lacking) {
      const n = placeOf.get(id) ?? loads.length;
      const load: Load = loads[n] ?? { id, name: id, class: "outlet" };
      loads[n] = { ...load, currentA: unknown(mostA / lacking.length / (load.quantity ?? 1)) };
      filled.add(`loads[${n}].currentA`);
    }
    if (ids.length > 0) continue;
    const id = `unknown-${circuit.id}` as LoadId;
    filled.add(`loads[${loads.length}].currentA`);
    loads.push({ id, name: `what ${circuit.id} feeds`, class: "outlet", currentA: unknown(mostA) });
    circuits[c] = { ...circuit, loads: [id] };
  }
  if (filled.size === 0) return { index, filled };
  return { index: indexRecord({ ...record, circuits, loads } as CoachRecord), filled };
}
