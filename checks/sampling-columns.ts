import type { CoachSamples, CoachSolution, CoachSpans, Spanned } from "@fusebook/core/network";
import type { Outcome } from "@fusebook/core/quantity";

const CURRENTS = ["circuitA", "moduleA", "cableA", "cableDropV"] as const;

const eachKnown = <T>(map: unknown, put: (id: string, value: T) => void): void => {
  for (const [id, one] of map as ReadonlyMap<string, Outcome<T>>) if (one.kind === "known") put(id, one.value);
};

/** Every sampled quantity by name, with its array. */
export function columnsOf(samples: CoachSamples): Map<string, Float64Array> {
  const columns = new Map<string, Float64Array>();
  for (const [id, load] of samples.loads)
    if (load.kind === "known")
      for (const of of ["onV", "onA", "dropV"] as const) columns.set(`${id} ${of}`, load.value[of]);
  for (const of of CURRENTS) eachKnown<Float64Array>(samples[of], (id, values) => columns.set(`${id} ${of}`, values));
  for (const [id, one] of samples.supplies) {
    columns.set(`${id} currentA`, one.currentA);
    columns.set(`${id} terminalV`, one.terminalV);
  }
  return columns;
}

/** The same quantities of one solved state, by the same names. */
export function pointsOf(solution: CoachSolution): Map<string, number> {
  const points = new Map<string, number>();
  for (const [id, load] of solution.loads)
    if (load.kind === "known")
      for (const of of ["onV", "onA", "dropV"] as const) points.set(`${id} ${of}`, load.value[of]);
  for (const of of CURRENTS) eachKnown<number>(solution[of], (id, value) => points.set(`${id} ${of}`, value));
  for (const [id, one] of solution.supplies) {
    points.set(`${id} currentA`, one.currentA);
    points.set(`${id} terminalV`, one.terminalV);
  }
  return points;
}

/** The spans of the same quantities, by the same names. */
export function spansOf(spans: CoachSpans): Map<string, Spanned> {
  const all = new Map<string, Spanned>();
  for (const [id, load] of spans.loads)
    if (load.kind === "known")
      for (const of of ["onV", "onA", "dropV"] as const) all.set(`${id} ${of}`, load.value[of]);
  for (const of of CURRENTS)
    eachKnown<Spanned>((spans as unknown as Record<string, unknown>)[of] ?? [], (id, one) =>
      all.set(`${id} ${of}`, one),
    );
  return all;
}
