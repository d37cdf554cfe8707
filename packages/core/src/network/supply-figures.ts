import { type Figure, figureValue, known, missing, type Outcome, type Span, spanOf } from "../quantity/index.js";
import type { Supply } from "../record/index.js";
import { openCircuitOfLead, sourceOf } from "../tables/index.js";
import { type Assumed, CLASS_FIGURES, type ClassFigure } from "./class-figures.js";
import type { LoadModel } from "./load-model.js";
import type { UncertainInput } from "./sampling/uncertain-input.js";
import type { CoachState } from "./state.js";

/** A figure with the interval it may lie in. */
export interface Spread {
  readonly value: number;
  readonly span: Span;
}

/** The figures of a supply that are in doubt: a battery's volts at rest and resistance, or a regulated source's volts, resistance and limit. */
export type SupplyInputs =
  | { readonly kind: "battery"; readonly emf: UncertainInput; readonly ohm: UncertainInput }
  | {
      readonly kind: "regulated";
      readonly set: UncertainInput;
      readonly output: UncertainInput;
      readonly most: UncertainInput;
    };

const inputOf = (
  path: string,
  kind: UncertainInput["kind"],
  { value, span }: Spread,
  stated: unknown,
): UncertainInput => ({ path, kind, nominal: value, span, isAssumed: stated === undefined });

export interface BatteryFigures {
  readonly inputs: SupplyInputs;
  readonly emf: Spread;
  readonly ohm: Spread;
  readonly assumed: readonly Assumed[];
}

/** The state of charge a bank is taken at when nobody looked; its span runs from a quarter to full. */
const CHARGE_UNKNOWN = 0.75;
const CHARGE_UNKNOWN_SPAN: Span = { lo: 0.25, hi: 1 };

const interpolate = (points: readonly (readonly [number, number])[], x: number): number => {
  const sorted = [...points].sort((a, b) => a[0] - b[0]);
  const first = sorted[0]!;
  const last = sorted.at(-1)!;
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  const above = sorted.findIndex((point) => point[0] >= x);
  const [x1, y1] = sorted[above]!;
  const [x0, y0] = sorted[above - 1]!;
  return x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
};

/** Rested volts of this bank at this state of charge: its own curve, else the published one of its chemistry. */
function openCircuitAt(supply: Supply, chargeRatio: number, nominalV: number): number {
  const curve = supply.openCircuitCurve;
  if (curve && curve.length > 0)
    return interpolate(
      curve.map((p) => [p.chargeRatio, p.openCircuitV] as const),
      chargeRatio,
    );
  if (supply.chemistry === "lifepo4") return (LITHIUM_RESTED_V * nominalV) / 12;
  const rested = openCircuitOfLead(Math.min(1, Math.max(0, chargeRatio)));
  return ((rested.kind === "known" ? rested.value : Number.NaN) * nominalV) / 12;
}

/** Four cells at half charge, as one public guide gives them (seen); between a fifth and nine tenths the volts hardly move. */
const LITHIUM_RESTED_V = 13.08;
const LITHIUM_SPAN: Span = { lo: 12.8, hi: 13.5 };

const spread = (figure: Figure, kind: string): Spread => ({ value: figureValue(figure), span: spanOf(figure, kind) });

/** Volts at rest and internal resistance of a battery bank in this state. */
export function batteryFigures(supply: Supply, state: CoachState, nominalV: number, path: string): BatteryFigures {
  const assumed: Assumed[] = [];
  const source = sourceOf(supply.chemistry === "lifepo4" ? "lifepo4" : "ocv-lead");
  const atCharge = (chargeRatio: number, span: Span): Spread => {
    const value = openCircuitAt(supply, chargeRatio, nominalV);
    assumed.push({ path: `${path}.openCircuitV`, value, source });
    if (supply.chemistry === "lifepo4" && !supply.openCircuitCurve?.length) {
      const unit = nominalV / 12;
      return { value, span: { lo: LITHIUM_SPAN.lo * unit, hi: LITHIUM_SPAN.hi * unit } };
    }
    const lo = spanOf({ value: openCircuitAt(supply, span.lo, nominalV), basis: "marked" }, "voltage").lo;
    const hi = spanOf({ value: openCircuitAt(supply, span.hi, nominalV), basis: "marked" }, "voltage").hi;
    return { value, span: { lo: Math.min(lo, value), hi: Math.max(hi, value) } };
  };
  let emf: Spread;
  if (state.chargeRatio !== undefined)
    emf = atCharge(state.chargeRatio, { lo: state.chargeRatio, hi: state.chargeRatio });
  else if (supply.openCircuitV !== undefined) emf = spread(supply.openCircuitV, "voltage");
  else if (supply.chargeRatio !== undefined) {
    const charge = spread(supply.chargeRatio, "ratio");
    emf = atCharge(charge.value, { lo: Math.max(0, charge.span.lo), hi: Math.min(1, charge.span.hi) });
  } else emf = atCharge(CHARGE_UNKNOWN, CHARGE_UNKNOWN_SPAN);
  let ohm: Spread;
  if (supply.internalResistanceOhm !== undefined) ohm = spread(supply.internalResistanceOhm, "resistance");
  else {
    const capacityAh = supply.capacityAh === undefined ? undefined : figureValue(supply.capacityAh);
    const own: ClassFigure = capacityAh && capacityAh > 0 ? CLASS_FIGURES.batteryOhmAh : CLASS_FIGURES.batteryOhm;
    const unit = nominalV / 12 / (capacityAh && capacityAh > 0 ? capacityAh : 1);
    ohm = { value: own.value * unit, span: { lo: own.span.lo * unit, hi: own.span.hi * unit } };
    assumed.push({ path: `${path}.internalResistanceOhm`, value: ohm.value, source: own.source });
  }
  const isStated = state.chargeRatio === undefined ? supply.openCircuitV : undefined;
  const inputs: SupplyInputs = {
    kind: "battery",
    emf: inputOf(`${path}.openCircuitV`, "voltage", emf, isStated),
    ohm: inputOf(`${path}.internalResistanceOhm`, "resistance", ohm, supply.internalResistanceOhm),
  };
  return { emf, ohm, inputs, assumed };
}

export interface RegulatedFigures {
  readonly inputs: SupplyInputs;
  readonly nominal: LoadModel;
  /** Draws least of the network's current: gives most. */
  readonly strongest: LoadModel;
  readonly weakest: LoadModel;
  readonly assumed: readonly Assumed[];
}

/** A charger, converter, alternator feed or solar as a regulated source with a limit. Missing without its volts and its amperes. */
export function regulatedFigures(supply: Supply, path: string): Outcome<RegulatedFigures> {
  const needs: string[] = [];
  if (supply.outputV === undefined) needs.push(`${path}.outputV`);
  if (supply.ratedA === undefined) needs.push(`${path}.ratedA`);
  if (supply.outputV === undefined || supply.ratedA === undefined) return missing(...needs);
  const set = spread(supply.outputV, "voltage");
  const most = spread(supply.ratedA, "rating");
  if (!(set.value > 0 && most.value > 0)) return missing(`${path}.outputV`, `${path}.ratedA`);
  const assumed: Assumed[] = [];
  const droop = CLASS_FIGURES.outputDroopRatio;
  let output: Spread;
  if (supply.internalResistanceOhm !== undefined) output = spread(supply.internalResistanceOhm, "resistance");
  else {
    const unit = set.value / most.value;
    output = { value: droop.value * unit, span: { lo: droop.span.lo * unit, hi: droop.span.hi * unit } };
    assumed.push({ path: `${path}.internalResistanceOhm`, value: output.value, source: droop.source });
  }
  const of = (setV: number, outputOhm: number, maxA: number): LoadModel => ({
    kind: "regulated",
    setV,
    outputOhm: Math.max(outputOhm, 1e-6),
    maxA,
  });
  return known({
    inputs: {
      kind: "regulated",
      set: inputOf(`${path}.outputV`, "voltage", set, supply.outputV),
      output: inputOf(`${path}.internalResistanceOhm`, "resistance", output, supply.internalResistanceOhm),
      most: inputOf(`${path}.ratedA`, "rating", most, supply.ratedA),
    },
    nominal: of(set.value, output.value, most.value),
    strongest: of(set.span.hi, output.span.lo, most.span.hi),
    weakest: of(set.span.lo, output.span.hi, most.span.lo),
    assumed,
  });
}
