import { type Assumed, CLASS_FIGURES, type LoadFigures } from "../network/index.js";
import {
  type Figure,
  figureValue,
  known,
  missing,
  type Outcome,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { Load, LoadClass } from "../record/index.js";
import { sourceOf } from "../tables/index.js";
import type { InrushUnit } from "./inrush-units.js";

/** A class figure of starting, where the record has none. */
interface StartFigure {
  readonly value: number;
  readonly span: Span;
  readonly source: Source;
}

const memory = (value: number, lo: number, hi: number): StartFigure => ({
  value,
  span: { lo, hi },
  source: { id: "class-figure", name: "class figure from memory, no source", how: "memory" },
});

/** Cold current of a filament over its warm current: published ratios of 10 to 15, about 14 (table `lamp-inrush`, seen). */
export const HOT_OVER_COLD: StartFigure = { value: 14, span: { lo: 10, hi: 15 }, source: sourceOf("lamp-inrush") };
/**
 * Heat that a filament holds at rated volts over its rated watts, s. The quick end falls to twice its current in 3 ms (a lamp-driver note, table
 * `lamp-inrush`, seen; computed); a thick low-volt filament is from memory.
 */
export const FILAMENT_HEAT_S = memory(0.1, 0.023, 0.7);
/** Of a lamp coil, C; it hardly moves the result. */
const FILAMENT_C = 2550;
/** Starting current of a motor loses two thirds of its excess in this time, s. */
const RUN_UP_S: Readonly<Partial<Record<LoadClass, StartFigure>>> = {
  fan: memory(0.4, 0.1, 2),
  pump: memory(0.1, 0.03, 0.3),
  motor: memory(0.1, 0.03, 0.3),
  actuator: memory(0.1, 0.03, 0.3),
};
/** Input capacitor of a driver for each watt it takes, F/W, on 12 V; on 24 V a quarter stores the same. */
const FARAD_PER_WATT_12V = memory(30e-6, 5e-6, 100e-6);
/** Of one driver's input: capacitor, filter, bridge or reverse guard. */
const INPUT_OHM = memory(0.1, 0.03, 0.4);

/** Loads with a capacitor at their input. Common practice, no source. */
const WITH_CAPACITOR: ReadonlySet<LoadClass> = new Set([
  "led-driver",
  "electronics",
  "detector",
  "heater-control",
  "inverter-remote",
]);

export interface InrushUnits {
  readonly nominal: InrushUnit;
  /** Starts mildest and shortest, and fiercest and longest, of what the figures allow. */
  readonly least: InrushUnit;
  readonly most: InrushUnit;
  readonly assumed: readonly Assumed[];
  readonly sources: readonly Source[];
}

type At = "nominal" | "lo" | "hi";

/**
 * How does this load start? Filaments cold, motors from rest, drivers with an empty capacitor; everything else draws what it draws (coils rise,
 * which is milder). Figures of the record first, else of the class, listed as assumed. Missing: the class; of an outlet `inrushRatio`, since
 * nobody knows what will be plugged in.
 */
export function inrushUnitsOf(load: Load, figures: LoadFigures, nominalV: number, path: string): Outcome<InrushUnits> {
  if (load.class === undefined) return missing(`${path}.class`);
  const ratedV = load.ratedV === undefined ? nominalV : figureValue(load.ratedV);
  const pieces = load.quantity ?? 1;
  const assumed: Assumed[] = [];
  const sources: Source[] = [];
  const figure = (field: string, stated: Figure | undefined, kind: string, own: StartFigure): Record<At, number> => {
    if (stated !== undefined) {
      const span = spanOf(stated, kind);
      return { nominal: figureValue(stated), lo: Math.max(1e-12, span.lo), hi: span.hi };
    }
    assumed.push({ path: `${path}.${field}`, value: own.value, source: own.source });
    sources.push(own.source);
    return { nominal: own.value, ...own.span };
  };
  const currentA: Record<At, number> = { nominal: figures.ratedA, ...figures.ratedSpan };
  if (!(currentA.nominal > 0)) return steady(currentA, assumed, sources);
  const of = (unit: (at: At) => InrushUnit): Outcome<InrushUnits> =>
    known({ nominal: unit("nominal"), least: unit("lo"), most: unit("hi"), assumed, sources });
  const amps = (at: At): number => Math.max(1e-9, currentA[at]);
  const ratio = load.inrushRatio;
  if (load.class === "filament") {
    const cold = figure("inrushRatio", ratio, "ratio", HOT_OVER_COLD);
    const heat = heatOf(load, figure);
    return of((at) => ({
      kind: "filament",
      hotOhm: ratedV / amps(at),
      ratedV,
      hotOverCold: Math.max(1, cold[at]),
      heatS: heat[at],
      hotC: FILAMENT_C,
    }));
  }
  const runUp = RUN_UP_S[load.class];
  if (runUp !== undefined) {
    const over =
      ratio !== undefined
        ? figure("inrushRatio", ratio, "ratio", CLASS_FIGURES.stallOverRunning)
        : load.stallA === undefined
          ? figure("stallA", undefined, "current", CLASS_FIGURES.stallOverRunning)
          : undefined;
    const stall =
      over === undefined ? figure("stallA", load.stallA, "current", CLASS_FIGURES.stallOverRunning) : undefined;
    const timeS = figure("runUpS", load.runUpS, "time", runUp);
    const peakA = (at: At) => Math.max(amps(at), stall ? stall[at] * pieces : over![at] * amps(at));
    return of((at) => ({
      kind: "motor",
      ohm: ratedV / peakA(at),
      runningA: amps(at),
      runUpS: Math.max(1e-6, timeS[at]),
    }));
  }
  if (WITH_CAPACITOR.has(load.class)) {
    const watt = (at: At) => amps(at) * ratedV;
    const perWatt = (12 / nominalV) ** 2;
    const farad =
      load.inputCapacitanceF === undefined
        ? figure("inputCapacitanceF", undefined, "any", FARAD_PER_WATT_12V)
        : figure("inputCapacitanceF", load.inputCapacitanceF, "any", FARAD_PER_WATT_12V);
    const peak = ratio === undefined ? undefined : figure("inrushRatio", ratio, "ratio", INPUT_OHM);
    const input = peak === undefined ? figure("inrushRatio", undefined, "resistance", INPUT_OHM) : undefined;
    const opposite = (at: At): At => (at === "lo" ? "hi" : at === "hi" ? "lo" : "nominal");
    return of((at) => ({
      kind: "capacitor",
      ohm: input ? input[opposite(at)] / pieces : ratedV / (Math.max(1, peak![at]) * amps(at)),
      farad: load.inputCapacitanceF === undefined ? farad[at] * watt(at) * perWatt : farad[at] * pieces,
      powerW: watt(at),
      dropOutV: dropOutOf(load, nominalV),
    }));
  }
  if (ratio !== undefined) {
    const over = figure("inrushRatio", ratio, "ratio", INPUT_OHM);
    const timeS = figure("runUpS", load.runUpS, "time", memory(0.02, 0.002, 0.2));
    return of((at) => ({
      kind: "motor",
      ohm: ratedV / (Math.max(1, over[at]) * amps(at)),
      runningA: amps(at),
      runUpS: timeS[at],
    }));
  }
  return load.class === "outlet" ? missing(`${path}.inrushRatio`) : steady(currentA, assumed, sources);
}

const steady = (currentA: Record<At, number>, assumed: readonly Assumed[], sources: readonly Source[]) =>
  known<InrushUnits>({
    nominal: { kind: "steady", currentA: currentA.nominal },
    least: { kind: "steady", currentA: currentA.lo },
    most: { kind: "steady", currentA: currentA.hi },
    assumed,
    sources,
  });

const dropOutOf = (load: Load, nominalV: number): number =>
  load.dropOutV === undefined
    ? CLASS_FIGURES.dropOutRatio.value * nominalV
    : Math.max(1e-3, figureValue(load.dropOutV));

/** A cooling constant on record says it: near its rated heat a filament loses four times as fast as it is hotter, so it holds 4 (1 - cold/hot) of them. */
function heatOf(
  load: Load,
  figure: (field: string, stated: Figure | undefined, kind: string, own: StartFigure) => Record<At, number>,
): Record<At, number> {
  const stated = load.filamentTimeConstantS;
  if (stated === undefined) return figure("filamentTimeConstantS", undefined, "time", FILAMENT_HEAT_S);
  const heats = 4 * (1 - 293.15 / (FILAMENT_C + 273.15));
  const constant = figure("filamentTimeConstantS", stated, "time", FILAMENT_HEAT_S);
  return { nominal: heats * constant.nominal, lo: heats * constant.lo, hi: heats * constant.hi };
}
