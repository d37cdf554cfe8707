import type { Figure } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import { cableName, circuitName, moduleName } from "./subject.js";

/** One figure of the record with its path and the object it belongs to. */
export interface FoundFigure {
  readonly path: string;
  readonly name: string;
  readonly figure: Figure;
  readonly owner: { readonly id: string; readonly name: string };
  /** Nothing at all is a fair reading here: a resistance too small to read, a device at the terminal itself, an empty battery. */
  readonly mayBeZero: boolean;
}

/** The record's own fields; a field that we do not know is kept, not judged. `zero` where nothing at all is a fair reading. */
const FIELDS: Readonly<Record<string, "zero" | "more">> = {
  ratedA: "more",
  interruptA: "more",
  resistanceOhm: "zero",
  sectionMm2: "more",
  bundleCount: "more",
  lengthM: "more",
  distanceFromSourceM: "zero",
  capacityAh: "more",
  openCircuitV: "more",
  chargeRatio: "zero",
  internalResistanceOhm: "zero",
  peukertExponent: "more",
  outputV: "more",
  ratedSwitchedA: "more",
  ratedDimmedA: "more",
  ratedTotalA: "more",
  maxFuseA: "more",
  onResistanceOhm: "zero",
  pwmHz: "more",
  minDutyRatio: "zero",
  quiescentA: "zero",
  labelPitchMm: "more",
  labelWidthMm: "more",
  labelHeightMm: "more",
  ratedV: "more",
  currentA: "more",
  powerW: "more",
  stallA: "more",
  standbyA: "zero",
  selfDischargePerMonthRatio: "zero",
  sunHoursPerDay: "zero",
  inrushRatio: "more",
  minV: "zero",
  maxV: "more",
  dropOutV: "zero",
  ledForwardV: "more",
  ledResistorOhm: "zero",
  toNextM: "zero",
  stubM: "zero",
  bitRateKbit: "more",
  betweenWiresOhm: "zero",
};

export const isLengthField = (name: string): boolean => /[a-z]M$/.test(name);

const isFigure = (value: unknown): value is Figure =>
  typeof value === "number" ||
  (typeof value === "object" && value !== null && typeof (value as { value?: unknown }).value === "number");

/** `circuits[3].out.lengthM` and `network.trunk[2].toNextM` lie at most this far below their object. */
const MAX_DEPTH = 2;

function* within(value: object, path: string, owner: FoundFigure["owner"], depth: number): Iterable<FoundFigure> {
  for (const [name, field] of Object.entries(value)) {
    const here = `${path}.${name}`;
    if (Object.hasOwn(FIELDS, name)) {
      if (isFigure(field)) yield { path: here, name, figure: field, owner, mayBeZero: FIELDS[name] === "zero" };
    } else if (depth < MAX_DEPTH && Array.isArray(field)) {
      for (const [i, item] of field.entries())
        if (typeof item === "object" && item !== null) yield* within(item, `${here}[${i}]`, owner, depth + 1);
    } else if (depth < MAX_DEPTH && typeof field === "object" && field !== null) {
      yield* within(field, here, owner, depth + 1);
    }
  }
}

/** Every figure that the record gives for circuits, cables, modules, supplies, nodes, module kinds, loads and the two-wire network. */
export function* figuresOf(index: CoachIndex): Iterable<FoundFigure> {
  const { record } = index;
  for (const [i, circuit] of (record.circuits ?? []).entries())
    yield* within(circuit, `circuits[${i}]`, { id: circuit.id, name: circuitName(index, circuit) }, 0);
  for (const [i, cable] of (record.cables ?? []).entries())
    yield* within(cable, `cables[${i}]`, { id: cable.id, name: cableName(index, cable) }, 0);
  for (const [i, module] of (record.modules ?? []).entries())
    yield* within(module, `modules[${i}]`, { id: module.id, name: moduleName(module) }, 0);
  for (const name of ["supplies", "nodes", "moduleKinds", "loads"] as const)
    for (const [i, item] of (record[name] ?? []).entries())
      yield* within(item, `${name}[${i}]`, { id: item.id, name: item.name }, 0);
  if (record.network !== undefined)
    yield* within(record.network, "network", { id: "network", name: "Two-wire network" }, 0);
}
