import { CLASS_FIGURES, conductorSize, fuseResistance, MODEL_OF_CLASS } from "@fusebook/core/network";
import { type Figure, figureValue, kindOfField, type Span, spanOf } from "@fusebook/core/quantity";
import { type CoachRecord, policyOf } from "@fusebook/core/record";

/** Figures of these names move the network; the rest of the record is left as it is. */
const MOVING = new Set([
  "openCircuitV",
  "internalResistanceOhm",
  "outputV",
  "lengthM",
  "resistanceOhm",
  "onResistanceOhm",
  "quiescentA",
  "currentA",
  "powerW",
  "stallA",
  "dropOutV",
  "ledForwardV",
  "ledResistorOhm",
]);

type Loose = Record<string, unknown>;

/**
 * One coach that the record may stand for: every figure that moves the network drawn from its own span and then known exactly, every figure left out
 * filled in with one that the class allows. Written from the record's words, not from the solver's.
 */
export function drawTruth(record: CoachRecord, chance: () => number): CoachRecord {
  const truth = structuredClone(record) as CoachRecord;
  const policy = policyOf(record);
  const nominalV = record.coach.nominalV ?? 12;
  // Ends of a span are where a bound breaks first: every third figure is put there.
  const drawn = (of: Span): number => {
    const t = chance() < 1 / 3 ? Math.round(chance()) : chance();
    return of.lo + t * (of.hi - of.lo);
  };
  const exact = (value: number): Figure => ({ value: Math.max(0, value), basis: "measured", plusMinus: 0 });
  const between = (of: { span: Span }, unit = 1): Figure => exact(drawn(of.span) * unit);
  const fix = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) fix(one);
    else if (typeof value === "object" && value !== null)
      for (const [name, field] of Object.entries(value as Loose)) {
        const isFigure =
          typeof field === "number" ||
          (typeof field === "object" && field !== null && "value" in field && typeof field.value === "number");
        if (MOVING.has(name) && isFigure)
          (value as Loose)[name] = exact(drawn(spanOf(field as Figure, kindOfField(name))));
        else if (!isFigure) fix(field);
      }
  };
  const size = (run: Loose | undefined): void => {
    if (!run || run.resistanceOhm !== undefined) return;
    run.gauge ??= "14 AWG";
    run.lengthM ??= exact(1 + 2 * chance());
    const found = conductorSize(run as never, policy);
    if (found.kind === "known") run.sectionMm2 = exact(drawn(found.value.span));
  };
  const fuse = (of: Loose | undefined): void => {
    if (of && of.resistanceOhm === undefined) of.resistanceOhm = between(fuseResistance(of as never));
  };
  for (const supply of truth.supplies ?? [])
    if (supply.kind === "battery") supply.internalResistanceOhm ??= between(CLASS_FIGURES.batteryOhm, nominalV / 12);
  for (const kind of truth.moduleKinds ?? []) {
    kind.onResistanceOhm ??= between(CLASS_FIGURES.contactOhm);
    kind.quiescentA ??= between(CLASS_FIGURES.quiescentA);
  }
  const loads = new Map((truth.loads ?? []).map((load) => [load.id as string, load]));
  for (const circuit of truth.circuits ?? []) {
    size(circuit.out as Loose | undefined);
    size(circuit.return as Loose | undefined);
    circuit.fuse ??= {};
    for (const connector of circuit.connectors ?? []) connector.resistanceOhm ??= between(CLASS_FIGURES.connectorOhm);
    for (const id of circuit.loads ?? []) {
      const load = loads.get(id);
      if (!load) continue;
      size(load.tail as Loose | undefined);
      const model = load.class === undefined ? undefined : MODEL_OF_CLASS[load.class];
      if (load.currentA === undefined && load.powerW === undefined)
        load.currentA = exact((chance() * figureValue(circuit.fuse.ratedA ?? 5)) / (load.quantity ?? 1));
      const ratedA =
        load.currentA === undefined
          ? figureValue(load.powerW!) / figureValue(load.ratedV ?? nominalV)
          : figureValue(load.currentA);
      // A load of unknown class may be a resistance, or draw constant power.
      if (model === undefined) load.class = chance() < 0.5 ? "valve" : "electronics";
      if (model === "motor") load.stallA ??= exact(ratedA * drawn(CLASS_FIGURES.stallOverRunning.span));
      if (model === "power") load.dropOutV ??= between(CLASS_FIGURES.dropOutRatio, nominalV);
      if (model === "led") load.ledForwardV ??= between(CLASS_FIGURES.ledForwardRatio, nominalV);
    }
  }
  for (const cable of truth.cables ?? []) {
    size(cable as Loose);
    fuse(cable.protection as Loose | undefined);
  }
  for (const circuit of truth.circuits ?? []) fuse(circuit.fuse as Loose);
  fix(truth.supplies);
  fix(truth.cables);
  fix(truth.moduleKinds);
  fix(truth.circuits);
  fix(truth.loads);
  return truth;
}
