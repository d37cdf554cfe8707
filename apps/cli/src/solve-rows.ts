import {
  type CoachSamples,
  type CoachSolution,
  type CoachSpans,
  type DropPart,
  quantilesOf,
  type Spanned,
} from "@fusebook/core/network";
import type { Outcome } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";

export const QUANTILE_RATIOS = [0.05, 0.5, 0.95] as const;

/** One quantity of the answer: at the figures as they stand, with its span and its quantiles where they were asked for. */
export interface Told {
  readonly value: number;
  readonly span?: { readonly lo: number; readonly hi: number; readonly method: string };
  readonly quantiles?: readonly number[];
}

export type ToldOutcome = { readonly kind: "known" } & Told;
export type Row = { readonly id: string; readonly name: string } & Readonly<Record<string, unknown>>;

export interface Answer {
  readonly solution: CoachSolution;
  readonly spans: CoachSpans | undefined;
  readonly samples: CoachSamples | undefined;
}

const tell = (value: number, spanned: Spanned | undefined, values: Float64Array | undefined): Told => ({
  value,
  ...(spanned ? { span: { lo: spanned.span.lo, hi: spanned.span.hi, method: spanned.method } } : {}),
  ...(values && values.length > 0 ? { quantiles: quantilesOf(values, QUANTILE_RATIOS) } : {}),
});

const ifKnown = <T>(outcome: Outcome<T> | undefined): T | undefined =>
  outcome?.kind === "known" ? outcome.value : undefined;

type Single = "circuitA" | "moduleA" | "cableA" | "cableDropV";

/** One quantity kept by id, told as an outcome. */
function single(answer: Answer, of: Single, id: string): ToldOutcome | Outcome<never> {
  const map = answer.solution[of] as unknown as ReadonlyMap<string, Outcome<number>>;
  const found = map.get(id)!;
  if (found.kind !== "known") return found;
  const spans = answer.spans?.[of] as unknown as ReadonlyMap<string, Outcome<Spanned>> | undefined;
  const samples = answer.samples?.[of] as unknown as ReadonlyMap<string, Outcome<Float64Array>> | undefined;
  return { kind: "known", ...tell(found.value, ifKnown(spans?.get(id)), ifKnown(samples?.get(id))) };
}

/** A drop by place, in the order the current meets them, places that come twice added up. */
export function byPlace(parts: readonly DropPart[]): { readonly place: string; readonly dropV: number }[] {
  const sums = new Map<string, number>();
  for (const { place, dropV } of parts) sums.set(place, (sums.get(place) ?? 0) + dropV);
  return [...sums].map(([place, dropV]) => ({ place, dropV }));
}

/** The whole answer as data, part by part, in the order of the record: the keys of `--json`. */
export function answerRows(index: CoachIndex, answer: Answer) {
  const { solution, spans, samples } = answer;
  const circuitOf = (load: string) => index.circuitOfLoad.get(load);
  return {
    supplies: [...solution.supplies].map(([id, { currentA, terminalV }]) => {
      const sampled = samples?.supplies.get(id);
      return {
        id,
        name: index.supplies.get(id)?.name ?? id,
        terminalV: tell(terminalV, undefined, sampled?.terminalV),
        currentA: tell(currentA, undefined, sampled?.currentA),
      };
    }),
    modules: [...solution.moduleA.keys()].map((id) => ({
      id,
      name: index.modules.get(id)?.name ?? id,
      currentA: single(answer, "moduleA", id),
    })),
    cables: [...solution.cableA.keys()].map((id) => ({
      id,
      name: index.cables.get(id)?.name ?? id,
      currentA: single(answer, "cableA", id),
      dropV: single(answer, "cableDropV", id),
    })),
    circuits: [...solution.circuitA.keys()].map((id) => ({
      id,
      name: index.circuits.get(id)?.label ?? index.circuits.get(id)?.name ?? id,
      dutyRatio: solution.state.dutyRatio?.get(id) ?? 1,
      currentA: single(answer, "circuitA", id),
    })),
    loads: [...solution.loads].map(([id, found]) => {
      const head = { id, name: index.loads.get(id)?.name ?? id, circuit: circuitOf(id)?.id };
      if (found.kind !== "known") return { ...head, ...found };
      const spanned = ifKnown(spans?.loads.get(id));
      const sampled = ifKnown(samples?.loads.get(id));
      const { onV, onA, onW, meanA, rmsA, dropV, parts } = found.value;
      return {
        ...head,
        kind: "known" as const,
        onV: tell(onV, spanned?.onV, sampled?.onV),
        onA: tell(onA, spanned?.onA, sampled?.onA),
        dropV: tell(dropV, spanned?.dropV, sampled?.dropV),
        onW,
        meanA,
        rmsA,
        dropByPlace: byPlace(parts),
        parts,
      };
    }),
  };
}

export type AnswerRows = ReturnType<typeof answerRows>;
