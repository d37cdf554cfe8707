import type { LoadId } from "../../record/index.js";
import type { ValuedWish } from "../demand.js";
import type { MilpRow } from "../milp/index.js";
import type { Choice, MilpForm, MovePattern, MovesProblem, Placing } from "../moves/index.js";

type Effects = Pick<MovePattern & Placing, "dims" | "spoiled" | "inDoubt">;

const hits = (wish: ValuedWish, effects: Effects): boolean =>
  wish.wish === "must-stay-steady"
    ? effects.spoiled.includes(wish.load) || effects.inDoubt.includes(wish.load)
    : effects.dims.includes(wish.load);

/** The row that says that this wish is met: something dims the load, or nothing that must not does. */
export function wishRow(problem: MovesProblem, form: MilpForm, wish: ValuedWish): MilpRow {
  const terms: [number, number][] = [];
  problem.modules.forEach((module, m) => {
    module.patterns.forEach((pattern, p) => {
      if (hits(wish, pattern)) terms.push([form.layout.pattern[m]?.[p] ?? -1, 1]);
    });
  });
  problem.circuits.forEach((circuit, c) => {
    circuit.placings.forEach((placing, j) => {
      if (hits(wish, placing)) terms.push([form.layout.placing[c]?.[j] ?? -1, 1]);
    });
  });
  const isSteady = wish.wish === "must-stay-steady";
  return {
    name: `wish ${wish.load}`,
    group: `wish ${wish.load}`,
    lower: isSteady ? Number.NEGATIVE_INFINITY : 1,
    upper: isSteady ? 0 : Number.POSITIVE_INFINITY,
    terms,
  };
}

/** Loads that this choice dims, and loads that must not dim and do or may. */
export function effectsOf(problem: MovesProblem, choice: Choice): { dims: Set<LoadId>; unsteady: Set<LoadId> } {
  const dims = new Set<LoadId>();
  const unsteady = new Set<LoadId>();
  const add = (effects: Effects | undefined): void => {
    for (const load of effects?.dims ?? []) dims.add(load);
    for (const load of [...(effects?.spoiled ?? []), ...(effects?.inDoubt ?? [])]) unsteady.add(load);
  };
  problem.modules.forEach((module, m) => {
    add(module.patterns[choice.patterns[m] ?? -1]);
  });
  problem.circuits.forEach((circuit, c) => {
    add(circuit.placings[choice.placings[c] ?? -1]);
  });
  return { dims, unsteady };
}

/** Does this choice meet the wish? */
export function meets(problem: MovesProblem, choice: Choice, wish: ValuedWish): boolean {
  const { dims, unsteady } = effectsOf(problem, choice);
  return wish.wish === "must-stay-steady" ? !unsteady.has(wish.load) : dims.has(wish.load);
}
