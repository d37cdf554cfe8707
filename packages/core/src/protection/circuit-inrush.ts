import { type Assumed, loadFiguresOf, nominalVOf } from "../network/index.js";
import { known, missing, type Outcome, refused, type Source } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import { type FarFault, faultAtFarEnd } from "./far-fault.js";
import { type Inrush, inrushFrom } from "./inrush.js";
import { COARSE_STEP_RATIO, type InrushFeed, inrushCurve } from "./inrush-curve.js";
import { inrushUnitsOf } from "./inrush-figures.js";
import type { InrushUnit } from "./inrush-units.js";

/**
 * What runs through this circuit's fuse when all its loads start at one moment? They share battery, cables, channel and wires; the loads' own tails
 * are left out (they make it milder). At most: the coach held at its chargers' volts. `fault`: its short at the far end, where that is known already.
 * Missing names every field of way and loads that is wanted.
 */
export function circuitInrushOf(
  index: CoachIndex,
  circuitId: string,
  fault: Outcome<FarFault> = faultAtFarEnd(index, circuitId),
): Outcome<Inrush> {
  if (fault.kind === "refused") return fault;
  const circuit = index.circuits.get(circuitId as never)!;
  const needs: string[] = fault.kind === "missing" ? [...fault.needs] : [];
  const nominalV = nominalVOf(index);
  const nominal: InrushUnit[] = [];
  const least: InrushUnit[] = [];
  const most: InrushUnit[] = [];
  const assumed: Assumed[] = [];
  const sources: Source[] = [];
  for (const [n, id] of (circuit.loads ?? []).entries()) {
    const load = index.loads.get(id);
    if (load === undefined) {
      needs.push(`${index.pathOf("circuits", circuit.id)}.loads[${n}]`);
      continue;
    }
    const path = index.pathOf("loads", id);
    const figures = loadFiguresOf(load, nominalV, path);
    const units = figures.kind === "known" ? inrushUnitsOf(load, figures.value, nominalV, path) : figures;
    if (units.kind === "missing") needs.push(...units.needs);
    if (units.kind === "refused") return units;
    if (units.kind !== "known") continue;
    nominal.push(units.value.nominal);
    least.push(units.value.least);
    most.push(units.value.most);
    assumed.push(...(figures.kind === "known" ? figures.value.assumed : []), ...units.value.assumed);
    sources.push(...units.value.sources);
  }
  if (needs.length > 0) return missing(...new Set(needs));
  if (fault.kind !== "known") return fault;
  if (nominal.length === 0) return refused("no-loads", `${circuitId} has no loads on record`);
  const { source, ownOhm, ownSpan } = fault.value;
  const curve = (units: readonly InrushUnit[], feed: InrushFeed) => inrushCurve(units, feed, COARSE_STEP_RATIO);
  return known(
    inrushFrom(
      {
        nominal: curve(nominal, { supplyV: source.emfV, loopOhm: source.ohm + ownOhm }),
        least: curve(least, { supplyV: source.emfSpan.lo, loopOhm: source.ohmSpan.hi + ownSpan.hi }),
        most: curve(most, {
          supplyV: Math.max(source.emfSpan.hi, source.charged.emfV),
          loopOhm: Math.min(source.ohmSpan.lo, source.charged.ohm) + ownSpan.lo,
        }),
      },
      sources,
      assumed,
    ),
  );
}
