import { type Assumed, loadFiguresOf } from "../network/index.js";
import { known, type Outcome, type Source, type Span } from "../quantity/index.js";
import type { Load } from "../record/index.js";
import { type InrushCurve, inrushAt, inrushCurve } from "./inrush-curve.js";
import { inrushUnitsOf } from "./inrush-figures.js";

/** How a load, or all loads of a circuit together, start. */
export interface Inrush {
  readonly peakA: number;
  readonly peakSpan: Span;
  readonly steadyA: number;
  /** Time in which the excess over the steady current falls to 1/e; 0 where there is none. */
  readonly timeConstantS: number;
  /** Joule integral until the excess is a tenth of the steady current, A2s. */
  readonly jouleA2s: number;
  readonly jouleSpan: Span;
  /** Nominal current at any time after switching on. */
  currentAt(timeS: number): number;
  readonly curve: InrushCurve;
  /** The mildest and shortest, the fiercest and longest of what the figures allow. */
  readonly least: InrushCurve;
  readonly most: InrushCurve;
  readonly sources: readonly Source[];
  readonly assumed: readonly Assumed[];
}

export interface InrushOptions {
  /** All that lies before the load: battery, cables, channel, wires; none where absent. */
  readonly loopOhm?: number;
  readonly loopSpan?: Span;
  /** Volts at rest of what feeds it; the coach's nominal volts where absent. */
  readonly supplyV?: number;
  readonly supplySpan?: Span;
  /** Path of the load in the record. */
  readonly path?: string;
}

export const inrushFrom = (
  curves: { readonly nominal: InrushCurve; readonly least: InrushCurve; readonly most: InrushCurve },
  sources: readonly Source[],
  assumed: readonly Assumed[],
): Inrush => {
  const { nominal, least, most } = curves;
  const ends = (of: (curve: InrushCurve) => number): Span => {
    const all = [of(nominal), of(least), of(most)];
    return { lo: Math.min(...all), hi: Math.max(...all) };
  };
  return {
    peakA: nominal.peakA,
    peakSpan: ends((curve) => curve.peakA),
    steadyA: nominal.steadyA,
    timeConstantS: nominal.timeConstantS,
    jouleA2s: nominal.startJouleA2s,
    jouleSpan: ends((curve) => curve.startJouleA2s),
    currentAt: (timeS) => inrushAt(nominal, timeS),
    curve: nominal,
    least,
    most,
    sources: [...new Map(sources.map((source) => [source.id, source])).values()],
    assumed,
  };
};

/**
 * What does this load draw from the moment it is switched on? Peak, how it falls, and what a fuse must let through; see `inrushUnitsOf` for which
 * figures it rests on and what is missing. The capacitor of a driver charges through the loop: without `loopOhm` only its own resistance holds it back.
 */
export function inrushOf(load: Load, nominalV: number, options: InrushOptions = {}): Outcome<Inrush> {
  const { path = `loads/${load.id}`, loopOhm = 0, supplyV = nominalV } = options;
  const figures = loadFiguresOf(load, nominalV, path);
  if (figures.kind !== "known") return figures;
  const units = inrushUnitsOf(load, figures.value, nominalV, path);
  if (units.kind !== "known") return units;
  const { nominal, least, most, sources } = units.value;
  const loop = options.loopSpan ?? { lo: loopOhm, hi: loopOhm };
  const supply = options.supplySpan ?? { lo: supplyV, hi: supplyV };
  return known(
    inrushFrom(
      {
        nominal: inrushCurve([nominal], { supplyV, loopOhm }),
        least: inrushCurve([least], { supplyV: supply.lo, loopOhm: loop.hi }),
        most: inrushCurve([most], { supplyV: supply.hi, loopOhm: loop.lo }),
      },
      sources,
      [...figures.value.assumed, ...units.value.assumed],
    ),
  );
}
