import {
  figureValue,
  known,
  missing,
  type Outcome,
  refused,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { FullPolicy } from "../record/index.js";
import { copperResistanceOhm, iec60228OhmPerKm, resistanceRatio, sourceOf } from "../tables/index.js";
import { type ConductorFigures, conductorSize } from "./conductor-size.js";
import { copperDraw, copperOfOhmPerM } from "./sampling/copper-draw.js";
import type { OhmDraw } from "./sampling/ohm-draw.js";

export interface WireResistance {
  readonly ohm: number;
  readonly span: Span;
  readonly source: Source;
  /** The temperature it is for; a measured resistance is taken as it was read. */
  readonly conductorC: number;
  /** Fields it was made from, relative to the run. */
  readonly from: readonly string[];
  /** The figures it is made of, each with its doubt. */
  readonly draw: OhmDraw;
}

/** Stranded over solid, NEC chapter 9 table 8 (seen ratios 1.018 to 1.025); 1 for a solid wire. */
export const LAY_FACTOR = 1.02;
const LAY_SPAN: Span = { lo: 1, hi: 1.025 };
/** Flexible conductors of IEC 60228 class 5 hold down to 88 % of their nominal section as copper: the doubt of a metric size the table does not list. */
const METRIC_SHORTFALL = 0.88;

/** At what temperature is this conductor taken? The ambient of its zone by the policy: its own heating is not added. */
export function conductorCOf(
  run: ConductorFigures,
  policy: FullPolicy,
  zoneOfPlace?: (place: string) => string | undefined,
): number {
  const zone = run.zone ?? (run.place === undefined ? undefined : zoneOfPlace?.(run.place));
  return (zone === undefined ? undefined : policy.zoneAmbientC[zone]) ?? policy.ambientC;
}

/**
 * What does this conductor measure from end to end, ohm, one way? A measured resistance wins; else copper (IEC 60028) of its section or gauge
 * (ASTM B258, SAE minimum areas) with a lay factor for stranding, at `conductorC`. A metric size listed in IEC 60228 is taken at its class 5 limit,
 * with a span down to plain copper of the nominal section. Missing names the fields wanted; refused where a figure cannot be.
 */
export function wireResistance(
  run: ConductorFigures,
  policy: FullPolicy,
  conductorC: number,
  path = "",
): Outcome<WireResistance> {
  if (run.resistanceOhm !== undefined) {
    const ohm = figureValue(run.resistanceOhm);
    if (!(ohm >= 0)) return refused("resistance-negative", `${path}resistanceOhm: 0 ohm or more is wanted, got ${ohm}`);
    const source: Source = { id: "record", name: "the record's own figure", how: "seen" };
    const span = spanOf(run.resistanceOhm, "resistance");
    const input = { path: `${path}resistanceOhm`, kind: "resistance" as const, nominal: ohm, span, isAssumed: false };
    const draw: OhmDraw = { kind: "figure", ohm: input };
    return known({ ohm, span, source, conductorC, from: ["resistanceOhm"], draw });
  }
  const size = conductorSize(run, policy, path);
  const lengthNeeds = run.lengthM === undefined ? [`${path}lengthM`] : [];
  if (size.kind === "missing") return missing(...size.needs, ...lengthNeeds);
  if (size.kind === "refused") return size;
  if (run.lengthM === undefined) return missing(...lengthNeeds);
  const lengthM = figureValue(run.lengthM);
  if (!(lengthM > 0))
    return refused("length-not-positive", `${path}lengthM: a length above 0 m is wanted, got ${lengthM}`);
  const { areaMm2, span, system } = size.value;
  const length = spanOf(run.lengthM, "length");
  const from = [size.value.path, "lengthM"];
  const ohmOf = (mm2: number, m: number, lay: number, atC = conductorC) => copperResistanceOhm(mm2, m, atC, lay);
  const plusMinusC = policy.ambientPlusMinusC ?? 0;
  const coolC = conductorC - plusMinusC;
  const warmC = conductorC + plusMinusC;
  const warmth = resistanceRatio(conductorC, warmC);
  const { lengthM: lengthFigure } = run;
  const drawOf = (nominal: number, lo: number, hi: number, lay?: Span): OhmDraw =>
    copperDraw({ ...run, lengthM: lengthFigure }, size.value, conductorC, policy, path, {
      area: { nominal, span: { lo: Math.min(lo, nominal), hi: Math.max(hi, nominal) } },
      ...(lay === undefined ? {} : { lay: { nominal: LAY_FACTOR, span: lay } }),
    });
  if (system === "mm2" && size.value.path === "gauge") {
    const listed = iec60228OhmPerKm(areaMm2);
    const hot = resistanceRatio(20, conductorC);
    const lo = ohmOf(span.hi, length.lo, LAY_SPAN.lo, coolC);
    if (listed.kind === "known") {
      const ohmPerM = (listed.value / 1000) * hot;
      const ohm = ohmPerM * lengthM;
      return known({
        ohm,
        span: {
          lo: Math.min(lo, ohmPerM * length.lo * resistanceRatio(conductorC, coolC)),
          hi: (warmth * ohmPerM * length.hi * areaMm2) / Math.min(areaMm2, span.lo),
        },
        source: listed.source,
        conductorC,
        from,
        draw: drawOf(
          copperOfOhmPerM(listed.value / 1000),
          (copperOfOhmPerM(listed.value / 1000) * Math.min(areaMm2, span.lo)) / areaMm2,
          span.hi,
        ),
      });
    }
    const ohm = ohmOf(areaMm2 * METRIC_SHORTFALL, lengthM, 1);
    return known({
      ohm,
      span: { lo, hi: ohmOf(span.lo * METRIC_SHORTFALL, length.hi, LAY_SPAN.hi, warmC) },
      source: sourceOf("copper-constants"),
      conductorC,
      from,
      draw: drawOf(areaMm2 * METRIC_SHORTFALL, (span.lo * METRIC_SHORTFALL) / LAY_SPAN.hi, span.hi),
    });
  }
  return known({
    ohm: ohmOf(areaMm2, lengthM, LAY_FACTOR),
    span: { lo: ohmOf(span.hi, length.lo, LAY_SPAN.lo, coolC), hi: ohmOf(span.lo, length.hi, LAY_SPAN.hi, warmC) },
    source: size.value.source,
    conductorC,
    from,
    draw: drawOf(areaMm2, span.lo, span.hi, LAY_SPAN),
  });
}
