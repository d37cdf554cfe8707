import type { CoachSolution } from "@fusebook/core/network";
import { type Figure, figureValue, gaugeNumber, gaugeSize, type Outcome } from "@fusebook/core/quantity";
import type { CoachRecord } from "@fusebook/core/record";

/** Changes of one conductor of a coach, for the laws that every coach must keep. */
export type Run = { gauge?: unknown; lengthM?: Figure; resistanceOhm?: unknown };
export type Draft = { -readonly [K in keyof CoachRecord]: CoachRecord[K] };

export interface Place {
  readonly what: string;
  readonly run: Run;
  /** The loads whose current goes through it. */
  readonly isBehind: (load: string, solved: CoachSolution) => boolean;
}

/** Every conductor of a coach that is known by gauge and length. */
export function conductorsOf(record: Draft): Place[] {
  const places: Place[] = [];
  for (const cable of record.cables ?? [])
    places.push({
      what: cable.id,
      run: cable as Run,
      isBehind: (load, solved) => {
        const found = solved.loads.get(load as never);
        return found?.kind === "known" && found.value.parts.some((part) => part.id === cable.id);
      },
    });
  for (const circuit of record.circuits ?? [])
    for (const side of ["out", "return"] as const)
      if (circuit[side])
        places.push({
          what: `${circuit.id}.${side}`,
          run: circuit[side] as Run,
          isBehind: (load) => (circuit.loads ?? []).includes(load as never),
        });
  for (const load of record.loads ?? [])
    if (load.tail)
      places.push({ what: `${load.id}.tail`, run: load.tail as Run, isBehind: (other) => other === load.id });
  return places.filter(({ run }) => run.gauge !== undefined && run.lengthM !== undefined && !run.resistanceOhm);
}

export const copyOf = (record: CoachRecord): Draft => structuredClone(record) as Draft;

/** The same wire with two gauge numbers more copper; false where the size is no gauge. */
export function thicken(run: Run): boolean {
  const number = gaugeNumber(String(run.gauge).replace(/ AWG$/, ""));
  if (number === undefined || number < 0) return false;
  run.gauge = `${gaugeSize(number - 2)} AWG`;
  return true;
}

export function stretch(run: Run, by: number): void {
  const length = run.lengthM!;
  run.lengthM = typeof length === "number" ? length * by : { ...length, value: figureValue(length) * by };
}

/** The same coach in air that is hotter everywhere. */
export function heat(draft: Draft, byK: number, policy: { ambientC: number; zoneAmbientC: Record<string, number> }) {
  draft.policy = {
    ...draft.policy,
    ambientC: policy.ambientC + byK,
    zoneAmbientC: Object.fromEntries(Object.entries(policy.zoneAmbientC).map(([zone, c]) => [zone, c + byK])),
  };
}

export function known<T>(outcome: Outcome<T>): T {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
}
