import type { Finding } from "../findings/index.js";
import { conductorCOf, wireResistance } from "../network/index.js";
import { type CoachIndex, type CoachRecord, indexRecord, policyOf, type WireRun } from "../record/index.js";
import { nameNumber, placeOf } from "./chance.js";
import { fieldAt, withField } from "./field-path.js";
import { comparedOf, marginAt, marginOf } from "./margin.js";
import { leftAbout, readAs, readableAt } from "./readable.js";
import type { ReadableFigure } from "./reading.js";
import type { SampledFinding } from "./sampled-finding.js";

export interface AllRead {
  readonly widthAfter: number;
  readonly chanceSettles: number;
}

/** The record with this figure read to be what is on record now, where the instrument is finer than what is known. */
function readNow(record: CoachRecord, figure: ReadableFigure): CoachRecord {
  if (figure.printed !== undefined) {
    const middle = figure.printed[Math.floor(figure.printed.length / 2)]!;
    return withField(record, figure.path, readAs(figure.instrument, middle));
  }
  if (figure.left.hi - figure.left.lo >= figure.now.hi - figure.now.lo) return record;
  return withField(record, figure.path, readAs(figure.instrument, figure.nominal));
}

/** Measures a wire from end to end where that leaves less than its length and size as read. */
function measuredThrough(record: CoachRecord, index: CoachIndex, lengthPath: string): CoachRecord {
  const runPath = lengthPath.slice(0, -".lengthM".length);
  const run = fieldAt(record, runPath) as WireRun | undefined;
  if (run === undefined || run.resistanceOhm !== undefined) return record;
  const policy = policyOf(record);
  const wire = wireResistance(
    run,
    policy,
    conductorCOf(run, policy, (place) => index.places.get(place)?.zone),
  );
  if (wire.kind !== "known") return record;
  const { ohm, span } = wire.value;
  const left = leftAbout(`${runPath}.resistanceOhm`, ohm, "ohmmeter");
  if (left.hi - left.lo >= span.hi - span.lo) return record;
  return withField(record, `${runPath}.resistanceOhm`, readAs("ohmmeter", ohm));
}

/** A figure whose error moves the margin by less than this share of the greatest is left out. */
const HARDLY_COUNTS = 0.02;

/**
 * By how much would the meters' own errors move the margin, in this draw? Each figure's error is even over what its instrument leaves and moves the margin by
 * the figure's slope; the greatest of all of them together is what the rule itself leaves (`half`).
 */
function meterErrors(
  sampled: SampledFinding | undefined,
  figures: ReadonlyMap<string, ReadableFigure>,
  half: number,
): (draw: number) => number {
  const parts = (sampled?.slopes ?? []).flatMap(({ path, slope }) => {
    const left = figures.get(path)?.left;
    return left === undefined
      ? []
      : [{ name: nameNumber(`${path} error`), most: (Math.abs(slope) * (left.hi - left.lo)) / 2 }];
  });
  const most = Math.max(0, ...parts.map((part) => part.most));
  const counted = parts.filter((part) => part.most > HARDLY_COUNTS * most);
  const all = counted.reduce((sum, part) => sum + part.most, 0);
  if (!(all > 0)) return () => 0;
  return (draw) =>
    counted.reduce((sum, part) => sum + (2 * placeOf(0, draw, part.name) - 1) * part.most, 0) * (half / all);
}

/**
 * What would be left if every figure that can be read were read, and turned out to be what it is taken for now? And of the sampled coaches, in how many would
 * that be enough: the margin of each, off by the meters' errors, lies further from zero than what is left.
 */
export function allReadOf(
  index: CoachIndex,
  open: ReadonlyMap<string, Finding>,
  sampled: ReadonlyMap<string, SampledFinding>,
  named: readonly ReadableFigure[],
  ask: (index: CoachIndex) => ReadonlyMap<string, Finding>,
): Map<string, AllRead> {
  const figures = new Map(named.map((figure) => [figure.path, figure]));
  for (const { slopes } of sampled.values())
    for (const { path, nominal, span } of slopes) {
      if (figures.has(path)) continue;
      const figure = readableAt(index, path, { nominal, span });
      if (figure !== undefined) figures.set(path, figure);
    }
  let { record } = index;
  for (const figure of figures.values()) record = readNow(record, figure);
  for (const path of figures.keys()) if (path.endsWith(".lengthM")) record = measuredThrough(record, index, path);
  const after = ask(indexRecord(record));
  const all = new Map<string, AllRead>();
  for (const [key, finding] of open) {
    const told = after.get(key);
    const compared = comparedOf(told ?? finding);
    if (compared === undefined) continue;
    const margin = marginOf(compared);
    const middle = marginAt(compared.sense, compared.nominal, compared.limit.value);
    const [below, above] = [middle - margin.lo, margin.hi - middle];
    const drawn = sampled.get(key)?.margin ?? new Float64Array();
    const errorAt = meterErrors(sampled.get(key), figures, (below + above) / 2);
    let settled = 0;
    drawn.forEach((each, k) => {
      const shown = each + errorAt(k);
      if (shown - below >= 0 || shown + above < 0) settled++;
    });
    all.set(key, {
      widthAfter: margin.hi - margin.lo,
      chanceSettles: drawn.length === 0 ? 0 : settled / drawn.length,
    });
  }
  return all;
}
