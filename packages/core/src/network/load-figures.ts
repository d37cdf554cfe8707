import { type Figure, figureValue, known, missing, type Outcome, type Span, spanOf } from "../quantity/index.js";
import type { Load, LoadClass } from "../record/index.js";
import { type Assumed, CLASS_FIGURES, type ClassFigure } from "./class-figures.js";
import { loadAsRead } from "./load-as-read.js";
import type { LoadModel } from "./load-model.js";

/** A load's model and two that hold the truth between them at all volts: `least` never draws more, `most` never less. */
export interface LoadFigures {
  readonly nominal: LoadModel;
  readonly least: LoadModel;
  readonly most: LoadModel;
  /** What all pieces draw together at the rated volts. */
  readonly ratedA: number;
  readonly ratedSpan: Span;
  readonly assumed: readonly Assumed[];
}

/** How each class answers to its volts. Common practice, no source. */
export const MODEL_OF_CLASS: Readonly<Record<LoadClass, LoadModel["kind"]>> = {
  "led-resistor": "led",
  "led-linear": "current",
  "led-driver": "power",
  filament: "filament",
  motor: "motor",
  pump: "motor",
  fan: "motor",
  actuator: "motor",
  valve: "resistance",
  "relay-coil": "resistance",
  "heater-control": "current",
  "inverter-remote": "current",
  electronics: "power",
  outlet: "current",
  detector: "current",
  "resistive-heater": "resistance",
};

/** A load whose class is not known may be anything from a resistance to constant power: at volts within 15 % of rated that is this much either way. */
export const UNKNOWN_CLASS_RATIO = 0.2;

interface Trio {
  readonly nominal: number;
  readonly lo: number;
  readonly hi: number;
}

/**
 * What does this load draw at any volts? Readings of volts and amps win over the label (see `loadAsRead`), current over power; rated volts are
 * taken as stated, the coach's nominal volts where absent. Shapes (forward voltage, drop-out, stall) come from the class where the record has none,
 * and are listed as assumed. Missing without any current or power.
 */
export function loadFiguresOf(onRecord: Load, nominalV: number, path: string, isStalled = false): Outcome<LoadFigures> {
  const load = loadAsRead(onRecord, nominalV);
  const assumed: Assumed[] = [];
  const pieces = load.quantity ?? 1;
  const ratedV = load.ratedV === undefined ? nominalV : figureValue(load.ratedV);
  if (load.ratedV === undefined)
    assumed.push({
      path: `${path}.ratedV`,
      value: nominalV,
      source: { id: "nominal-volts", name: "the coach's nominal volts", how: "practice" },
    });
  const trio = (figure: Figure, kind: string): Trio => {
    const span = spanOf(figure, kind);
    return { nominal: figureValue(figure), lo: Math.max(0, span.lo), hi: span.hi };
  };
  const classFigure = (
    field: string,
    figure: Figure | undefined,
    kind: string,
    own: ClassFigure,
    unit: number,
  ): Trio => {
    if (figure !== undefined) return trio(figure, kind);
    assumed.push({ path: `${path}.${field}`, value: own.value * unit, source: own.source });
    return { nominal: own.value * unit, lo: own.span.lo * unit, hi: own.span.hi * unit };
  };
  const stated =
    load.currentA !== undefined
      ? trio(load.currentA, "current")
      : load.powerW !== undefined
        ? trio(load.powerW, "power")
        : undefined;
  const ledGiven = load.ledForwardV !== undefined && load.ledResistorOhm !== undefined;
  if (!(ratedV > 0)) return missing(`${path}.ratedV`);
  const kind = load.class === undefined ? "current" : MODEL_OF_CLASS[load.class];
  if (isStalled && kind === "motor" && load.stallA !== undefined) {
    const stall = trio(load.stallA, "current");
    return finish(
      (at) => ({ kind: "resistance", resistanceOhm: ratedV / Math.max(1e-9, stall[at] * pieces) }),
      stall,
      pieces,
      assumed,
    );
  }
  if (kind === "led" && ledGiven) {
    const forward = trio(load.ledForwardV!, "voltage");
    const ohm = trio(load.ledResistorOhm!, "resistance");
    const of = (v: number, r: number): LoadModel => ({
      kind: "led",
      forwardV: v,
      resistanceOhm: Math.max(r, 1e-6) / pieces,
    });
    const at = (v: number, r: number) => (pieces * Math.max(0, ratedV - v)) / Math.max(r, 1e-6);
    return known({
      nominal: of(forward.nominal, ohm.nominal),
      least: of(forward.hi, ohm.hi),
      most: of(forward.lo, ohm.lo),
      ratedA: at(forward.nominal, ohm.nominal),
      ratedSpan: { lo: at(forward.hi, ohm.hi), hi: at(forward.lo, ohm.lo) },
      assumed,
    });
  }
  if (stated === undefined) return missing(`${path}.currentA`);
  const perVolt = load.currentA !== undefined ? 1 : 1 / ratedV;
  const widen = load.class === undefined ? UNKNOWN_CLASS_RATIO : 0;
  const current: Trio = {
    nominal: stated.nominal * perVolt * pieces,
    lo: stated.lo * perVolt * pieces * (1 - widen),
    hi: stated.hi * perVolt * pieces * (1 + widen),
  };
  if (!(current.nominal >= 0)) return missing(`${path}.currentA`);
  switch (kind) {
    case "resistance":
      return finish(
        (at) => ({ kind: "resistance", resistanceOhm: ratedV / Math.max(1e-9, current[at]) }),
        current,
        1,
        assumed,
      );
    case "filament":
      return finish((at) => ({ kind: "filament", currentA: current[at], ratedV }), current, 1, assumed);
    case "current": {
      const knee = classFigure("class", undefined, "voltage", CLASS_FIGURES.kneeRatio, nominalV);
      if (load.class !== undefined) assumed.pop();
      return finish(
        (at) => ({ kind: "current", currentA: current[at], kneeV: knee[opposite(at)] }),
        current,
        1,
        assumed,
      );
    }
    case "power": {
      const out = classFigure("dropOutV", load.dropOutV, "voltage", CLASS_FIGURES.dropOutRatio, nominalV);
      return finish(
        (at) => ({ kind: "power", powerW: current[at] * ratedV, dropOutV: Math.max(1e-3, out[opposite(at)]) }),
        current,
        1,
        assumed,
      );
    }
    case "motor": {
      const ratio =
        load.stallA === undefined
          ? classFigure("stallA", undefined, "current", CLASS_FIGURES.stallOverRunning, 1)
          : undefined;
      const stall = load.stallA === undefined ? undefined : trio(load.stallA, "current");
      const stallA = (at: keyof Trio) =>
        Math.max(current[at], stall ? stall[at] * pieces : ratio![at] * current[at], 1e-9);
      return finish(
        (at) => ({ kind: "motor", runningA: current[at], stallOhm: ratedV / stallA(at) }),
        current,
        1,
        assumed,
      );
    }
    default:
      return ledThroughPoint(load, current, ratedV, nominalV, classFigure, assumed);
  }
}

const opposite = (at: keyof Trio): keyof Trio => (at === "lo" ? "hi" : at === "hi" ? "lo" : "nominal");

function finish(
  model: (at: keyof Trio) => LoadModel,
  current: Trio,
  pieces: number,
  assumed: Assumed[],
): Outcome<LoadFigures> {
  return known({
    nominal: model("nominal"),
    least: model("lo"),
    most: model("hi"),
    ratedA: current.nominal * pieces,
    ratedSpan: { lo: current.lo * pieces, hi: current.hi * pieces },
    assumed,
  });
}

/** An LED string known by its current at rated volts: the doubt in its forward voltage turns its line about that point, so the bounds are bent there. */
function ledThroughPoint(
  load: Load,
  current: Trio,
  ratedV: number,
  nominalV: number,
  classFigure: (field: string, figure: Figure | undefined, kind: string, own: ClassFigure, unit: number) => Trio,
  assumed: Assumed[],
): Outcome<LoadFigures> {
  const forward = classFigure("ledForwardV", load.ledForwardV, "voltage", CLASS_FIGURES.ledForwardRatio, nominalV);
  const below = (v: number) => Math.min(v, 0.95 * ratedV);
  const ohm = (v: number, a: number) => (ratedV - below(v)) / Math.max(a, 1e-9);
  const line = (v: number, a: number): LoadModel => ({ kind: "led", forwardV: below(v), resistanceOhm: ohm(v, a) });
  const bent = (v: number, aboveV: number, a: number): LoadModel => ({
    ...(line(v, a) as LoadModel & { kind: "led" }),
    bendV: ratedV,
    aboveOhm: ohm(aboveV, a),
  });
  return known({
    nominal: line(forward.nominal, current.nominal),
    least: bent(forward.hi, forward.lo, current.lo),
    most: bent(forward.lo, forward.hi, current.hi),
    ratedA: current.nominal,
    ratedSpan: { lo: current.lo, hi: current.hi },
    assumed,
  });
}

/** The load's model at its nominal figures; see `loadFiguresOf`. */
export function loadModelOf(load: Load, nominalV = 12, path = "loads[?]"): Outcome<LoadModel> {
  const figures = loadFiguresOf(load, nominalV, path);
  return figures.kind === "known" ? known(figures.value.nominal) : figures;
}
