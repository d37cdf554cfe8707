import { type Figure, figureValue, kindOfField, spanOf } from "../../quantity/index.js";
import { type CoachRecord, indexRecord, type Load, type Supply } from "../../record/index.js";
import { nominalVOf } from "../build-coach.js";
import type { CoachNetwork } from "../coach-network.js";
import { loadAsRead } from "../load-as-read.js";
import { batteryFigures } from "../supply-figures.js";
import { fillLoads } from "./fill-loads.js";
import { drawnValue } from "./input-bank.js";
import { ohmOfDraw } from "./ohm-draw.js";
import { putAt, valueAt } from "./put-at.js";
import type { UncertainInput } from "./uncertain-input.js";
import { figuresOf, wholeCoach } from "./uncertain-inputs.js";

/** Parts of the record that say how the coach is; its policy, readings, jobs and controls are not the coach. */
const DRAWN_PARTS = ["supplies", "nodes", "cables", "moduleKinds", "circuits", "loads"] as const;
/** Numbers that are no figures, and rated volts, which name the point that the current holds at. */
const KEPT = new Set([
  "quantity",
  "ratedHours",
  "ratedV",
  "installMin",
  "openCircuitCurve",
  "dimBlocks",
  "bank",
  "lamps",
  "wishWeight",
]);
/** Points of the curve of rest volts that a drawn battery is given. */
const CURVE_POINTS = 20;

const exactly = (value: number): Figure => ({ value, basis: "measured", plusMinus: 0 });

const isFigure = (value: unknown): value is Figure =>
  typeof value === "number" ||
  (typeof value === "object" && value !== null && "value" in value && typeof value.value === "number");

/**
 * One coach that this record may stand for: every figure drawn from its span, those of one reel, one supply or one kind of module together, and then known
 * exactly; class figures that stand in for what the record lacks are written down. Sample `sample` of `sampleCoach` with the same seed is this coach. Loads
 * with no current get one (see `fillLoads`); a way that is not known stays so.
 */
export function drawRecord(record: CoachRecord, seed: number, sample = 0): CoachRecord {
  const index = indexRecord(record);
  const full = fillLoads(index, nominalVOf(index)).index;
  const coach = wholeCoach(full);
  const inputs = new Map<string, UncertainInput>();
  if (coach) for (const input of figuresOf(coach)) if (input.aspect === undefined) inputs.set(input.path, input);
  const figureOf = (input: UncertainInput) => drawnValue(input, seed, sample);
  const figureAt = (path: string, name: string, figure: Figure): Figure => {
    const known = inputs.get(path);
    if (known) return exactly(figureOf(known));
    const kind = kindOfField(name);
    // A battery's volts at rest and its charge are one thing.
    const key = name === "chargeRatio" ? path.replace(/chargeRatio$/, "openCircuitV") : path;
    const span = spanOf(figure, kind);
    const value = figureOf({ path: key, kind, nominal: figureValue(figure), span, isAssumed: false });
    return exactly(kind === "count" ? Math.round(value) : value);
  };
  const drawn = (value: unknown, path: string): unknown => {
    if (Array.isArray(value)) return value.map((one, n) => drawn(one, `${path}[${n}]`));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([name, field]) => {
        if (KEPT.has(name)) return [name, field];
        const at = `${path}.${name}`;
        return [name, isFigure(field) && kindOfField(name) !== "any" ? figureAt(at, name, field) : drawn(field, at)];
      }),
    );
  };
  // What its own readings say of a load takes the place of the readings.
  const asRead = (load: Load): Load => {
    const { drawReadings: _, ...rest } = loadAsRead(load, nominalVOf(index));
    return rest as Load;
  };
  const truth = { ...full.record, loads: (full.record.loads ?? []).map(asRead) } as Record<string, unknown>;
  for (const part of DRAWN_PARTS) if (truth[part] !== undefined) truth[part] = drawn(truth[part], part);
  if (coach) writeDown(coach, truth, figureOf);
  return truth as CoachRecord;
}

/** Writes down what the record leaves to a class figure or a table: resistances end to end, stall currents, kinds of modules, curves of rest volts. */
function writeDown(coach: CoachNetwork, truth: object, figureOf: (input: UncertainInput) => number): void {
  for (const input of figuresOf(coach))
    if (input.isAssumed && input.aspect === undefined) putAt(truth, input.path, exactly(figureOf(input)));
  const ways = [
    ...coach.cables.map((one) => one.series),
    ...coach.circuits.flatMap((one) => [one.entry, one.out, one.back, ...one.loads.map((load) => load.tail)]),
  ];
  for (const { draw } of ways.flatMap((way) => way?.pieces ?? []))
    if (draw.kind === "copper")
      putAt(truth, draw.length.path.replace(/lengthM$/, "resistanceOhm"), exactly(ohmOfDraw(draw, figureOf)));
  const amperesAt = (path: string): number => {
    const currentA = valueAt(truth, `${path}.currentA`);
    if (isFigure(currentA)) return figureValue(currentA);
    const ratedV = valueAt(truth, `${path}.ratedV`);
    const powerW = valueAt(truth, `${path}.powerW`);
    return isFigure(powerW) ? figureValue(powerW) / (isFigure(ratedV) ? figureValue(ratedV) : coach.nominalV) : 0;
  };
  for (const input of figuresOf(coach)) {
    const path = input.path.slice(0, input.path.lastIndexOf("."));
    if (input.aspect === "stall") putAt(truth, `${path}.stallA`, exactly(figureOf(input) * amperesAt(path)));
    if (input.aspect === "class")
      for (const field of ["currentA", "powerW"]) {
        const figure = valueAt(truth, `${path}.${field}`);
        if (isFigure(figure)) putAt(truth, `${path}.${field}`, exactly(figureValue(figure) * figureOf(input)));
      }
    if (input.aspect === "contact" || input.aspect === "quiescent") {
      const field = input.aspect === "contact" ? "onResistanceOhm" : "quiescentA";
      giveKind(truth, path, field, exactly(figureOf(input)));
    }
  }
  for (const supply of coach.index.supplies.values())
    if (supply.kind === "battery") {
      const path = coach.index.pathOf("supplies", supply.id);
      putAt(truth, `${path}.openCircuitCurve`, drawnCurve(supply, coach.nominalV, path, figureOf));
    }
}

/** A module whose kind is not on record is given one of its own that says only this figure. */
function giveKind(truth: object, path: string, field: string, figure: Figure): void {
  const kinds = (valueAt(truth, "moduleKinds") as { id: string }[] | undefined) ?? [];
  const id = `kind-of-${String(valueAt(truth, `${path}.id`))}`;
  let at = kinds.findIndex((kind) => kind.id === id);
  if (at < 0) {
    at = kinds.length;
    putAt(truth, "moduleKinds", [...kinds, { id, name: "not on record", channels: 64 }]);
    const modules = [...(valueAt(truth, "modules") as object[])];
    putAt(truth, "modules", modules);
    const place = Number(/\[(\d+)\]/.exec(path)?.[1]);
    modules[place] = { ...modules[place], kind: id };
  }
  putAt(truth, `moduleKinds[${at}].${field}`, figure);
}

/** The battery's volts at rest at every charge, each at the same place of its span. */
function drawnCurve(
  supply: Supply,
  nominalV: number,
  path: string,
  figureOf: (input: UncertainInput) => number,
): { chargeRatio: number; openCircuitV: number }[] {
  const ratios = new Set((supply.openCircuitCurve ?? []).map((point) => point.chargeRatio));
  for (let n = 0; n <= CURVE_POINTS; n++) ratios.add(n / CURVE_POINTS);
  return [...ratios]
    .sort((a, b) => a - b)
    .map((chargeRatio) => {
      const { inputs } = batteryFigures(supply, { name: "", on: new Set(), chargeRatio }, nominalV, path);
      return { chargeRatio, openCircuitV: inputs.kind === "battery" ? figureOf(inputs.emf) : Number.NaN };
    });
}
