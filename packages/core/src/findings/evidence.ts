import { type Figure, figureBasis, figureValue, spanOf } from "../quantity/index.js";
import type { Evidence } from "./finding.js";

const KIND_OF_UNIT: Readonly<Partial<Record<Evidence["unit"], string>>> = {
  A: "current",
  V: "voltage",
  W: "power",
  ohm: "resistance",
  m: "length",
  mm2: "section",
  C: "temperature",
  ratio: "ratio",
  Hz: "frequency",
  Ah: "capacity",
  min: "time",
  count: "count",
};

/** A figure of the record as evidence: value, how it is known, and the span it may lie in. `kind` where the unit alone does not say: a rating is not a current. */
export function figureEvidence(
  path: string,
  label: Evidence["label"],
  unit: Evidence["unit"],
  figure: Figure,
  kind = KIND_OF_UNIT[unit] ?? "any",
): Evidence {
  return {
    path,
    label,
    unit,
    value: figureValue(figure),
    basis: figureBasis(figure),
    span: spanOf(figure, kind),
  };
}

/** Something written down, or counted, as evidence. */
export const textEvidence = (path: string, label: Evidence["label"], value: string): Evidence => ({
  path,
  label,
  unit: "text",
  value,
});
