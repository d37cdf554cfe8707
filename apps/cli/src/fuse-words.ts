import { fieldWords } from "@fusebook/core/findings";
import type { CircuitProtection, FaultConductor } from "@fusebook/core/protection";
import { digitsOf, type Outcome, type Source, type Span, showQuantity, type UnitChoice } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";

/** What cannot be told, as what it needs or why. */
export const whyNot = (outcome: Outcome<unknown>): string =>
  outcome.kind === "missing"
    ? `not told: needs ${[...new Set(outcome.needs.map(fieldWords))].join(", ")}`
    : outcome.kind === "refused"
      ? `not told: ${outcome.because}`
      : "";

export const amps = (value: number, units: UnitChoice): string => showQuantity(value, "current", units);

/** A value with the span it may lie in, where that is wider than it shows. */
export function ampsSpan(value: number, span: Span, units: UnitChoice): string {
  const [lo, hi] = [amps(span.lo, units), amps(span.hi, units)];
  return lo === hi ? amps(value, units) : `${amps(value, units)} (${lo} to ${hi})`;
}

/** A time as a person says it; `never` where the fuse need not open. */
export function timeText(timeS: number): string {
  if (timeS === Number.POSITIVE_INFINITY) return "never for sure";
  if (timeS < 0.1) return `${digitsOf(timeS * 1000, 2)} ms`;
  return timeS >= 86_400 ? `${digitsOf(timeS / 3600, 3)} h` : showQuantity(timeS, "time", "us");
}

export const joulesText = (jouleA2s: number): string =>
  jouleA2s === Number.POSITIVE_INFINITY ? "without end" : `${digitsOf(jouleA2s)} A²s`;

export const memoryMark = (sources: readonly Source[]): string =>
  sources.some((source) => source.how === "memory") ? " (from memory)" : "";

const PARTS: Readonly<Record<FaultConductor["part"], string>> = {
  feeder: "feeder",
  wire: "wire out",
  tail: "own wire of",
  return: "way back",
};

/** `wire out`, `own wire of Picture lamp`, `feeder Main bar to module 1`; a name that says the part already says it once. */
export function conductorName(index: CoachIndex, { part, id, path }: FaultConductor): string {
  if (part === "tail") return `${PARTS.tail} ${index.loads.get(id as never)?.name ?? id}`;
  const cable = path.startsWith("cables") ? index.cables.get(id as never) : undefined;
  if (cable === undefined) return PARTS[part];
  const name: string = cable.name ?? id;
  return name.toLowerCase().startsWith(PARTS[part]) ? name : `${PARTS[part]} ${name}`;
}

/** The size as it is written on the record. */
export function sizeText(index: CoachIndex, { part, id, path }: FaultConductor): string {
  const circuit = index.circuits.get(id as never);
  const run =
    part === "tail"
      ? index.loads.get(id as never)?.tail
      : path.endsWith(".out")
        ? circuit?.out
        : path.endsWith(".return")
          ? circuit?.return
          : index.cables.get(id as never);
  if (run?.gauge !== undefined) return typeof run.gauge === "string" ? run.gauge : run.gauge.value;
  const section = run?.sectionMm2;
  return section === undefined ? "" : `${typeof section === "number" ? section : section.value} mm²`;
}

/** What a circuit is called: its label, its name or the loads it feeds. */
export function circuitTitle(index: CoachIndex, { circuit }: Pick<CircuitProtection, "circuit">): string {
  const loads = (circuit.loads ?? []).map((id) => index.loads.get(id)?.name ?? id).join(", ");
  const label = circuit.label || circuit.name || "";
  return [circuit.id, label, loads === "" || loads === label ? "" : `(${loads})`].filter((one) => one !== "").join(" ");
}

export const fuseTitle = ({ circuit, fuse }: Pick<CircuitProtection, "circuit" | "fuse">): string => {
  const rated = circuit.fuse?.ratedA;
  const value = rated === undefined ? "fuse of unknown rating" : `${typeof rated === "number" ? rated : rated.value} A`;
  const type = fuse.kind === "known" ? fuse.value.type : circuit.fuse?.type;
  return `${value}${type === undefined ? "" : ` ${type}`} fuse`;
};

/** Does anything about this circuit fail for sure? */
export const hasFailed = (told: CircuitProtection): boolean =>
  [
    ...(told.inrushPasses.kind === "known" ? [told.inrushPasses.value.verdict] : []),
    ...(told.interrupt.kind === "known" ? [told.interrupt.value.verdict] : []),
    ...(told.ends.kind === "known"
      ? told.ends.value.flatMap((end) => [end.clearing.verdict, ...end.conductors.map((one) => one.verdict)])
      : []),
    ...told.above.flatMap((one) => (one.selectivity.kind === "known" ? [one.selectivity.value.verdict] : [])),
  ].includes("fails");
