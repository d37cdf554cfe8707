import type { Choice, MovesProblem } from "../moves/index.js";

/** One decision of a plan: what is done with a module, or how a circuit sits. By place in the problem's lists. */
export type Element =
  | { readonly kind: "pattern"; readonly module: number; readonly pattern: number }
  | { readonly kind: "placing"; readonly circuit: number; readonly placing: number };

export const elementKey = (element: Element): string =>
  element.kind === "pattern" ? `m${element.module}.${element.pattern}` : `c${element.circuit}.${element.placing}`;

/** What a choice changes against the first pattern of each module and the first placing of each circuit. */
export function elementsOf(choice: Choice): Element[] {
  return [
    ...choice.patterns.flatMap((pattern, module): Element[] =>
      pattern === 0 ? [] : [{ kind: "pattern", module, pattern }],
    ),
    ...choice.placings.flatMap((placing, circuit): Element[] =>
      placing === 0 ? [] : [{ kind: "placing", circuit, placing }],
    ),
  ];
}

/** The problem with some decisions taken out, and its choices in the whole problem's numbers. */
export interface ReducedProblem {
  readonly problem: MovesProblem;
  inWhole(choice: Choice): Choice;
}

export function withoutElements(whole: MovesProblem, removed: readonly Element[]): ReducedProblem {
  const gone = new Set(removed.map(elementKey));
  const patternsLeft = whole.modules.map(({ patterns }, module) =>
    patterns.flatMap((_, pattern) => (gone.has(elementKey({ kind: "pattern", module, pattern })) ? [] : [pattern])),
  );
  const placingsLeft = whole.circuits.map(({ placings }, circuit) =>
    placings.flatMap((placing, j) =>
      gone.has(elementKey({ kind: "placing", circuit, placing: j })) ||
      (placing.module !== undefined && !placing.patterns.some((p) => patternsLeft[placing.module ?? -1]?.includes(p)))
        ? []
        : [j],
    ),
  );
  const problem: MovesProblem = {
    ...whole,
    modules: whole.modules.map((module, m) => ({
      ...module,
      patterns: module.patterns.filter((_, p) => patternsLeft[m]?.includes(p)),
    })),
    circuits: whole.circuits.map((circuit, c) => ({
      ...circuit,
      placings: circuit.placings.flatMap((placing, j) =>
        placingsLeft[c]?.includes(j)
          ? [
              {
                ...placing,
                patterns: placing.patterns.flatMap((p) => {
                  const at = patternsLeft[placing.module ?? -1]?.indexOf(p) ?? -1;
                  return at < 0 ? [] : [at];
                }),
              },
            ]
          : [],
      ),
    })),
  };
  return {
    problem,
    inWhole: (choice) => ({
      patterns: choice.patterns.map((p, m) => patternsLeft[m]?.[p] ?? -1),
      placings: choice.placings.map((j, c) => placingsLeft[c]?.[j] ?? -1),
    }),
  };
}
