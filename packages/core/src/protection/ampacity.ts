import { type ConductorFigures, conductorCOf, conductorSize } from "../network/index.js";
import {
  figureValue,
  gaugeNumber,
  gaugeSize,
  known,
  type Outcome,
  refused,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { FullPolicy } from "../record/index.js";
import {
  ambientFactorByLaw,
  areaOfGaugeMm2,
  cfr183Ampacity,
  cfr183EngineFactor,
  marineBundleFactor,
  necAmbientFactor,
  necBundleFactor,
} from "../tables/index.js";

export interface AmpacityFactor {
  readonly name: "ambient" | "bundle";
  readonly factor: number;
  readonly source: Source;
}

export interface Ampacity {
  /** What it may carry, the safe reading of what is on record: unknown insulation counts as the lowest class. */
  readonly ampacityA: number;
  /** Up to what the highest class that it may be would carry; down to what a bundle of unknown size would leave. */
  readonly span: Span;
  readonly baseA: number;
  readonly insulationC: number;
  readonly isInsulationKnown: boolean;
  /** The size the table was entered with; a metric section enters at the next AWG size below it. */
  readonly gauge: string;
  readonly ambientC: number;
  readonly factors: readonly AmpacityFactor[];
  readonly source: Source;
  /** Fields that would narrow the span, relative to the run. */
  readonly wouldSettle: readonly string[];
}

/** The lowest and highest classes of the table: what insulation of unknown class may be. */
const LOWEST_CLASS_C = 60;
const HIGHEST_CLASS_C = 200;
/** How many conductors a bundle of unknown size is doubted up to: the first row that derates. */
const DOUBTED_BUNDLE = 6;
/** Sizes of 33 CFR 183 table 5, on the AWG scale. */
const LISTED = [18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3];

/** The gauge to enter a table with: as written, or for a metric section the largest listed AWG size that holds no more copper. */
function tableGauge(run: ConductorFigures, policy: FullPolicy, path: string): Outcome<string> {
  const size = conductorSize(run, policy, path);
  if (size.kind !== "known") return size;
  const { gauge, areaMm2 } = size.value;
  if (gauge !== undefined) {
    const number = gaugeNumber(gauge) ?? Number.NaN;
    const listed = LISTED.filter((one) => one >= number);
    const at = listed.at(-1);
    return at === undefined
      ? refused("size-not-listed", `${path}gauge: ${gauge} is thinner than the table's smallest, 18`)
      : known(gaugeSize(at));
  }
  // A 2 % allowance lets a nominal section match the size it stands for.
  const fits = LISTED.filter((one) => areaOfGaugeMm2(one) <= areaMm2 * 1.02);
  const at = fits.at(-1);
  return at === undefined
    ? refused("size-not-listed", `${path}sectionMm2: ${areaMm2} mm² is thinner than the table's smallest, 0.82`)
    : known(gaugeSize(at));
}

function ambientFactor(ambientC: number, insulationC: number, zone: string | undefined, policy: FullPolicy) {
  if (policy.conductorRule === "marine" && zone === "engine") return cfr183EngineFactor(insulationC);
  if (policy.conductorRule === "nec" && insulationC <= 90) return necAmbientFactor(ambientC, insulationC);
  return ambientFactorByLaw(Math.max(30, ambientC), insulationC);
}

/**
 * What may this conductor carry, A? 33 CFR 183 table 5 by gauge and insulation class (it is the table that lists coach sizes; 30 C), times the factor for
 * its zone's ambient (NEC table 310.15(B)(1)(1); for classes above 90 C and other rules the law behind it; in a marine engine space the 33 CFR note)
 * and for its bundle by the policy. Missing without a size; refused where the air is hotter than the insulation may get.
 */
export function ampacityOf(
  run: ConductorFigures,
  policy: FullPolicy,
  path = "",
  zoneOfPlace?: (place: string) => string | undefined,
): Outcome<Ampacity> {
  const gauge = tableGauge(run, policy, path);
  if (gauge.kind !== "known") return gauge;
  const stated = run.insulationC === undefined ? undefined : figureValue(run.insulationC);
  const zone = run.zone ?? (run.place === undefined ? undefined : zoneOfPlace?.(run.place));
  const ambientC = conductorCOf(run, policy, zoneOfPlace);
  const bundleOf = (count: number) =>
    policy.bundling === "none"
      ? undefined
      : policy.bundling === "marine"
        ? marineBundleFactor(count)
        : necBundleFactor(count);
  const carries = (
    insulationC: number,
    bundle: number | undefined,
  ): Outcome<Omit<Ampacity, "span" | "isInsulationKnown" | "wouldSettle">> => {
    const base = cfr183Ampacity(gauge.value, insulationC);
    if (base.kind === "refused") return refused(base.code, `${path}insulationC: ${base.because}`);
    const factors: AmpacityFactor[] = [];
    const ambient = ambientFactor(ambientC, insulationC, zone, policy);
    if (ambient.kind === "refused") return refused(ambient.code, `${path}zone: ${ambient.because}`);
    if (ambient.value !== 1) factors.push({ name: "ambient", factor: ambient.value, source: ambient.source });
    const bundled = bundle === undefined ? undefined : bundleOf(bundle);
    if (bundled?.kind === "known" && bundled.value !== 1)
      factors.push({ name: "bundle", factor: bundled.value, source: bundled.source });
    const ampacityA = factors.reduce((a, one) => a * one.factor, base.value);
    return known({
      ampacityA,
      baseA: base.value,
      insulationC,
      gauge: gauge.value,
      ambientC,
      factors,
      source: base.source,
    });
  };
  const bundle = run.bundleCount === undefined ? undefined : figureValue(run.bundleCount);
  const value = carries(stated ?? LOWEST_CLASS_C, bundle);
  if (value.kind !== "known") return value;
  const wouldSettle: string[] = [];
  let { ampacityA: lo, ampacityA: hi } = value.value;
  if (run.insulationC === undefined) {
    wouldSettle.push(`${path}insulationC`);
    const best = carries(HIGHEST_CLASS_C, bundle);
    if (best.kind === "known") hi = Math.max(hi, best.value.ampacityA);
  } else {
    const class_ = spanOf(run.insulationC, "rating");
    for (const end of [class_.lo, class_.hi]) {
      const other = carries(Math.max(LOWEST_CLASS_C, end), bundle);
      if (other.kind === "known") {
        lo = Math.min(lo, other.value.ampacityA);
        hi = Math.max(hi, other.value.ampacityA);
      }
    }
  }
  if (bundle === undefined && policy.bundling !== "none") {
    wouldSettle.push(`${path}bundleCount`);
    const crowded = bundleOf(DOUBTED_BUNDLE);
    if (crowded?.kind === "known") lo *= crowded.value;
  }
  return known({ ...value.value, span: { lo, hi }, isInsulationKnown: stated !== undefined, wouldSettle });
}
