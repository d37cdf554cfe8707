import { CLASS_FIGURES, conductorCOf, conductorSize, fuseResistance, MODEL_OF_CLASS } from "@fusebook/core/network";
import { type Figure, figureBasis, figureValue, kindOfField, type Span, spanOf } from "@fusebook/core/quantity";
import { type CoachRecord, type FullPolicy, policyOf, textValue } from "@fusebook/core/record";
import { necStandardDevices, standardFuses } from "@fusebook/core/tables";

type Loose = Record<string, unknown>;
type Chance = () => number;

/** A circuit of unknown loads goes on drawing at most this much of its fuse; 40 A where that is not known either (docs/method/network.md). */
const FUSE_HOLDS_RATIO = 1.35;
/** A load of unknown class draws its figure to within a fifth (docs/method/network.md). */
const UNKNOWN_CLASS_RATIO = 0.2;
/** Strands are up to 2.5 % longer than the wire (docs/method/network.md: LAY_FACTOR's span). */
const LAY: Span = { lo: 1, hi: 1.025 };

const SIZES = [...new Set([...standardFuses().map((fuse) => fuse.ratedA), ...necStandardDevices().value])];
const CLASSES_C = [60, 75, 90, 105, 125];
const PRINTED = new Set(["ratedA", "maxFuseA", "insulationC", "bundleCount"]);

const isFigure = (value: unknown): value is Figure =>
  typeof value === "number" ||
  (typeof value === "object" && value !== null && typeof (value as { value?: unknown }).value === "number");

export const exact = (value: number): Figure => ({ value, basis: "measured", plusMinus: 0 });
const within = (of: Span, place: number): number => of.lo + place * (of.hi - of.lo);

/** Figures that belong to the record's objects, by the names the schema gives them; what is not a figure of the wiring stays. */
const FIGURES = new Set(
  ["openCircuitV internalResistanceOhm outputV lengthM resistanceOhm onResistanceOhm quiescentA currentA powerW stallA"]
    .concat(["dropOutV ledForwardV ledResistorOhm distanceFromSourceM ratedA maxFuseA minV maxV ratedV chargeRatio"])
    .concat(["ratedSwitchedA ratedDimmedA ratedTotalA pwmHz capacityAh"])
    .flatMap((names) => names.split(" ")),
);

/** One size that exists within the span of a print that nobody read; the figure itself where there is none. */
function printedValue(name: string, figure: Figure, chance: Chance): number {
  const basis = figureBasis(figure);
  if (basis === "marked" || basis === "measured") return figureValue(figure);
  const { lo, hi } = spanOf(figure, kindOfField(name));
  const sizes = (name === "insulationC" ? CLASSES_C : SIZES).filter((size) => lo <= size && size <= hi);
  return sizes[Math.floor(chance() * sizes.length)] ?? figureValue(figure);
}

/**
 * A coach that the record may stand for, drawn by this check's own hand from docs/method/network.md: every figure even over its span and then known exactly;
 * wires of one gauge and insulation off one reel, so alike in copper and lay; what is missing filled in by its class. The record goes on saying the same;
 * only figures change. Nothing of the sampler under test is used.
 */
export function drawCoach(record: CoachRecord, chance: Chance): CoachRecord {
  const truth = structuredClone(record) as CoachRecord;
  const policy = policyOf(record);
  const nominalV = record.coach.nominalV ?? 12;
  const reels = new Map<string, { area: number; lay: number }>();
  const wire = (run: Loose | undefined): void => drawWire(run, record, policy, reels, chance);
  const resistance = (holder: Loose | undefined, name: string, of: Span) => {
    if (holder !== undefined && holder[name] === undefined) holder[name] = exact(within(of, chance()));
  };
  const fix = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) fix(one);
    else if (typeof value === "object" && value !== null)
      for (const [name, field] of Object.entries(value as Loose)) {
        if (!isFigure(field)) fix(field);
        else if (PRINTED.has(name)) (value as Loose)[name] = exact(printedValue(name, field, chance));
        else if (FIGURES.has(name))
          (value as Loose)[name] = exact(Math.max(0, within(spanOf(field, kindOfField(name)), chance())));
      }
  };
  for (const name of ["supplies", "cables", "moduleKinds", "circuits", "loads", "nodes"] as const) fix(truth[name]);
  for (const kind of truth.moduleKinds ?? []) {
    resistance(kind as Loose, "onResistanceOhm", CLASS_FIGURES.contactOhm.span);
    resistance(kind as Loose, "quiescentA", CLASS_FIGURES.quiescentA.span);
  }
  const loads = new Map((truth.loads ?? []).map((load) => [load.id as string, load as Loose]));
  for (const circuit of truth.circuits ?? []) {
    wire(circuit.out as Loose | undefined);
    wire(circuit.return as Loose | undefined);
    circuit.fuse ??= {};
    resistance(
      circuit.fuse as Loose,
      "resistanceOhm",
      fuseResistance(record.circuits?.find((one) => one.id === circuit.id)?.fuse).span,
    );
    for (const connector of circuit.connectors ?? [])
      resistance(connector as Loose, "resistanceOhm", CLASS_FIGURES.connectorOhm.span);
    const ids = (circuit.loads ?? []) as string[];
    const lacking = ids.filter((id) => loads.get(id)?.currentA === undefined && loads.get(id)?.powerW === undefined);
    const mostA = FUSE_HOLDS_RATIO * figureValue((circuit.fuse.ratedA as Figure | undefined) ?? 40);
    for (const id of ids) {
      const load = loads.get(id);
      if (load === undefined) continue;
      wire(load.tail as Loose | undefined);
      if (lacking.includes(id))
        load.currentA = exact((chance() * mostA) / lacking.length / ((load.quantity as number | undefined) ?? 1));
      fillShape(load, nominalV, chance);
    }
  }
  for (const cable of truth.cables ?? []) {
    wire(cable as Loose);
    const stated = record.cables?.find((one) => one.id === cable.id)?.protection;
    if (stated !== undefined) resistance(cable.protection as Loose, "resistanceOhm", fuseResistance(stated).span);
  }
  return truth;
}

/** How a load answers to its volts, where the record leaves that to its class. */
function fillShape(load: Loose, nominalV: number, chance: Chance): void {
  const stated = (load.currentA ?? load.powerW) as Figure;
  if (load.class === undefined) {
    const field = load.currentA === undefined ? "powerW" : "currentA";
    load[field] = exact(
      figureValue(stated) * within({ lo: 1 - UNKNOWN_CLASS_RATIO, hi: 1 + UNKNOWN_CLASS_RATIO }, chance()),
    );
    load.class = "outlet";
    return;
  }
  const model = MODEL_OF_CLASS[load.class as keyof typeof MODEL_OF_CLASS];
  const ratedV = figureValue((load.ratedV as Figure | undefined) ?? nominalV);
  const ratedA = load.currentA === undefined ? figureValue(stated) / ratedV : figureValue(stated);
  const drawn = (of: { span: Span }, unit: number) => exact(within(of.span, chance()) * unit);
  if (model === "motor") load.stallA ??= drawn(CLASS_FIGURES.stallOverRunning, ratedA);
  if (model === "power") load.dropOutV ??= drawn(CLASS_FIGURES.dropOutRatio, nominalV);
  if (model === "led") load.ledForwardV ??= drawn(CLASS_FIGURES.ledForwardRatio, nominalV);
}

/** A wire as it is: its resistance by copper (IEC 60028) at the ambient of its zone, from its own length and its reel's copper and lay. */
function drawWire(
  run: Loose | undefined,
  record: CoachRecord,
  policy: FullPolicy,
  reels: Map<string, { area: number; lay: number }>,
  chance: Chance,
): void {
  if (run === undefined) return;
  run.insulationC ??= exact(CLASSES_C[Math.floor(chance() * CLASSES_C.length)]!);
  run.bundleCount ??= exact(1 + Math.floor(chance() * 6));
  if (run.resistanceOhm !== undefined) return;
  if (run.kind === "chassis") return;
  run.gauge ??= "14 AWG";
  run.lengthM ??= exact(1 + 2 * chance());
  const size = conductorSize(run as never, policy);
  if (size.kind !== "known") return;
  const stated = run.insulationC as Figure;
  const key = `${textValue(run.gauge as string)} ${figureValue(stated)}`;
  const reel = reels.get(key) ?? { area: chance(), lay: chance() };
  reels.set(key, reel);
  const zoneOf = (place: string) => record.places?.find((one) => one.id === place)?.zone;
  const conductorC = conductorCOf(run as never, policy, zoneOf);
  const ohmMm2PerM = (1 / 58) * (1 + 0.00393 * (conductorC - 20));
  const areaMm2 = within(size.value.span, reel.area);
  run.resistanceOhm = exact((ohmMm2PerM * figureValue(run.lengthM as Figure) * within(LAY, reel.lay)) / areaMm2);
}
