import {
  type Figure,
  figureValue,
  gaugeNumber,
  known,
  missing,
  type Outcome,
  readGauge,
  refused,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import { type FullPolicy, type NotedText, textValue } from "../record/index.js";
import { areaOfGaugeMm2, awgAreaMm2, saeAreaMm2, sourceOf } from "../tables/index.js";

/** What both a wire run and a cable say of their conductor. */
export interface ConductorFigures {
  readonly gauge?: NotedText | undefined;
  readonly sectionMm2?: Figure | undefined;
  readonly lengthM?: Figure | undefined;
  readonly resistanceOhm?: Figure | undefined;
  readonly insulationC?: Figure | undefined;
  readonly bundleCount?: Figure | undefined;
  readonly isSheathed?: boolean | undefined;
  readonly zone?: string | undefined;
  readonly place?: string | undefined;
}

export interface ConductorSize {
  readonly areaMm2: number;
  readonly span: Span;
  /** The gauge number on the AWG scale that tables are entered with, where the size was written as a gauge. */
  readonly gauge?: string;
  readonly system: "awg" | "sae" | "mm2";
  readonly source: Source;
  /** Path of the field it was read from, relative to the run. */
  readonly path: "sectionMm2" | "gauge";
}

/** However wide its tolerance, a wire that was read to be there has some copper. Ours: without any it has no resistance that could be reckoned with. */
const LEAST_SECTION_RATIO = 0.01;

/**
 * How much copper is in this wire, mm2? A stated section wins over a gauge. A bare gauge number is read by the policy's `areaBasis`, and its span
 * reaches from the SAE minimum to the AWG area, because the label does not say which. Missing where neither is on record; refused where it is no size.
 */
export function conductorSize(
  run: ConductorFigures,
  policy: Pick<FullPolicy, "areaBasis">,
  path = "",
): Outcome<ConductorSize> {
  if (run.sectionMm2 !== undefined) {
    const areaMm2 = figureValue(run.sectionMm2);
    if (!(areaMm2 > 0))
      return refused("section-not-positive", `${path}sectionMm2: a section above 0 mm2 is wanted, got ${areaMm2}`);
    const source = sourceOf("copper-constants");
    const stated = spanOf(run.sectionMm2, "section");
    const span = { lo: Math.max(stated.lo, LEAST_SECTION_RATIO * areaMm2), hi: stated.hi };
    return known({ areaMm2, span, system: "mm2", source, path: "sectionMm2" });
  }
  if (run.gauge === undefined) return missing(`${path}gauge`);
  const written = textValue(run.gauge);
  const read = readGauge(written, { bareIs: policy.areaBasis });
  if (read.kind === "unread") return refused("gauge-unread", `${path}gauge: ${read.why}`);
  const basis = typeof run.gauge === "string" ? "marked" : run.gauge.basis;
  const doubt = (areaMm2: number) => spanOf({ value: areaMm2, basis }, "section");
  if (read.system === "mm2") {
    const areaMm2 = read.sectionMm2 ?? Number(read.size);
    return known({ areaMm2, span: doubt(areaMm2), system: "mm2", source: sourceOf("iec60228"), path: "gauge" });
  }
  const system = read.isSystemStated ? read.system : policy.areaBasis;
  const area = system === "sae" ? saeAreaMm2(read.size) : awgAreaMm2(read.size);
  if (area.kind === "refused") return refused(area.code, `${path}gauge: ${area.because}`);
  const own = doubt(area.value);
  const least = read.isSystemStated ? undefined : saeAreaMm2(read.size);
  const span =
    least?.kind === "known"
      ? {
          lo: Math.min(own.lo, doubt(least.value).lo),
          hi: Math.max(own.hi, doubt(areaOfGaugeMm2(gaugeNumber(read.size) ?? Number.NaN)).hi),
        }
      : own;
  return known({ areaMm2: area.value, span, gauge: read.size, system, source: area.source, path: "gauge" });
}
