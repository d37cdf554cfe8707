import { minutesFor, readingMin, type SettledBy } from "../findings/index.js";
import { conductorSize } from "../network/index.js";
import {
  type Basis,
  type Figure,
  figureBasis,
  figureValue,
  kindOfField,
  pointSpan,
  type Span,
  spanOf,
} from "../quantity/index.js";
import { type CoachIndex, type Load, type LoadClass, policyOf } from "../record/index.js";
import { fieldAt, stepsOf } from "./field-path.js";
import { printedChoices } from "./printed.js";
import type { ReadableFigure, ReadingCaution } from "./reading.js";

type Instrument = SettledBy["instrument"];

/** With what each field is read on a coach. A field that is not here is not read in the field: the forward volts of a diode string, say. */
const INSTRUMENT: Readonly<Record<string, Instrument>> = {
  currentA: "clamp meter",
  powerW: "clamp meter",
  quiescentA: "clamp meter",
  openCircuitV: "voltmeter",
  outputV: "voltmeter",
  lengthM: "tape measure",
  toNextM: "tape measure",
  stubM: "tape measure",
  distanceFromSourceM: "tape measure",
  resistanceOhm: "ohmmeter",
  // An ohmmeter never goes on a battery, nor across a contact that is fed: volts at rest and at a known current.
  onResistanceOhm: "voltmeter",
  internalResistanceOhm: "voltmeter",
  betweenWiresOhm: "ohmmeter",
  gauge: "look",
  sectionMm2: "look",
  insulationC: "look",
  bundleCount: "look",
  ratedA: "look",
  maxFuseA: "look",
  ratedSwitchedA: "look",
  ratedDimmedA: "look",
  ratedTotalA: "look",
  pwmHz: "look",
  minV: "look",
  maxV: "look",
  ratedV: "look",
};

const MOVES: ReadonlySet<LoadClass> = new Set(["motor", "pump", "fan", "actuator", "valve"]);
const HEATS: ReadonlySet<LoadClass> = new Set(["resistive-heater", "filament", "heater-control"]);

const fieldOf = (path: string): string => String(stepsOf(path).findLast((step) => typeof step === "string") ?? path);

const isFigure = (value: unknown): value is Figure =>
  typeof value === "number" ||
  (typeof value === "object" && value !== null && typeof (value as { value?: unknown }).value === "number");

/** The place where a field is read: its own, else that of the object it belongs to. */
function placeOf(index: CoachIndex, path: string): string | undefined {
  const { record } = index;
  const steps = stepsOf(path);
  const [collection, n] = steps;
  for (let depth = steps.length - 1; depth >= 2; depth--) {
    const holder = fieldAt(record, shown(steps.slice(0, depth)));
    const place = (holder as { place?: unknown } | undefined)?.place;
    if (typeof place === "string") return place;
  }
  if (collection === "circuits" && typeof n === "number" && /^(fuse|loads)$/.test(String(steps[2]))) {
    const circuit = record.circuits?.[n];
    return index.modules.get(circuit?.module ?? "")?.place ?? index.nodes.get(circuit?.fusePosition?.node ?? "")?.place;
  }
  if (collection === "moduleKinds" && typeof n === "number")
    return record.modules?.find((module) => module.kind === record.moduleKinds?.[n]?.id)?.place;
  return undefined;
}

const shown = (steps: readonly (string | number)[]): string =>
  steps.map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? step : `.${step}`)).join("");

function cautionOf(instrument: Instrument, load: Load | undefined): ReadingCaution {
  if (instrument === "ohmmeter") return "power-off-first";
  if (instrument === "voltmeter") return "live-parts";
  if (instrument !== "clamp meter") return "none";
  if (load?.class !== undefined && MOVES.has(load.class)) return "load-will-move";
  return load?.class !== undefined && HEATS.has(load.class) ? "load-gets-hot" : "live-parts";
}

/** What an instrument leaves about a value: the row `measured` of the tolerance table for this field; what is printed is what it says. */
export const leftAbout = (path: string, value: number, instrument: Instrument): Span =>
  instrument === "look" ? pointSpan(value) : spanOf({ value, basis: "measured" }, kindOfField(fieldOf(path)));

/** What is on record once this was read. */
export const readAs = (instrument: Instrument, value: number | string): Figure | string =>
  typeof value === "string"
    ? value
    : { value: Math.max(0, value), basis: instrument === "look" ? "marked" : "measured" };

/** What a class figure or a computed one says of a field that is not on record. */
export interface StandIn {
  readonly nominal: number;
  readonly span: Span;
}

/**
 * How would this field be read, in how many minutes, and what would the instrument leave? Undefined for a field that nobody reads on a coach, and for
 * one that is not on record and of which nothing else (`standIn`) is known.
 */
export function readableAt(index: CoachIndex, path: string, standIn?: StandIn): ReadableFigure | undefined {
  const field = fieldOf(path);
  const instrument = INSTRUMENT[field];
  if (instrument === undefined) return undefined;
  const held = fieldAt(index.record, path);
  const place = placeOf(index, path);
  const load = path.startsWith("loads[") ? index.record.loads?.[Number(stepsOf(path)[1])] : undefined;
  const minutes = minutesFor(index, instrument, place);
  const readMin = readingMin(instrument);
  const common = {
    path,
    instrument,
    caution: cautionOf(instrument, load),
    place,
    accessMin: minutes - readMin,
    readMin,
    minutes,
  };
  const printed = instrument === "look" ? printedChoices(index, path, field, held) : undefined;
  if (field === "gauge") {
    const size = conductorSize(fieldAt(index.record, path.slice(0, -".gauge".length)) as never, policyOf(index.record));
    if (printed === undefined || size.kind !== "known" || held === undefined) return undefined;
    const { areaMm2, span } = size.value;
    const basis = typeof held === "string" ? "marked" : (held as { basis: Basis }).basis;
    return { ...common, basis, nominal: areaMm2, now: span, left: pointSpan(areaMm2), printed };
  }
  if (isFigure(held)) {
    const nominal = figureValue(held);
    const now = spanOf(held, kindOfField(field));
    return { ...common, basis: figureBasis(held), nominal, now, left: leftAbout(path, nominal, instrument), printed };
  }
  if (standIn !== undefined)
    return {
      ...common,
      basis: undefined,
      nominal: standIn.nominal,
      now: standIn.span,
      left: leftAbout(path, standIn.nominal, instrument),
      printed,
    };
  if (printed === undefined) return undefined;
  const numbers = printed.filter((one) => typeof one === "number");
  const now = { lo: Math.min(...numbers), hi: Math.max(...numbers) };
  return { ...common, basis: undefined, nominal: now.lo, now, left: pointSpan(now.lo), printed };
}
