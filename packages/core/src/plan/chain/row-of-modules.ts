import type { MovesProblem } from "../moves/index.js";

/** Modules that a circuit may sit on, beside its own. */
function joinedModules(problem: MovesProblem): Set<number>[] {
  const joined = problem.modules.map(() => new Set<number>());
  for (const circuit of problem.circuits)
    for (const { module } of circuit.placings)
      if (module !== undefined && module !== circuit.home) {
        joined[circuit.home]?.add(module);
        joined[module]?.add(circuit.home);
      }
  return joined;
}

/**
 * The modules in a row such that every circuit stays or goes to a neighbour: parts that nothing joins follow one another. Undefined where some module is joined to three
 * others, or a ring of them closes.
 */
export function rowOfModules(problem: MovesProblem): number[] | undefined {
  const joined = joinedModules(problem);
  if (joined.some((others) => others.size > 2)) return undefined;
  const row: number[] = [];
  const seen = new Set<number>();
  const follow = (start: number): void => {
    for (let at: number | undefined = start; at !== undefined; ) {
      row.push(at);
      seen.add(at);
      at = [...(joined[at] ?? [])].find((next) => !seen.has(next));
    }
  };
  // Every open row has two ends; what is left after them goes round in a ring.
  joined.forEach((others, module) => {
    if (others.size < 2 && !seen.has(module)) follow(module);
  });
  return row.length === problem.modules.length ? row : undefined;
}
