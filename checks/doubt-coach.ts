import type { CoachRecord } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";

type Loose = Record<string, unknown>;
const BASES = ["measured", "marked", "typical", "assumed"] as const;

/**
 * A generated coach as a hasty survey leaves it: some lengths paced, some currents guessed, some prints not read, wires longer and limits nearer than a builder
 * would like, so that verdicts of every sort turn up. Same seed, same coach.
 */
export function hastyCoach(seed: number, circuits: number, chance: () => number, missingRatio = 0): CoachRecord {
  const record = structuredClone(generateCoach({ seed, circuits, missingRatio, nominalV: 12 }).record) as CoachRecord;
  const isOne = (ratio: number) => chance() < ratio;
  const guess = (holder: Loose | undefined, name: string, times = 1): void => {
    const field = holder?.[name];
    if (holder === undefined || field === undefined) return;
    const value = (typeof field === "number" ? field : (field as { value: number }).value) * times;
    const basis = BASES[Math.floor(chance() * BASES.length)]!;
    holder[name] = { value: Number(value.toPrecision(4)), basis };
  };
  for (const circuit of record.circuits ?? []) {
    const stretch = 1 + 11 * chance();
    guess(circuit.out as Loose | undefined, "lengthM", stretch);
    guess(circuit.return as Loose | undefined, "lengthM", stretch);
    if (isOne(0.15)) guess(circuit.fuse as Loose | undefined, "ratedA");
    if (isOne(0.2) && circuit.fuse !== undefined) circuit.fuse.ratedA = isOne(0.5) ? 3 : 30;
    if (isOne(0.1) && circuit.out !== undefined) delete circuit.out.insulationC;
  }
  for (const load of record.loads ?? []) {
    const times = 0.6 + 2.4 * chance();
    guess(load as Loose, load.currentA === undefined ? "powerW" : "currentA", times);
    if (isOne(0.5)) (load as Loose).minV = Number((10.8 + 1.4 * chance()).toFixed(2));
    if (isOne(0.1)) load.isCritical = true;
  }
  for (const cable of record.cables ?? []) guess(cable as Loose, "lengthM", 1 + 5 * chance());
  for (const supply of record.supplies ?? [])
    if (supply.kind === "battery") {
      if (isOne(0.5)) supply.openCircuitV = { value: 12.6, basis: isOne(0.5) ? "typical" : "marked" };
      if (isOne(0.5)) supply.internalResistanceOhm = { value: 0.004, basis: "typical" };
    }
  for (const kind of record.moduleKinds ?? []) {
    if (isOne(0.5)) delete kind.onResistanceOhm;
    kind.ratedTotalA = 2 + Math.round(16 * chance());
    if (isOne(0.7)) kind.ratedSwitchedA = 1 + Math.round(6 * chance());
  }
  record.policy = {
    ...record.policy,
    maxDropRatioGeneral: 0.01 + 0.06 * chance(),
    maxDropRatioFeeder: 0.004 + 0.02 * chance(),
  };
  return record;
}
