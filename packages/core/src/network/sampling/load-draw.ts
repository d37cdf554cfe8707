import { type Figure, type FigureKind, figureValue, type Span, spanOf } from "../../quantity/index.js";
import type { Load } from "../../record/index.js";
import { CLASS_FIGURES, type ClassFigure } from "../class-figures.js";
import { loadAsRead } from "../load-as-read.js";
import { MODEL_OF_CLASS, UNKNOWN_CLASS_RATIO } from "../load-figures.js";
import type { LoadModel } from "../load-model.js";
import type { UncertainInput } from "./uncertain-input.js";

/** How a load's model follows from its figures: what it draws, in A, W or ohm as stated, and the figure that shapes it. */
export interface LoadDraw {
  readonly kind: LoadModel["kind"];
  /** Current or power of one piece; of an LED known by volts and resistor, its resistor; of a stalled motor, its stall current. */
  readonly stated: UncertainInput;
  /** A load whose class is not known: how much more or less it may draw, 1 at nominal. */
  readonly spread?: UncertainInput;
  /** Forward volts, drop-out volts, stall current of one piece or stall over running. */
  readonly shape?: UncertainInput;
  /** Rated amperes of all pieces for one unit of `stated`. */
  readonly perUnit: number;
  readonly pieces: number;
  readonly ratedV: number;
  readonly kneeV: number;
  readonly by: "current" | "resistor" | "stalled";
  readonly isStallRatio: boolean;
}

const input = (path: string, kind: FigureKind, nominal: number, span: Span, isAssumed: boolean): UncertainInput => ({
  path,
  kind,
  nominal,
  span: { lo: Math.max(0, span.lo), hi: span.hi },
  isAssumed,
});

const ofFigure = (path: string, kind: FigureKind, figure: Figure): UncertainInput =>
  input(path, kind, figureValue(figure), spanOf(figure, kind), false);

const ofClass = (path: string, kind: FigureKind, own: ClassFigure, unit: number): UncertainInput =>
  input(path, kind, own.value * unit, { lo: own.span.lo * unit, hi: own.span.hi * unit }, true);

/** What of this load is in doubt and how its model hangs on it: the figures of `loadFiguresOf` one by one. Undefined where the load draws an unknown current. */
export function loadDrawOf(onRecord: Load, nominalV: number, path: string, isStalled = false): LoadDraw | undefined {
  const load = loadAsRead(onRecord, nominalV);
  const pieces = load.quantity ?? 1;
  const ratedV = load.ratedV === undefined ? nominalV : figureValue(load.ratedV);
  const kind = load.class === undefined ? "current" : MODEL_OF_CLASS[load.class];
  const kneeV = CLASS_FIGURES.kneeRatio.value * nominalV;
  const rest = { pieces, ratedV, kneeV, isStallRatio: load.stallA === undefined };
  if (isStalled && kind === "motor" && load.stallA !== undefined)
    return {
      kind: "resistance",
      stated: ofFigure(`${path}.stallA`, "current", load.stallA),
      perUnit: pieces,
      by: "stalled",
      ...rest,
    };
  if (kind === "led" && load.ledForwardV !== undefined && load.ledResistorOhm !== undefined)
    return {
      kind,
      stated: ofFigure(`${path}.ledResistorOhm`, "resistance", load.ledResistorOhm),
      shape: ofFigure(`${path}.ledForwardV`, "voltage", load.ledForwardV),
      perUnit: 1,
      by: "resistor",
      ...rest,
    };
  const stated =
    load.currentA !== undefined
      ? ofFigure(`${path}.currentA`, "current", load.currentA)
      : load.powerW !== undefined
        ? ofFigure(`${path}.powerW`, "power", load.powerW)
        : undefined;
  if (stated === undefined) return undefined;
  const perUnit = pieces * (load.currentA !== undefined ? 1 : 1 / ratedV);
  const shape =
    kind === "power"
      ? load.dropOutV === undefined
        ? ofClass(`${path}.dropOutV`, "voltage", CLASS_FIGURES.dropOutRatio, nominalV)
        : ofFigure(`${path}.dropOutV`, "voltage", load.dropOutV)
      : kind === "led"
        ? load.ledForwardV === undefined
          ? ofClass(`${path}.ledForwardV`, "voltage", CLASS_FIGURES.ledForwardRatio, nominalV)
          : ofFigure(`${path}.ledForwardV`, "voltage", load.ledForwardV)
        : kind === "motor"
          ? load.stallA === undefined
            ? { ...ofClass(`${path}.stallA`, "ratio", CLASS_FIGURES.stallOverRunning, 1), aspect: "stall" as const }
            : ofFigure(`${path}.stallA`, "current", load.stallA)
          : undefined;
  const spread: UncertainInput | undefined =
    load.class === undefined
      ? {
          path: `${path}.class`,
          aspect: "class",
          kind: "ratio",
          nominal: 1,
          span: { lo: 1 - UNKNOWN_CLASS_RATIO, hi: 1 + UNKNOWN_CLASS_RATIO },
          isAssumed: true,
        }
      : undefined;
  return {
    kind,
    stated,
    perUnit,
    by: "current",
    ...rest,
    ...(spread === undefined ? {} : { spread }),
    ...(shape === undefined ? {} : { shape }),
  };
}
