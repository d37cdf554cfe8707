import { nominalVOf } from "../network/index.js";
import {
  COMMON_PRACTICE,
  type Figure,
  figureValue,
  known,
  missing,
  type Outcome,
  refused,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { CoachIndex, Supply } from "../record/index.js";
import { type ChargeFound, chargeFound } from "./charge-found.js";
import {
  type BatteryClassFigure,
  CLASS_BATTERY,
  type Family,
  familyOf,
  HOURS_PER_MONTH,
  MARKED_AT_C,
  UNKNOWN_BATTERY_C,
} from "./class-battery.js";
import { capacityShareAt } from "./temperature.js";

/** A figure with the span it may lie in. */
export interface Spread {
  readonly value: number;
  readonly span: Span;
}

/** A figure that the record lacks and that something stood in for: where it would be written, what was taken, and why. */
export interface EnduranceAssumed {
  readonly path: string;
  readonly value: number;
  readonly source: Source;
  readonly why: string;
}

/** One battery bank as endurance counts it. */
export interface BatteryBank {
  readonly supply: Supply;
  readonly path: string;
  readonly family: Family;
  /** As marked or measured, at its rated hours and 25 C. */
  readonly capacityAh: Spread;
  readonly ratedHours: number;
  readonly exponent: Spread;
  readonly temperatureC: Spread;
  /** Share of the capacity that the cold leaves. */
  readonly coldShare: Spread;
  /** Share of the capacity lost at rest, in one hour. */
  readonly selfPerHour: Spread;
  readonly chargeBack: Spread;
  readonly charge: ChargeFound;
  readonly assumed: readonly EnduranceAssumed[];
}

export interface BatteryOptions {
  /** How full every bank is to begin with, 0..1; as the record says where absent. */
  readonly chargeRatio?: number | undefined;
  /** Temperature of the batteries; as the record says where absent. */
  readonly batteryC?: number | undefined;
}

const exact = (value: number): Spread => ({ value, span: { lo: value, hi: value } });

/**
 * What may be counted on of this battery? Capacity is `missing` by path where the record has none; `capacity-not-positive`, `exponent-below-one`,
 * `charge-out-of-range` refuse figures that no battery has, naming the field and what to do. All else has a class figure, listed in `assumed`.
 */
export function batteryBankOf(index: CoachIndex, supply: Supply, options: BatteryOptions = {}): Outcome<BatteryBank> {
  const path = index.pathOf("supplies", supply.id);
  const family = familyOf(supply);
  const assumed: EnduranceAssumed[] = [];
  const orClass = (field: string, figure: Figure | undefined, kind: string, own: BatteryClassFigure): Spread => {
    if (figure !== undefined) return { value: figureValue(figure), span: spanOf(figure, kind) };
    assumed.push({ path: `${path}.${field}`, value: own.value, source: own.source, why: own.why });
    return { value: own.value, span: own.span };
  };
  if (supply.capacityAh === undefined) return missing(`${path}.capacityAh`);
  const capacityAh = { value: figureValue(supply.capacityAh), span: spanOf(supply.capacityAh, "capacity") };
  if (!(capacityAh.value > 0))
    return refused(
      "capacity-not-positive",
      `${path}.capacityAh: wanted more than 0 Ah, got ${capacityAh.value}; read the battery's label, or count one discharge`,
    );
  const ratedHours =
    supply.ratedHours ?? orClass("ratedHours", undefined, "time", CLASS_BATTERY.ratedHours[family]).value;
  const exponent = orClass("peukertExponent", supply.peukertExponent, "ratio", CLASS_BATTERY.exponent[family]);
  if (!(exponent.value >= 1))
    return refused(
      "exponent-below-one",
      `${path}.peukertExponent: wanted 1 or more, got ${exponent.value}; no battery gives more the harder it is drawn: take it out or read the sheet again`,
    );
  const temperatureC =
    options.batteryC !== undefined
      ? exact(options.batteryC)
      : supply.temperatureC !== undefined
        ? { value: figureValue(supply.temperatureC), span: spanOf(supply.temperatureC, "temperature") }
        : unknownTemperature(path, assumed);
  const coldPerK = CLASS_BATTERY.coldPerK[family];
  if (temperatureC.span.lo < MARKED_AT_C)
    assumed.push({
      path: `${path}.temperatureC`,
      value: coldPerK.value,
      source: coldPerK.source,
      why: `capacity lost for each kelvin below ${MARKED_AT_C} C: ${coldPerK.why}`,
    });
  const self = orClass(
    "selfDischargePerMonthRatio",
    supply.selfDischargePerMonthRatio,
    "ratio",
    CLASS_BATTERY.selfPerMonth[family],
  );
  const charge = chargeFound(supply, path, nominalVOf(index), options.chargeRatio);
  if (charge.kind !== "known") return charge;
  if (charge.value.from === "assumed" && supply.chargeRatio === undefined)
    assumed.push({
      path: `${path}.chargeRatio`,
      value: charge.value.value,
      source: COMMON_PRACTICE,
      why: "nobody looked how full it is: a quarter to full",
    });
  const back = CLASS_BATTERY.chargeBack[family];
  return known({
    supply,
    path,
    family,
    capacityAh,
    ratedHours,
    exponent: { value: exponent.value, span: { lo: Math.max(1, exponent.span.lo), hi: Math.max(1, exponent.span.hi) } },
    temperatureC,
    coldShare: {
      value: capacityShareAt(temperatureC.value, coldPerK.value),
      span: {
        lo: capacityShareAt(temperatureC.span.lo, coldPerK.span.hi),
        hi: capacityShareAt(temperatureC.span.hi, coldPerK.span.lo),
      },
    },
    selfPerHour: {
      value: Math.max(0, self.value) / HOURS_PER_MONTH,
      span: { lo: Math.max(0, self.span.lo) / HOURS_PER_MONTH, hi: Math.max(0, self.span.hi) / HOURS_PER_MONTH },
    },
    chargeBack: { value: back.value, span: back.span },
    charge: charge.value,
    assumed,
  });
}

function unknownTemperature(path: string, assumed: EnduranceAssumed[]): Spread {
  const figure: Figure = { value: UNKNOWN_BATTERY_C, basis: "assumed" };
  assumed.push({
    path: `${path}.temperatureC`,
    value: UNKNOWN_BATTERY_C,
    source: COMMON_PRACTICE,
    why: `nobody took the battery's temperature: a spring night, 15 K either way`,
  });
  return { value: UNKNOWN_BATTERY_C, span: spanOf(figure, "temperature") };
}
