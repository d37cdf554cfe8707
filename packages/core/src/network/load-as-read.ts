import { type Figure, figureValue, known, type Outcome, type Span } from "../quantity/index.js";
import type { Load } from "../record/index.js";
import { currentOn, spanOver } from "./line-set.js";
import { fitLamp, type LampFit } from "./load-fit.js";
import { FILAMENT_CURRENT_EXPONENT } from "./load-model.js";

/** What a load's own readings say, or why they say nothing. Undefined where it has none. */
export function fitOfLoad(load: Load, nominalV: number): Outcome<LampFit> | undefined {
  if (load.drawReadings === undefined || load.drawReadings.length === 0) return undefined;
  return fitLamp(load.drawReadings, { class: load.class, nominalV, forwardV: load.ledForwardV });
}

/** Current of one piece at these volts by a fit, A: nominal and span. */
export function currentByFit(fit: LampFit, voltageV: number): { readonly nominal: number; readonly span: Span } {
  if (fit.kind === "led")
    return {
      nominal: Math.max(0, currentOn(fit.nominalLine, voltageV)),
      span: spanOver(fit.lines, (line) => Math.max(0, currentOn(line, voltageV))),
    };
  const at = (figure: number): number => {
    if (fit.kind === "current") return figure;
    if (fit.kind === "power") return figure / voltageV;
    if (fit.kind === "resistance") return voltageV / figure;
    return figure * voltageV ** FILAMENT_CURRENT_EXPONENT;
  };
  const [a, b] = [at(fit.span.lo), at(fit.span.hi)];
  return { nominal: at(fit.nominal), span: { lo: Math.min(a, b), hi: Math.max(a, b) } };
}

/** A measured figure whose stated doubt reaches both ends of the span. */
const measured = (nominal: number, span: Span): Figure => ({
  value: nominal,
  basis: "measured",
  plusMinus: Math.max(span.hi - nominal, nominal - span.lo, 0),
});

/**
 * The load with its readings in the place of its label: its current at the rated volts and, for a ballasted LED, its forward volts. Unchanged where
 * it has no readings, no class, or readings that contradict each other (a finding of its own then says so).
 */
export function loadAsRead(load: Load, nominalV: number): Load {
  const fit = fitOfLoad(load, nominalV);
  if (fit?.kind !== "known") return load;
  const ratedV = load.ratedV === undefined ? nominalV : figureValue(load.ratedV);
  if (!(ratedV > 0)) return load;
  const { nominal, span } = currentByFit(fit.value, ratedV);
  const { powerW: _, ledResistorOhm: __, ...rest } = load;
  return {
    ...rest,
    ratedV: load.ratedV ?? nominalV,
    currentA: measured(nominal, span),
    ...(fit.value.kind === "led" ? { ledForwardV: measured(fit.value.forwardV.nominal, fit.value.forwardV.span) } : {}),
  };
}

/** Do the readings and the figure on the label have a current in common at the rated volts? Undefined where there is nothing to compare. */
export function labelAgainstReadings(
  load: Load,
  nominalV: number,
  labelA: Span,
): Outcome<{ readonly readA: Span; readonly labelA: Span; readonly agrees: boolean }> | undefined {
  const fit = fitOfLoad(load, nominalV);
  if (fit?.kind !== "known" || load.ratedV === undefined) return undefined;
  const readA = currentByFit(fit.value, figureValue(load.ratedV)).span;
  return known({ readA, labelA, agrees: readA.lo <= labelA.hi && labelA.lo <= readA.hi });
}
