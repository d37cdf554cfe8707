import { loadAsRead } from "../network/index.js";
import { div, figureValue, missing, type Outcome, type Span, scale, spanOf, sum } from "../quantity/index.js";
import type { Circuit, CoachIndex, Load } from "../record/index.js";

/**
 * Current of all pieces of a load while it is on, at the voltage its figures hold for, as a span. This is what a channel's rating is held
 * against; the current at the coach's real voltages is the network's. Readings of volts and amps win over the label. Missing names the load's own fields.
 */
export function ratedCurrentOf(onRecord: Load): Outcome<Span> {
  const one = labelCurrentOf(asRead(onRecord));
  return one.kind === "known" ? { kind: "known", value: scale(one.value, onRecord.quantity ?? 1) } : one;
}

/** What one piece draws by its label alone, whatever was read. Missing names the load's own fields. */
export function labelCurrentOf(load: Load): Outcome<Span> {
  if (load.currentA !== undefined) return { kind: "known", value: spanOf(load.currentA, "current") };
  if (load.powerW === undefined) return missing("currentA");
  if (load.ratedV === undefined || figureValue(load.ratedV) <= 0) return missing("ratedV");
  return div(spanOf(load.powerW, "power"), spanOf(load.ratedV, "voltage"));
}

/** Above it a reading was taken on a 24 V coach. */
const BETWEEN_12_AND_24_V = 18;

/** The load with its readings for its label; without rated volts, at the volts it was read at. */
function asRead(load: Load): Load {
  const first = load.drawReadings?.[0];
  if (first === undefined) return load;
  const readV = figureValue(first.voltageV);
  const nominalV = readV > BETWEEN_12_AND_24_V ? 24 : 12;
  return loadAsRead(load.ratedV === undefined ? { ...load, ratedV: readV } : load, nominalV);
}

/**
 * Current of a circuit with all its loads on, each at its rated voltage. While a channel is dimmed this is still what flows in the pulse.
 * Missing names the fields by path from the record's root.
 */
export function circuitRatedCurrent(index: CoachIndex, circuit: Circuit): Outcome<Span> {
  if (circuit.loads === undefined) {
    if (circuit.isSpare) return { kind: "known", value: { lo: 0, hi: 0 } };
    return missing(`${index.pathOf("circuits", circuit.id)}.loads`);
  }
  const parts: Span[] = [];
  const needs: string[] = [];
  for (const id of circuit.loads) {
    const load = index.loads.get(id);
    const path = index.pathOf("loads", id);
    if (!load) {
      needs.push(`${index.pathOf("circuits", circuit.id)}.loads`);
      continue;
    }
    const current = ratedCurrentOf(load);
    if (current.kind === "known") parts.push(current.value);
    else if (current.kind === "missing") needs.push(...current.needs.map((need) => `${path}.${need}`));
    else needs.push(`${path}.ratedV`);
  }
  return needs.length > 0 ? missing(...new Set(needs)) : { kind: "known", value: sum(parts) };
}
