import { type Figure, figureBasis, figureValue } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import type { SettledBy } from "./finding.js";

/** Minutes to take one reading once the place is open. Common practice, no source. */
const READING_MIN: Readonly<Record<SettledBy["instrument"], number>> = {
  look: 1,
  voltmeter: 2,
  "clamp meter": 2,
  thermometer: 2,
  "tape measure": 5,
  ohmmeter: 5,
  ask: 5,
};

/** Minutes to take one reading once the place is open, see `READING_MIN`. */
export const readingMin = (instrument: SettledBy["instrument"]): number => READING_MIN[instrument];

/** Minutes to open a place whose record does not say. Common practice, no source. */
const UNKNOWN_ACCESS_MIN = 5;

/** How many minutes does a reading cost here: opening the place (and the places it lies within), then reading. */
export function minutesFor(index: CoachIndex, instrument: SettledBy["instrument"], place: string | undefined): number {
  let access = 0;
  const seen = new Set<string>();
  for (let at = place; at !== undefined && !seen.has(at); at = index.places.get(at)?.within) {
    seen.add(at);
    const minutes = index.places.get(at)?.accessMin;
    access += minutes === undefined ? (at === place ? UNKNOWN_ACCESS_MIN : 0) : Math.max(0, figureValue(minutes));
  }
  if (place === undefined) access = UNKNOWN_ACCESS_MIN;
  return access + READING_MIN[instrument];
}

/** One field that a verdict leans on. */
export interface Leaned {
  readonly path: string;
  readonly figure: Figure | undefined;
  readonly instrument: SettledBy["instrument"];
  readonly place?: string | undefined;
}

/** Would a reading tell more? Not of what was measured, nor of a print that somebody has read and that can only be looked at again. */
const isUnsure = ({ figure, instrument }: Leaned): boolean => {
  if (figure === undefined) return true;
  const basis = figureBasis(figure);
  return basis !== "measured" && !(basis === "marked" && instrument === "look");
};

/**
 * Which fields, read better, would settle it? Those that are absent or that a reading would tell more of, least minutes first; where there is none
 * such, all of them again, with a finer instrument.
 */
export function readingsThatSettle(index: CoachIndex, leaned: readonly Leaned[]): SettledBy[] {
  const unsure = leaned.filter(isUnsure);
  const paths = new Set<string>();
  return (unsure.length > 0 ? unsure : leaned)
    .filter(({ path }) => !paths.has(path) && paths.add(path))
    .map((field) => ({
      path: field.path,
      instrument: field.instrument,
      minutes: minutesFor(index, field.instrument, field.place),
    }))
    .sort((a, b) => a.minutes - b.minutes);
}
