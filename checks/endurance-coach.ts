import type { CoachRecord, LoadProfile } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";

/** A battery of whose figures the check knows every one, so that it can do the arithmetic itself. */
export interface KnownBattery {
  readonly capacityAh: number;
  readonly ratedHours: number;
  readonly exponent: number;
  readonly chargeRatio: number;
}

const exact = (value: number) => ({ value, basis: "measured" as const, plusMinus: 0 });

/** A generated coach with one bank of known figures at 25 C, no loss at rest, and nothing that stands by: the battery pays for the network and no more. */
export function coachOnKnownBattery(seed: number, circuits: number, battery: KnownBattery): CoachRecord {
  const { record } = generateCoach({ seed, circuits });
  const coach = structuredClone(record) as CoachRecord;
  coach.network = { ...coach.network, quiescentA: exact(0) };
  for (const supply of coach.supplies ?? []) {
    if (supply.kind !== "battery") continue;
    supply.capacityAh = exact(battery.capacityAh);
    supply.ratedHours = battery.ratedHours;
    supply.peukertExponent = exact(battery.exponent);
    supply.chargeRatio = exact(battery.chargeRatio);
    supply.temperatureC = exact(25);
    supply.selfDischargePerMonthRatio = exact(0);
    delete supply.openCircuitV;
  }
  for (const load of coach.loads ?? []) load.standbyA = exact(0);
  return coach;
}

/** Everything but the first so many circuits off, all of the time, at full. */
export function fullOn(record: CoachRecord, share: number, hours: number): LoadProfile {
  const all = (record.circuits ?? []).filter((circuit) => circuit.isSpare !== true).map((circuit) => circuit.id);
  const some = all.filter((_, i) => i % share === 0);
  return {
    id: "check",
    spans: [
      { name: "much", hours, on: [{ circuits: some }] },
      { name: "less", hours: hours / 2, on: [{ circuits: some.slice(0, Math.ceil(some.length / 3)) }] },
    ],
  };
}

/** The batteries of the integrator checks: lead, sealed lead, lithium; small to large. */
export const BATTERIES: readonly KnownBattery[] = [
  { capacityAh: 220, ratedHours: 20, exponent: 1.25, chargeRatio: 0.95 },
  { capacityAh: 440, ratedHours: 20, exponent: 1.12, chargeRatio: 0.9 },
  { capacityAh: 300, ratedHours: 10, exponent: 1.02, chargeRatio: 1 },
];
