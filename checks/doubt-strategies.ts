import {
  doubtOf,
  type FindingDoubt,
  fieldAt,
  leftAbout,
  type ReadableFigure,
  readAs,
  withField,
} from "@fusebook/core/doubt";
import { ALL_RULES, contextOf, type Finding, type FindingCode } from "@fusebook/core/findings";
import { type Figure, figureValue } from "@fusebook/core/quantity";
import { type CoachIndex, type CoachRecord, indexRecord } from "@fusebook/core/record";
import { seededChance } from "./network-states.js";

/** One open verdict of a coach, and the coach as it really is. */
export interface Case {
  readonly record: CoachRecord;
  readonly truth: CoachRecord;
  readonly code: FindingCode;
  readonly id: string;
  readonly path: string;
}

export interface Run {
  readonly minutes: number;
  readonly readings: number;
  readonly verdict: "holds" | "fails" | "open";
}

const SAMPLES = 100;
const MOST_READINGS = 40;

/** What the rule says of the case now: the rule alone, as `checkRecord` asks it. */
export function verdictNow({ code, path }: Case, index: CoachIndex): Finding["verdict"] {
  const rule = ALL_RULES.find((one) => one.code === code);
  const found = (rule?.check(contextOf(index)) ?? []).filter((finding) => finding.subject.path === path);
  return found.some((finding) => finding.verdict === "fails")
    ? "fails"
    : found.some((finding) => finding.verdict === "open")
      ? "open"
      : "holds";
}

/** The doubt of the case as the engine tells it. */
export function doubtNow({ code, id, path }: Case, index: CoachIndex, weighed: number): FindingDoubt | undefined {
  return doubtOf(index, { seed: 1, samples: SAMPLES, only: [id], codes: [code], weighed }).find(
    (doubt): doubt is FindingDoubt => doubt.kind === "compared" && doubt.finding.subject.path === path,
  );
}

/** What the instrument shows: the truth, off by some of what the meter may be off by. The same figure read again shows the same. */
function shownBy(truth: CoachRecord, figure: ReadableFigure, seed: number): number | string | undefined {
  const real = fieldAt(truth, figure.path);
  if (typeof real === "string") return real;
  if (real === undefined) return undefined;
  const value = figureValue(real as Figure);
  if (figure.instrument === "look") return value;
  const left = leftAbout(figure.path, value, figure.instrument);
  const error = 2 * seededChance(seed + [...figure.path].reduce((sum, sign) => 31 * sum + sign.charCodeAt(0), 7))() - 1;
  // A little inside what the meter may be off by: the span is taken about what it shows, not about the truth.
  return Math.max(0, value + (0.95 * error * (left.hi - left.lo)) / 2);
}

/** Enters one reading, as a person would: the value, and that it was measured. */
export function enterReading(
  record: CoachRecord,
  truth: CoachRecord,
  figure: ReadableFigure,
  seed: number,
): CoachRecord | undefined {
  const shown = shownBy(truth, figure, seed);
  return shown === undefined ? undefined : withField(record, figure.path, readAs(figure.instrument, shown));
}

/** Follows the engine: after each reading it is asked again; stops when it has nothing to read any more. */
export function followAdvice(one: Case, seed: number): Run & { readonly saidNothing: boolean } {
  let { record } = one;
  let minutes = 0;
  let readings = 0;
  for (;;) {
    const index = indexRecord(record);
    const verdict = verdictNow(one, index);
    if (verdict !== "open" || readings >= MOST_READINGS) return { minutes, readings, verdict, saidNothing: false };
    const doubt = doubtNow(one, index, 3);
    const next = doubt?.readings[0];
    if (doubt === undefined || doubt.outlook === "nothing" || next === undefined)
      return { minutes, readings, verdict, saidNothing: true };
    const entered = enterReading(record, one.truth, next, seed);
    if (entered === undefined) return { minutes, readings, verdict, saidNothing: false };
    record = entered;
    minutes += next.minutes;
    readings++;
  }
}

/** Reads these figures one after another until the verdict is settled. */
export function readInOrder(one: Case, order: readonly ReadableFigure[], seed: number): Run {
  let { record } = one;
  let minutes = 0;
  let readings = 0;
  for (const figure of order) {
    // Nobody tapes a wire that was just measured from end to end.
    const isDone = fieldAt(record, figure.path.replace(/\.(lengthM|gauge)$/, ".resistanceOhm")) !== undefined;
    if (/\.(lengthM|gauge)$/.test(figure.path) && isDone) continue;
    const entered = enterReading(record, one.truth, figure, seed);
    if (entered === undefined) continue;
    record = entered;
    minutes += figure.minutes;
    readings++;
    const verdict = verdictNow(one, indexRecord(record));
    if (verdict !== "open") return { minutes, readings, verdict };
  }
  return { minutes, readings, verdict: "open" };
}

/** How far a figure may be off for its size: what a person without the arithmetic goes by. */
export const relativeWidth = ({ now, nominal }: ReadableFigure): number =>
  (now.hi - now.lo) / 2 / Math.max(1e-9, Math.abs(nominal));

export function shuffled<T>(items: readonly T[], chance: () => number): T[] {
  const out = [...items];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(chance() * (i + 1));
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}
