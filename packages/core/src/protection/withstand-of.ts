import { type ConductorFigures, conductorCOf, conductorSize } from "../network/index.js";
import { figureValue, known, type Outcome, type Source, type Span } from "../quantity/index.js";
import type { FullPolicy } from "../record/index.js";
import { ADIABATIC_SOURCE, adiabaticFactor } from "./adiabatic.js";

/** How much joule integral a conductor stands in a short. */
export interface Withstand {
  /** k squared times section squared, A2s: the safe reading of what is on record. */
  readonly limitA2s: number;
  readonly span: Span;
  readonly factor: number;
  readonly areaMm2: number;
  readonly initialC: number;
  readonly finalC: number;
  readonly source: Source;
  /** Fields that would narrow the span, relative to the run. */
  readonly wouldSettle: readonly string[];
}

/** The law holds for so long: longer times lose heat, and the conductor stands more. IEC 60364-4-43 as reproduced (table `k-values`, seen). */
export const ADIABATIC_UP_TO_S = 5;

/** Final temperatures of thermoplastic and of cross-linked insulation, as the k table pairs them (70 to 160, 90 to 250; seen). */
const THERMOPLASTIC_C = 160;
const CROSS_LINKED_C = 250;
/** From this class up vehicle wire is cross-linked (the table's own assumption for 125 C); from 90 C it may be. */
const SURELY_CROSS_LINKED_C = 125;
const PERHAPS_CROSS_LINKED_C = 90;
/** Where the class is not on record: as hot at the start as thermoplastic vehicle wire may run. */
const UNKNOWN_CLASS_C = 105;

/**
 * What does this conductor stand in a short before its insulation is lost, A2s (`I2 t = k2 S2`)? The safe reading: it starts at the temperature of its
 * class and, below 125 C, is thermoplastic (160 C at the end). The span reaches up to a wire that starts at the air of its zone and, from 90 C on, is
 * cross-linked (250 C). Missing without a size; refused where the size is none.
 */
export function withstandOf(
  run: ConductorFigures,
  policy: FullPolicy,
  path = "",
  zoneOfPlace?: (place: string) => string | undefined,
): Outcome<Withstand> {
  const size = conductorSize(run, policy, path);
  if (size.kind !== "known") return size;
  const stated = run.insulationC === undefined ? undefined : figureValue(run.insulationC);
  const ratedC = stated ?? UNKNOWN_CLASS_C;
  const ambientC = conductorCOf(run, policy, zoneOfPlace);
  const finalC = ratedC >= SURELY_CROSS_LINKED_C ? CROSS_LINKED_C : THERMOPLASTIC_C;
  const bestC = ratedC >= PERHAPS_CROSS_LINKED_C ? CROSS_LINKED_C : THERMOPLASTIC_C;
  const factor = adiabaticFactor(Math.min(ratedC, finalC - 1), finalC);
  const best = adiabaticFactor(Math.min(ambientC, ratedC), bestC);
  if (factor.kind !== "known") return factor;
  if (best.kind !== "known") return best;
  const { areaMm2, span } = size.value;
  const limit = (k: number, mm2: number) => (k * mm2) ** 2;
  const wouldSettle = [
    ...(stated === undefined ? ["insulationC"] : []),
    ...(span.lo < span.hi ? [size.value.path] : []),
  ];
  return known({
    limitA2s: limit(factor.value, areaMm2),
    span: { lo: limit(factor.value, span.lo), hi: Math.max(limit(best.value, span.hi), limit(factor.value, areaMm2)) },
    factor: factor.value,
    areaMm2,
    initialC: Math.min(ratedC, finalC - 1),
    finalC,
    source: { ...ADIABATIC_SOURCE, how: "computed" },
    wouldSettle: wouldSettle.map((field) => `${path}${field}`),
  });
}
