import { type Choice, choiceFaults, type MovesProblem } from "../moves/index.js";
import { type Element, elementsOf } from "./without-elements.js";

/** The choice that changes only these decisions; undefined where it cannot be done so. */
export function choiceWith(problem: MovesProblem, elements: readonly Element[]): Choice | undefined {
  const patterns = problem.modules.map(() => 0);
  const placings = problem.circuits.map(() => 0);
  for (const element of elements)
    if (element.kind === "pattern") patterns[element.module] = element.pattern;
    else placings[element.circuit] = element.placing;
  const choice = { patterns, placings };
  return choiceFaults({ ...problem, mostCost: undefined, mostMinutes: undefined }, choice).length === 0
    ? choice
    : undefined;
}

/**
 * Which decisions of a failing choice make it fail? First each by itself; if none does, all are taken and one after the other is given up while the rest still
 * fails. None where the coach fails with nothing changed that can be left. It assumes that no further decision cures what these make. `fails` may refuse to look (undefined): then that decision is kept.
 */
export function culpritsOf(
  problem: MovesProblem,
  choice: Choice,
  fails: (choice: Choice) => boolean | undefined,
): Element[][] {
  const all = elementsOf(choice);
  const alone = all.filter((element) => {
    const single = choiceWith(problem, [element]);
    return single !== undefined && fails(single) === true;
  });
  if (alone.length > 0) return alone.map((element) => [element]);
  let left = all;
  for (const element of all) {
    const fewer = left.filter((each) => each !== element);
    const tried = fewer.length === 0 ? undefined : choiceWith(problem, fewer);
    if (tried !== undefined && fails(tried) === true) left = fewer;
  }
  return left.length > 0 ? [left] : [];
}
