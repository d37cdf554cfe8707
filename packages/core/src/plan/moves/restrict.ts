import type { FixedChoice } from "../../record/index.js";
import type { Demand } from "../demand.js";
import type { PlanFault } from "../plan.js";
import type { MoveCircuit, MoveModule, MovePattern, Placing } from "./problem.js";

const sameBlocks = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((block) => b.includes(block));

const isAsAsked = (pattern: MovePattern, choice: FixedChoice): boolean =>
  (choice.kind === undefined || pattern.kind === choice.kind) &&
  (choice.enables === undefined || (!pattern.isFree && sameBlocks(pattern.enables, choice.enables)));

const sitsAsAsked = (placing: Placing, choice: FixedChoice, to: number | undefined): boolean =>
  (choice.toModule === undefined || placing.module === to) &&
  (choice.isDimmed === undefined || placing.isDimmed === choice.isDimmed);

export interface Restricted {
  readonly circuits: readonly MoveCircuit[];
  /** By module: patterns that may not be. */
  readonly gone: readonly ReadonlySet<number>[];
  readonly faults: readonly PlanFault[];
}

/**
 * What the user's choices leave of the patterns and placings. A choice that would leave nothing for its module or circuit cannot be met: it is left out and named
 * by its path.
 */
export function restricted(
  demand: Demand,
  modules: readonly MoveModule[],
  circuits: readonly MoveCircuit[],
  goneBefore: readonly ReadonlySet<number>[],
): Restricted {
  const gone = goneBefore.map((each) => new Set(each));
  const left = circuits.map((circuit) => ({ ...circuit }));
  const faults: PlanFault[] = [];
  const refuse = (path: string, what: string): void =>
    void faults.push({
      path,
      code: "choice-cannot-be",
      message: `${path}: ${what}; the choice is left out until the record or another choice lets it be`,
    });
  for (const { choice, path } of demand.fixedChoices) {
    const mustNot = choice.isForbidden === true;
    if (choice.module !== undefined) {
      const m = modules.findIndex((module) => module.module === choice.module);
      const patterns = modules[m]?.patterns ?? [];
      const taken = patterns.flatMap((pattern, p) => (isAsAsked(pattern, choice) === mustNot ? [p] : []));
      const all = new Set([...(gone[m] ?? []), ...taken]);
      if (patterns.length === all.size)
        refuse(
          path,
          mustNot
            ? `nothing else can be done with ${choice.module}`
            : `no allowed pattern of ${choice.module} has ${[choice.kind, choice.enables === undefined ? undefined : `blocks ${choice.enables.join(" ") || "none"}`].filter((each) => each !== undefined).join(", ")}`,
        );
      else gone[m] = all;
      continue;
    }
    const circuit = left.find((each) => each.circuit === choice.circuit);
    const to = modules.findIndex((module) => module.module === choice.toModule);
    const kept = circuit?.placings.filter(
      (placing) =>
        sitsAsAsked(placing, choice, to) !== mustNot &&
        (placing.module === undefined || placing.patterns.some((p) => gone[placing.module ?? -1]?.has(p) !== true)),
    );
    if (circuit === undefined || kept === undefined || kept.length === 0)
      refuse(path, `${choice.circuit} cannot sit so: its reach, its program, its loads or the ratings do not let it`);
    else circuit.placings = kept;
  }
  return { circuits: left, gone, faults };
}
