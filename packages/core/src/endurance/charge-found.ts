import {
  figureBasis,
  figureValue,
  known,
  type Outcome,
  refused,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { Supply } from "../record/index.js";
import { chargeOfLead, openCircuitOfLead, sourceOf } from "../tables/index.js";
import { familyOf, UNKNOWN_CHARGE } from "./class-battery.js";

/** How full a bank is taken to be, and how that is known. */
export interface ChargeFound {
  readonly value: number;
  readonly span: Span;
  readonly from: "asked" | "stated" | "rested-volts" | "assumed";
  readonly source?: Source;
}

/**
 * Volts of other published tables at half charge: 12.20, 12.24 and 12.30 V at 50 % (table `ocv-lead`, its notes; all seen). A reading is therefore
 * worth no more than this, whatever the meter.
 */
export const HALF_CHARGE_TABLES_V = { least: 12.2, table: 12.24, most: 12.3 } as const;

const curveCharge = (points: readonly (readonly [charge: number, volts: number])[], volts: number): number => {
  const sorted = [...points].sort((a, b) => a[1] - b[1]);
  if (volts <= sorted[0]![1]) return sorted[0]![0];
  if (volts >= sorted.at(-1)![1]) return sorted.at(-1)![0];
  const above = sorted.findIndex(([, v]) => v >= volts);
  const [[s0, v0], [s1, v1]] = [sorted[above - 1]!, sorted[above]!];
  return v1 === v0 ? s1 : s0 + ((s1 - s0) * (volts - v0)) / (v1 - v0);
};

const leadPoints = [0, 0.25, 0.5, 0.75, 1].map((charge) => {
  const rested = openCircuitOfLead(charge);
  return [charge, rested.kind === "known" ? rested.value : Number.NaN] as const;
});

/**
 * How full is this lead-acid bank by its rested volts, at `nominalV`? Its own curve where it has one, else the published table, widened by what other
 * published tables say of the same volts. Refused `volts-say-little` for lithium iron phosphate without a curve of its own: between a fifth and nine tenths
 * its volts hardly move (table `lifepo4`).
 */
export function chargeOfRestedVolts(
  supply: Supply,
  volts: number,
  meterV: Span,
  nominalV: number,
): Outcome<ChargeFound> {
  const unit = nominalV / 12;
  const own = supply.openCircuitCurve;
  if (own !== undefined && own.length > 1) {
    const points = own.map((p) => [p.chargeRatio, p.openCircuitV] as const);
    const [value, lo, hi] = [volts, meterV.lo, meterV.hi].map((v) => curveCharge(points, v)) as [
      number,
      number,
      number,
    ];
    return known({ value, span: { lo, hi }, from: "rested-volts" });
  }
  if (familyOf(supply) === "lithium")
    return refused(
      "volts-say-little",
      "the rested volts of lithium iron phosphate hardly move between a fifth and nine tenths full; read its battery monitor, or say how full it is",
    );
  const { least, table, most } = HALF_CHARGE_TABLES_V;
  const at = (v: number): number => {
    const found = chargeOfLead(v);
    return found.kind === "known" ? found.value : curveCharge(leadPoints, v);
  };
  return known({
    value: at(volts / unit),
    span: { lo: at(meterV.lo / unit - (most - table)), hi: at(meterV.hi / unit + (table - least)) },
    from: "rested-volts",
    source: sourceOf("ocv-lead"),
  });
}

/**
 * How full is this bank to begin with? What was asked wins, then the charge on record, then the rested volts, then three quarters with a span from a
 * quarter to full, as the network takes it. Refused `charge-out-of-range` outside 0 to 1.
 */
export function chargeFound(supply: Supply, path: string, nominalV: number, askedRatio?: number): Outcome<ChargeFound> {
  if (askedRatio !== undefined)
    return askedRatio >= 0 && askedRatio <= 1
      ? known({ value: askedRatio, span: { lo: askedRatio, hi: askedRatio }, from: "asked" })
      : refused(
          "charge-out-of-range",
          `the charge asked for: wanted 0 to 1, got ${askedRatio}; say it as a part of full`,
        );
  const stated = supply.chargeRatio;
  if (stated !== undefined) {
    const value = figureValue(stated);
    if (!(value >= 0 && value <= 1))
      return refused(
        "charge-out-of-range",
        `${path}.chargeRatio: wanted 0 to 1, got ${value}; a charge of 80 % is written 0.8`,
      );
    const span = spanOf(stated, "ratio");
    return known({
      value,
      span: { lo: Math.max(0, span.lo), hi: Math.min(1, span.hi) },
      from: figureBasis(stated) === "assumed" ? "assumed" : "stated",
    });
  }
  if (supply.openCircuitV !== undefined) {
    const found = chargeOfRestedVolts(
      supply,
      figureValue(supply.openCircuitV),
      spanOf(supply.openCircuitV, "voltage"),
      nominalV,
    );
    if (found.kind === "known") return found;
  }
  return known({ ...UNKNOWN_CHARGE, from: "assumed" });
}
