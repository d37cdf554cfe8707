import type { CoachRecord } from "../record/index.js";

type Step = string | number;
type Holder = Record<Step, unknown>;

/** `circuits[3].out.lengthM` as steps: `circuits`, 3, `out`, `lengthM`. */
export const stepsOf = (path: string): readonly Step[] =>
  [...path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map((match) => (match[2] === undefined ? match[1]! : Number(match[2])));

/** What the record holds at this path; undefined where there is nothing. */
export function fieldAt(record: CoachRecord, path: string): unknown {
  let at: unknown = record;
  for (const step of stepsOf(path)) {
    if (typeof at !== "object" || at === null) return undefined;
    at = (at as Holder)[step];
  }
  return at;
}

/** The record with this field changed; everything off the way is shared with the old one, which stays as it was. */
export function withField(record: CoachRecord, path: string, value: unknown): CoachRecord {
  const steps = stepsOf(path);
  const copyOf = (from: unknown): Holder =>
    (Array.isArray(from) ? [...from] : { ...(from as Holder | undefined) }) as Holder;
  const top = copyOf(record);
  let at = top;
  for (const step of steps.slice(0, -1)) {
    const below = copyOf(at[step]);
    at[step] = below;
    at = below;
  }
  at[steps.at(-1)!] = value;
  return top as unknown as CoachRecord;
}
